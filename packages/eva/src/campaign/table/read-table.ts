/** Reads the rows of a table off the text, every cell as it is written. */
import type { NodePath } from '../edit/edit-document.ts';
import type { Span } from '../span.ts';
import type { ParsedFile } from '../text/parse-file.ts';
import type { Scalar, SourceEntry, SourceNode } from '../text/source-node.ts';
import type { CellPlace, ChildPart, TableDefinition } from './table-definition.ts';

export interface TableRow {
  /** Names it: id, or "task/stint" for what stands inside others; with the line where two would have one name. */
  readonly key: string;
  readonly path: NodePath;
  readonly node: SourceNode;
  readonly span: Span;
  /** One per column; null: not written. */
  readonly cells: readonly (string | null)[];
}

export function readTable(file: ParsedFile, table: TableDefinition): readonly TableRow[] {
  const rows: TableRow[] = [];
  const keys = new Set<string>();
  const walk = (nodes: readonly SourceNode[], above: NodePath, around: readonly string[]): void => {
    for (const [index, node] of nodes.entries()) {
      const path = [...above, index];
      const name = argumentsOf(node)[0]?.value;
      const own = typeof name === 'string' ? name : null;
      if (table.nodes.includes(node.name)) {
        const cells = table.columns.map(({ at }) => cellOf(node, at, around));
        const stem = [...around, rowName(table, cells)].join('/');
        const key = keys.has(stem) ? `${stem} (line ${node.span.line})` : stem;
        keys.add(key);
        rows.push({ key, path, node, span: node.span, cells });
      }
      walk(node.children, path, own === null ? around : [...around, own]);
    }
  };
  walk(file.nodes, [], []);
  return rows;
}

/** What names a row among those of its kind: its arguments; of several ids that share a row, the first. */
export function rowName(table: TableDefinition, cells: readonly (string | null)[]): string {
  const names = table.columns.flatMap(({ at }, index) =>
    at.part !== 'argument' ? [] : [at.rest ? (cells[index]?.split(/\s+/)[0] ?? '') : (cells[index] ?? '')],
  );
  return names.join(' ');
}

/** Words of a value as a cell shows and takes it. */
export function cellWords(value: Scalar): string {
  return typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value ?? '');
}

export function argumentsOf(node: SourceNode): readonly SourceEntry[] {
  return node.entries.filter(({ name }) => name === null);
}

/** The title: the last argument in quotes beyond those that the definition needs. */
export function titleEntry(node: SourceNode, needed: number): SourceEntry | null {
  const last = argumentsOf(node).slice(needed).at(-1);
  return last?.quoted === true ? last : null;
}

function cellOf(node: SourceNode, at: CellPlace, around: readonly string[]): string | null {
  if (at.part === 'around') return around.join('/');
  if (at.part === 'title') {
    const title = titleEntry(node, 1);
    return title === null ? null : cellWords(title.value);
  }
  if (at.part !== 'child') return partOf(node, at);
  const child = node.children.find(({ name }) => name === at.node);
  return child === undefined ? null : partOf(child, at.of);
}

function partOf(node: SourceNode, at: ChildPart): string | null {
  if (at.part === 'property') {
    const entry = node.entries.findLast(({ name }) => name === at.name);
    return entry === undefined ? null : cellWords(entry.value);
  }
  const given = argumentsOf(node);
  if (!at.rest) return given[at.index] === undefined ? null : cellWords((given[at.index] as SourceEntry).value);
  const words = given.slice(at.index).filter(({ quoted }) => !quoted);
  return words.length === 0 ? null : words.map(({ value }) => cellWords(value)).join(' ');
}
