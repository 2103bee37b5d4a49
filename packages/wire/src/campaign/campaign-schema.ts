/** JSON Schema (draft 2020-12) of campaign JSON, written off the node definitions. */
import type {
  ArgumentDefinition,
  NodeDefinition,
  PropertyDefinition,
} from '@handrail/eva/campaign/definition/define-node';
import { STEP_OBJECTS, STEP_SHAPE } from '@handrail/eva/campaign/definition/step-shape';
import type { ValueType } from '@handrail/eva/campaign/definition/value-type';
import { FORMAT_VERSION } from '@handrail/eva/campaign/format-version';
import { nodes } from '@handrail/eva/campaign/nodes.generated';
import { unitsOf } from '@handrail/quantity/quantity';
import { CAMPAIGN_FORMAT } from './campaign-json.ts';

export type JsonSchema = { readonly [key: string]: unknown };

const ID = '[A-Za-z][A-Za-z0-9-]*';
const SENTENCE = 'sentence';

export function campaignSchema(): JsonSchema {
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Handrail campaign',
    description: 'A campaign of spacewalks: the campaign text, node for node. Quantities are texts with a unit.',
    type: 'object',
    required: ['format', 'version', 'files'],
    properties: {
      format: { const: CAMPAIGN_FORMAT },
      version: { const: FORMAT_VERSION },
      files: {
        type: 'array',
        minItems: 1,
        items: {
          type: 'object',
          required: ['name', 'nodes'],
          properties: {
            name: { type: 'string', minLength: 1 },
            nodes: { type: 'array', items: oneOf(nodes.filter((node) => node.parents.includes('document'))) },
            comments: { $ref: '#/$defs/comment-texts' },
          },
          additionalProperties: false,
        },
      },
    },
    additionalProperties: false,
    $defs: {
      'comment-texts': { type: 'array', items: { type: 'string' } },
      comments: {
        type: 'object',
        properties: Object.fromEntries(
          ['before', 'inside', 'after', 'end'].map((key) => [key, { $ref: '#/$defs/comment-texts' }]),
        ),
        additionalProperties: false,
      },
      'any-node': {
        type: 'object',
        required: ['node'],
        properties: { node: { type: 'string' }, children: { type: 'array', items: { $ref: '#/$defs/any-node' } } },
      },
      [SENTENCE]: sentenceSchema(),
      ...Object.fromEntries(nodes.map((node) => [`node-${node.name}`, nodeSchema(node)])),
    },
  };
}

function oneOf(definitions: readonly NodeDefinition[], steps = false): JsonSchema {
  const refs = definitions.map((node) => ({ $ref: `#/$defs/node-${node.name}` }));
  return { anyOf: steps ? [...refs, { $ref: `#/$defs/${SENTENCE}` }] : refs };
}

function nodeSchema(definition: NodeDefinition): JsonSchema {
  const inner = nodes.filter((node) => node.parents.includes(definition.name));
  const neededInner = inner.filter((node) => node.repeat === 'once' || node.repeat === 'at-least-once');
  const free = definition.name === 'use';
  const neededArguments = definition.arguments.filter((one) => one.required).length;
  const neededProperties = requiredOf(definition.properties);
  const children = free
    ? { type: 'array', items: { $ref: '#/$defs/any-node' } }
    : {
        type: 'array',
        items: inner.length > 0 || definition.steps ? oneOf(inner, definition.steps) : false,
        ...(neededInner.length > 0
          ? { allOf: neededInner.map((node) => ({ contains: { properties: { node: { const: node.name } } } })) }
          : {}),
      };
  return {
    description: definition.about,
    type: 'object',
    required: [
      'node',
      ...(neededArguments > 0 ? ['arguments'] : []),
      ...(neededProperties.length > 0 ? ['properties'] : []),
      ...(neededInner.length > 0 ? ['children'] : []),
    ],
    properties: {
      node: { const: definition.name },
      ...(definition.title ? { title: { type: 'string' } } : {}),
      arguments: argumentsSchema(definition.arguments, neededArguments),
      properties: free
        ? { type: 'object', additionalProperties: { type: ['string', 'number', 'boolean'] } }
        : propertiesSchema(definition.properties),
      children,
      comments: { $ref: '#/$defs/comments' },
    },
    additionalProperties: false,
  };
}

function sentenceSchema(): JsonSchema {
  const taken = nodes.filter((node) => node.parents.includes('stint')).map((node) => node.name);
  return {
    description: STEP_SHAPE.about,
    type: 'object',
    required: ['node'],
    properties: {
      node: { type: 'string', pattern: `^${ID}$`, not: { enum: taken } },
      arguments: { type: 'array', items: valueSchema(STEP_OBJECTS) },
      properties: propertiesSchema(STEP_SHAPE.properties),
      comments: { $ref: '#/$defs/comments' },
    },
    additionalProperties: false,
  };
}

function argumentsSchema(definitions: readonly ArgumentDefinition[], needed: number): JsonSchema {
  const rest = definitions.find((one) => one.rest);
  const fixed = definitions.filter((one) => !one.rest);
  const described = (one: ArgumentDefinition): JsonSchema => ({ description: one.about, ...valueSchema(one.type) });
  return {
    type: 'array',
    ...(fixed.length > 0 ? { prefixItems: fixed.map(described) } : {}),
    items: rest === undefined ? false : described(rest),
    ...(needed > 0 ? { minItems: needed } : {}),
  };
}

function propertiesSchema(definitions: Readonly<Record<string, PropertyDefinition>>): JsonSchema {
  const required = requiredOf(definitions);
  return {
    type: 'object',
    properties: Object.fromEntries(
      Object.entries(definitions).map(([name, one]) => [name, { description: one.about, ...valueSchema(one.type) }]),
    ),
    ...(required.length > 0 ? { required } : {}),
    additionalProperties: false,
  };
}

function requiredOf(definitions: Readonly<Record<string, PropertyDefinition>>): readonly string[] {
  return Object.entries(definitions).flatMap(([name, one]) => (one.required ? [name] : []));
}

function valueSchema(type: ValueType): JsonSchema {
  switch (type.type) {
    case 'id':
      return { type: 'string', pattern: `^${ID}$` };
    case 'reference': {
      const one = type.to.includes('stint') ? `${ID}(/${ID})?` : ID;
      return { type: 'string', pattern: type.many ? `^\\s*${one}(\\s+${one})*\\s*$` : `^${one}$` };
    }
    case 'quantity': {
      const units = unitsOf(type.dimension).map((unit) => unit.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&'));
      const figure = '[+-]?\\d+(\\.\\d+)?([eE][+-]?\\d+)?';
      return { type: 'string', pattern: `^\\s*(${figure}\\s*(${units.join('|')})\\s*)+$` };
    }
    case 'number':
      return { type: type.integer ? 'integer' : 'number', minimum: type.least, maximum: type.most };
    case 'choice':
      return { enum: type.of };
    case 'utc':
      return { type: 'string', pattern: '^\\d{4}-\\d{2}-\\d{2}T\\d{2}:\\d{2}(:\\d{2}(\\.\\d{1,3})?)?Z$' };
    case 'pet':
      return { type: 'string', pattern: '^-?\\d{1,2}:[0-5]\\d(:[0-5]\\d)?$' };
    case 'flag':
      return { type: 'boolean' };
    case 'text':
      return { type: 'string', minLength: 1 };
    case 'variable':
      return { type: 'string', pattern: `^(request:)?${ID}(\\.${ID})?$` };
    case 'word':
      return { type: 'string', minLength: 1, maxLength: 80 };
    default:
      return { type: ['string', 'number', 'boolean'] };
  }
}
