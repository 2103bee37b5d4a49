/**
 * What one sort of node looks like: the only place that says so. The checker, the reference page, completion and the JSON
 * Schema are all read off it. One node = one file in `nodes/`, found through the generated registry.
 */
import type { ValueType } from './value-type.ts';

export interface NodeDefinition {
  readonly name: string;
  /** Where it may stand: "document", or names of other nodes. */
  readonly parents: readonly string[];
  /** `once` and `at-least-once` are demanded by every parent. */
  readonly repeat: 'once' | 'at-most-once' | 'at-least-once' | 'any';
  readonly arguments: readonly ArgumentDefinition[];
  /** A last argument in quotes, beyond the needed ones, is a title for people. */
  readonly title: boolean;
  readonly properties: Readonly<Record<string, PropertyDefinition>>;
  /** Sentences of work (a verb of the kinds library first) may stand inside. */
  readonly steps: boolean;
  /** One or two sentences for the reference page. */
  readonly about: string;
  readonly examples: { readonly valid: readonly string[]; readonly invalid: readonly InvalidExample[] };
}
export interface ArgumentDefinition {
  readonly name: string;
  readonly type: ValueType;
  readonly required: boolean;
  /** Takes all further arguments too. */
  readonly rest: boolean;
  readonly about: string;
}
export interface PropertyDefinition {
  readonly type: ValueType;
  readonly required: boolean;
  readonly about: string;
}
export interface InvalidExample {
  readonly text: string;
  /** Code of the problem it must give. */
  readonly code: string;
}

type Given = Pick<NodeDefinition, 'name' | 'parents' | 'about' | 'examples'> & Partial<NodeDefinition>;

export function defineNode(given: Given): NodeDefinition {
  return { repeat: 'any', arguments: [], title: false, properties: {}, steps: false, ...given };
}

export function needed(type: ValueType, about: string): PropertyDefinition {
  return { type, required: true, about };
}
export function optional(type: ValueType, about: string): PropertyDefinition {
  return { type, required: false, about };
}
export function argument(name: string, type: ValueType, about: string): ArgumentDefinition {
  return { name, type, required: true, rest: false, about };
}
export function optionalArgument(name: string, type: ValueType, about: string): ArgumentDefinition {
  return { name, type, required: false, rest: false, about };
}
/** One or more. */
export function restArgument(name: string, type: ValueType, about: string): ArgumentDefinition {
  return { name, type, required: true, rest: true, about };
}
