/**
 * The shape of every node against its definition: known names, arguments, properties, children and how often they may
 * stand. References are looked up later, when all ids are known.
 */
import type { ArgumentDefinition, NodeDefinition } from '../definition/define-node.ts';
import { STEP_OBJECTS, STEP_PROPERTIES } from '../definition/step-shape.ts';
import { nodes } from '../nodes.generated.ts';
import { nearestName, nearestOrAll } from '../problem/nearest-name.ts';
import type { ProblemList } from '../problem/problem.ts';
import type { SourceEntry, SourceNode } from '../text/source-node.ts';
import { splitTitle } from '../text/split-title.ts';
import type { CheckedNode, CheckedValue } from './checked-node.ts';
import { checkValue } from './check-value.ts';
import { describeType } from './describe-type.ts';

/** Parent → name → definition. */
const BY_PARENT: ReadonlyMap<string, ReadonlyMap<string, NodeDefinition>> = index(nodes);
const NONE: ReadonlyMap<string, NodeDefinition> = new Map();

function index(definitions: readonly NodeDefinition[]): ReadonlyMap<string, ReadonlyMap<string, NodeDefinition>> {
  const byParent = new Map<string, Map<string, NodeDefinition>>();
  for (const definition of definitions) {
    for (const parent of definition.parents) {
      const inner = byParent.get(parent) ?? new Map<string, NodeDefinition>();
      inner.set(definition.name, definition);
      byParent.set(parent, inner);
    }
  }
  return byParent;
}

export function definitionsIn(parent: string): ReadonlyMap<string, NodeDefinition> {
  return BY_PARENT.get(parent) ?? NONE;
}

/** What the checker must know of the kinds library: its verbs. */
export interface KnownVerbs {
  has(verb: string): boolean;
  keys(): Iterable<string>;
}

/**
 * @param parent "document" or the name of the node that they stand in
 * @returns the nodes that make sense, in order; the others have been reported
 */
export function checkShapes(
  sources: readonly SourceNode[],
  parent: string,
  steps: boolean,
  verbs: KnownVerbs,
  problems: ProblemList,
): readonly CheckedNode[] {
  const definitions = definitionsIn(parent);
  const seen = new Map<string, number>();
  const checked: CheckedNode[] = [];
  for (const source of sources) {
    const definition = definitions.get(source.name);
    if (definition !== undefined) {
      const count = (seen.get(source.name) ?? 0) + 1;
      seen.set(source.name, count);
      if (count === 2 && (definition.repeat === 'once' || definition.repeat === 'at-most-once')) {
        problems.add('node-twice', source.nameSpan, `"${source.name}" stands here a second time`, {
          expected: parent === 'document' ? 'one in the campaign' : `one in each ${parent}`,
        });
      }
      checked.push(checkNode(source, definition, verbs, problems));
    } else if (steps && verbs.has(source.name)) checked.push(checkStep(source, problems));
    else reportUnknown(source, parent, steps, definitions, verbs, problems);
  }
  return checked;
}

/** The children that a node of this definition must have and has not. */
function reportMissingChildren(source: SourceNode, definition: NodeDefinition, problems: ProblemList): void {
  for (const [name, child] of definitionsIn(definition.name)) {
    if (child.repeat !== 'once' && child.repeat !== 'at-least-once') continue;
    if (source.children.some((one) => one.name === name)) continue;
    problems.add('missing-node', source.nameSpan, `this ${definition.name} has no "${name}" inside`, {
      expected: child.examples.valid[0] ?? name,
    });
  }
}

function checkNode(
  source: SourceNode,
  definition: NodeDefinition,
  verbs: KnownVerbs,
  problems: ProblemList,
): CheckedNode {
  reportAnnotations(source, problems);
  const free = definition.name === 'use';
  const { title, arguments: written } = splitTitle(definition, source.entries);
  const args = checkArguments(source, definition, written, problems);
  const properties = free
    ? freeProperties(source, problems)
    : checkProperties(source, definition.name, definition.properties, problems);
  reportMissingChildren(source, definition, problems);
  const children = free ? [] : checkShapes(source.children, definition.name, definition.steps, verbs, problems);
  return {
    name: source.name,
    definition,
    arguments: args,
    title,
    properties,
    children,
    nameSpan: source.nameSpan,
    span: source.span,
    template: source.template,
    source,
  };
}

function checkArguments(
  source: SourceNode,
  definition: NodeDefinition,
  written: readonly SourceEntry[],
  problems: ProblemList,
): (CheckedValue | null)[] {
  const args: (CheckedValue | null)[] = [];
  const wanted = definition.arguments;
  const rest = wanted.find((one) => one.rest);
  for (const [at, entry] of written.entries()) {
    const argument: ArgumentDefinition | undefined = wanted[at] ?? rest;
    if (argument === undefined) {
      problems.add('extra-argument', entry.valueSpan, `${definition.name} takes no further value here`, {
        expected:
          definition.title && typeof entry.value === 'string' ? 'a title in quotes' : argumentsInWords(definition),
      });
      break;
    }
    args.push(checkValue(argument.type, entry, argument.name, problems));
  }
  for (const argument of wanted.slice(written.length)) {
    if (!argument.required) continue;
    problems.add('missing-argument', source.nameSpan, `${definition.name} does not say its ${argument.name}`, {
      expected: describeType(argument.type),
    });
  }
  return args;
}

function argumentsInWords(definition: NodeDefinition): string {
  if (definition.arguments.length === 0) return `${definition.name} alone`;
  return `${definition.name} ${definition.arguments.map((one) => `<${one.name}${one.rest ? '…' : ''}>`).join(' ')}`;
}

function checkProperties(
  source: SourceNode,
  name: string,
  wanted: NodeDefinition['properties'],
  problems: ProblemList,
): ReadonlyMap<string, CheckedValue> {
  const found = new Map<string, CheckedValue>();
  const seen = new Set<string>();
  for (const entry of source.entries) {
    if (entry.name === null) continue;
    const span = entry.nameSpan ?? entry.valueSpan;
    const property = Object.hasOwn(wanted, entry.name) ? wanted[entry.name] : undefined;
    if (property === undefined) {
      problems.add('unknown-property', span, `${name} has no property "${entry.name}"`, {
        ...nearestOrAll(entry.name, Object.keys(wanted), 'no property'),
      });
      continue;
    }
    if (seen.has(entry.name)) {
      problems.add('property-twice', span, `"${entry.name}" is given twice`, { expected: 'one of the two' });
      continue;
    }
    seen.add(entry.name);
    const value = checkValue(property.type, entry, entry.name, problems);
    if (value !== null) found.set(entry.name, value);
  }
  for (const [key, property] of Object.entries(wanted)) {
    if (!property.required || seen.has(key)) continue;
    problems.add('missing-property', source.nameSpan, `this ${name} does not say "${key}"`, {
      expected: `${key}=, ${describeType(property.type)}`,
    });
  }
  return found;
}

/** Properties of `use`: those of its template, which checks them. */
function freeProperties(source: SourceNode, problems: ProblemList): ReadonlyMap<string, CheckedValue> {
  const found = new Map<string, CheckedValue>();
  for (const entry of source.entries) {
    if (entry.name === null) continue;
    if (found.has(entry.name)) {
      problems.add('property-twice', entry.nameSpan ?? entry.valueSpan, `"${entry.name}" is given twice`, {
        expected: 'one of the two',
      });
      continue;
    }
    const value = checkValue({ type: 'scalar' }, entry, entry.name, problems);
    if (value !== null) found.set(entry.name, value);
  }
  return found;
}

function checkStep(source: SourceNode, problems: ProblemList): CheckedNode {
  reportAnnotations(source, problems);
  const objects = source.entries
    .filter((entry) => entry.name === null)
    .map((entry) => checkValue(STEP_OBJECTS, entry, 'the object', problems));
  const first = source.children[0];
  if (first !== undefined) {
    problems.add('unexpected-node', first.nameSpan, 'a sentence has nothing inside braces', {
      expected: 'one sentence a line',
    });
  }
  return {
    name: source.name,
    definition: null,
    arguments: objects,
    title: null,
    properties: checkProperties(source, source.name, STEP_PROPERTIES, problems),
    children: [],
    nameSpan: source.nameSpan,
    span: source.span,
    template: source.template,
    source,
  };
}

function reportAnnotations(source: SourceNode, problems: ProblemList): void {
  const note = source.annotation ?? source.entries.find((entry) => entry.annotation !== null)?.annotation;
  if (note === undefined || note === null) return;
  problems.add('annotation', source.nameSpan, `"(${note})" in front of a name or value means nothing here`, {
    expected: 'no brackets',
  });
}

function reportUnknown(
  source: SourceNode,
  parent: string,
  steps: boolean,
  definitions: ReadonlyMap<string, NodeDefinition>,
  verbs: KnownVerbs,
  problems: ProblemList,
): void {
  if (problems.isFull) return;
  const names = [...definitions.keys()];
  const elsewhere = nodes.find((one) => one.name === source.name);
  const place = parent === 'document' ? 'at the top of a file' : `in ${parent}`;
  if (elsewhere !== undefined) {
    problems.add('misplaced-node', source.nameSpan, `"${source.name}" cannot stand ${place}`, {
      expected: `${source.name} in ${elsewhere.parents.join(' or ')}`,
    });
  } else if (steps) {
    problems.add(
      'unknown-verb',
      source.nameSpan,
      `"${source.name}" is neither a verb of the library nor known ${place}`,
      {
        nearest: nearestName(source.name, [...names, ...verbs.keys()]),
      },
    );
  } else {
    problems.add('unknown-node', source.nameSpan, `"${source.name}" is not known ${place}`, {
      ...nearestOrAll(
        source.name,
        names.filter((one) => one !== 'handrail'),
        'nothing inside',
      ),
    });
  }
}
