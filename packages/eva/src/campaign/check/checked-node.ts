/**
 * A node whose shape is right: names known, values of the right sort and in range, quantities in SI. What was wrong has
 * been reported and is absent here, so later checks read on without tripping over it.
 */
import { Fault } from '@handrail/quantity/fault';
import type { NodeDefinition } from '../definition/define-node.ts';
import type { Span } from '../span.ts';
import type { SourceNode } from '../text/source-node.ts';

export interface CheckedValue {
  /** SI for quantities, milliseconds for instants, seconds for PET. */
  readonly value: string | number | boolean;
  /** The words of a text with their places: one, or several where the type allows. Empty for numbers and flags. */
  readonly words: readonly Word[];
  readonly span: Span;
}
export interface Word {
  readonly text: string;
  readonly span: Span;
}

export interface CheckedNode {
  readonly name: string;
  /** null: a sentence, whose first word is a verb. */
  readonly definition: NodeDefinition | null;
  readonly arguments: readonly (CheckedValue | null)[];
  readonly title: string | null;
  readonly properties: ReadonlyMap<string, CheckedValue>;
  readonly children: readonly CheckedNode[];
  readonly nameSpan: Span;
  readonly span: Span;
  /** Template that wrote it; null: a person did. */
  readonly template: string | null;
  readonly source: SourceNode;
}

export function textAt(node: CheckedNode, index: number): string | null {
  const value = node.arguments[index]?.value;
  return typeof value === 'string' ? value : null;
}

export function numberAt(node: CheckedNode, index: number): number | null {
  const value = node.arguments[index]?.value;
  return typeof value === 'number' ? value : null;
}

/** Words of the arguments from `index` on. */
export function wordsFrom(node: CheckedNode, index: number): readonly Word[] {
  return node.arguments.slice(index).flatMap((value) => value?.words ?? []);
}

export function text(node: CheckedNode, property: string): string | null {
  const value = read(node, property)?.value;
  return typeof value === 'string' ? value : null;
}

export function number(node: CheckedNode, property: string): number | null {
  const value = read(node, property)?.value;
  return typeof value === 'number' ? value : null;
}

export function flag(node: CheckedNode, property: string): boolean | null {
  const value = read(node, property)?.value;
  return typeof value === 'boolean' ? value : null;
}

export function words(node: CheckedNode, property: string): readonly Word[] {
  return read(node, property)?.words ?? [];
}

export function spanOf(node: CheckedNode, property: string): Span {
  return read(node, property)?.span ?? node.span;
}

export function child(node: CheckedNode, name: string): CheckedNode | null {
  return node.children.find((one) => one.name === name && one.definition !== null) ?? null;
}

export function childrenOf(node: CheckedNode, name: string): readonly CheckedNode[] {
  return node.children.filter((one) => one.name === name && one.definition !== null);
}

/** A property that the definition does not have is a mistake of the program, not of the text. */
function read(node: CheckedNode, property: string): CheckedValue | null {
  const value = node.properties.get(property);
  if (value !== undefined) return value;
  if (node.definition !== null && !Object.hasOwn(node.definition.properties, property)) {
    throw new Fault('campaign/bad-definition', `node ${node.name} has no property ${property}`, {
      values: { node: node.name, property },
    });
  }
  return null;
}
