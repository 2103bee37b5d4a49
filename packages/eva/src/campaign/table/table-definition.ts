/**
 * A table is one sort of node of the text, a row for each as it is written: what the columns are is read off the definition of
 * the node, so that a table never knows another format than the text.
 */
import { nodeByName } from '../definition/node-by-name.ts';
import type { ValueType } from '../definition/value-type.ts';

export interface TableDefinition {
  readonly id: string;
  readonly title: string;
  /** One sentence on what belongs here. */
  readonly about: string;
  readonly columns: readonly TableColumn[];
  /** Names of the nodes that are rows. */
  readonly nodes: readonly string[];
  /** Node that a new row becomes, at the end of the document; null: rows stand inside others and are written there. */
  readonly adds: string | null;
}

export interface TableColumn {
  readonly id: string;
  readonly title: string;
  readonly about: string;
  readonly at: CellPlace;
  /** null: a title in quotes. */
  readonly type: ValueType | null;
  readonly required: boolean;
}

export type CellPlace =
  /** Names of the nodes around it, parted by "/": which task a stint is of. Not edited. */
  | { readonly part: 'around' }
  /** `count` false: all arguments from this one on, parted by spaces. */
  | { readonly part: 'argument'; readonly index: number; readonly rest: boolean }
  | { readonly part: 'title' }
  | { readonly part: 'property'; readonly name: string }
  | { readonly part: 'child'; readonly node: string; readonly of: ChildPart };
export type ChildPart =
  | { readonly part: 'argument'; readonly index: number; readonly rest: boolean }
  | { readonly part: 'property'; readonly name: string };

interface TableWords {
  readonly id: string;
  readonly title: string;
  readonly about: string;
  readonly nodes: readonly string[];
  /** Nodes inside a row that stand at most once in it: their values are columns too. */
  readonly children?: readonly string[];
  readonly isInside?: boolean;
}

/** @throws TypeError when a node or child is not in the format */
export function defineTable({ id, title, about, nodes, children = [], isInside = false }: TableWords): TableDefinition {
  const first = nodes[0] as string;
  const columns: TableColumn[] = [];
  if (isInside) {
    columns.push({
      id: 'in',
      title: 'in',
      about: 'What it stands in.',
      at: { part: 'around' },
      type: null,
      required: true,
    });
  }
  for (const [index, { name, type, rest, about: words, required }] of definitionOf(first).arguments.entries()) {
    columns.push({ id: name, title: name, about: words, at: { part: 'argument', index, rest }, type, required });
  }
  if (definitionOf(first).title) {
    columns.push({
      id: 'title',
      title: 'title',
      about: 'For people.',
      at: { part: 'title' },
      type: null,
      required: false,
    });
  }
  for (const [name, { type, about: words, required }] of Object.entries(definitionOf(first).properties)) {
    columns.push({ id: name, title: name, about: words, at: { part: 'property', name }, type, required });
  }
  for (const node of children) {
    const child = definitionOf(node);
    for (const [index, { name, type, rest, about: words }] of child.arguments.entries()) {
      const at = { part: 'child', node, of: { part: 'argument', index, rest } } as const;
      columns.push({ id: `${node}-${name}`, title: `${node} ${name}`, about: words, at, type, required: false });
    }
    for (const [name, { type, about: words }] of Object.entries(child.properties)) {
      const at = { part: 'child', node, of: { part: 'property', name } } as const;
      columns.push({ id: `${node}-${name}`, title: `${node} ${name}`, about: words, at, type, required: false });
    }
  }
  return { id, title, about, columns: withoutTwins(columns), nodes, adds: isInside ? null : first };
}

/** A child's argument and property of one name are two ways of saying the same: the property is the column. */
function withoutTwins(columns: readonly TableColumn[]): readonly TableColumn[] {
  return columns.filter((column, index) => columns.findLastIndex(({ id }) => id === column.id) === index);
}

function definitionOf(name: string): NonNullable<ReturnType<typeof nodeByName>> {
  const found = nodeByName(name);
  if (found === null) throw new TypeError(`no node ${name} in the format`);
  return found;
}
