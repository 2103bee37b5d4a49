/** Cells written back into the text: edits that touch nothing but the values they change. */
import { checkValue } from '../check/check-value.ts';
import type { ValueType } from '../definition/value-type.ts';
import { insertNode, type NodePath, setArgument, setProperty } from '../edit/edit-document.ts';
import type { TextEdit } from '../edit/text-edit.ts';
import { writeName, writeQuoted, writeValue } from '../edit/write-value.ts';
import { ProblemList } from '../problem/problem.ts';
import type { ParsedFile } from '../text/parse-file.ts';
import type { Scalar, SourceNode } from '../text/source-node.ts';
import { argumentsOf, type TableRow, titleEntry } from './read-table.ts';
import type { ChildPart, TableColumn, TableDefinition } from './table-definition.ts';

export interface CellChange {
  readonly row: TableRow;
  readonly column: TableColumn;
  /** As a person types it; empty takes the value away. */
  readonly words: string;
}
export interface RefusedCell {
  readonly row: string;
  readonly column: string;
  readonly words: string;
  /** What is wrong and what would be right. */
  readonly why: string;
}
export interface TableEdits {
  /** To be applied one after another: from the end of the text to its start, so that none moves another. */
  readonly edits: readonly TextEdit[];
  readonly refused: readonly RefusedCell[];
}

/** Changes of cells of one table as edits of the text that the table was read from. What does not fit its column is refused, alone. */
export function editCells(file: ParsedFile, changes: readonly CellChange[]): TableEdits {
  const edits: TextEdit[] = [];
  const refused: RefusedCell[] = [];
  /** New inner nodes, one for all their cells: "path|node" → values. */
  const born = new Map<
    string,
    { readonly path: NodePath; readonly node: string; readonly values: Map<ChildPart, Scalar> }
  >();
  for (const { row, column, words } of changes) {
    const read = readCell(column, words);
    if ('why' in read) {
      refused.push({ row: row.key, column: column.id, words, why: read.why });
      continue;
    }
    const { value } = read;
    const { at } = column;
    if (at.part === 'around') {
      refused.push({ row: row.key, column: column.id, words, why: 'what a row stands in is changed in the text' });
    } else if (at.part === 'title') edits.push(titleEdit(file, row, value));
    else if (at.part === 'child') {
      const index = row.node.children.findIndex(({ name }) => name === at.node);
      if (index >= 0)
        edits.push(...partEdits(file, [...row.path, index], at.of, value, wordCount(row.node.children[index])));
      else if (value !== null) {
        const key = `${row.path.join('.')}|${at.node}`;
        const child = born.get(key) ?? { path: row.path, node: at.node, values: new Map<ChildPart, Scalar>() };
        child.values.set(at.of, value);
        born.set(key, child);
      }
    } else edits.push(...partEdits(file, row.path, at, value, wordCount(row.node)));
  }
  for (const { path, node, values } of born.values())
    edits.push(insertNode(file, nodeWords(node, values), { inside: path }));
  return { edits: edits.filter(({ remove, insert }) => remove !== insert).sort((a, b) => b.at - a.at), refused };
}

/** The text of a new row. Cells that do not fit are refused, and the row is then not written. */
export function newRow(
  table: TableDefinition,
  cells: ReadonlyMap<string, string>,
): { readonly node: string } | { readonly refused: readonly RefusedCell[] } {
  const refused: RefusedCell[] = [];
  const key = cells.get(table.columns[0]?.id ?? '') ?? '';
  const parts: string[] = [table.adds ?? table.nodes[0] ?? ''];
  const children = new Map<string, Map<ChildPart, Scalar>>();
  for (const column of table.columns) {
    const words = (cells.get(column.id) ?? '').trim();
    if (words === '') {
      if (column.required) refused.push({ row: key, column: column.id, words, why: 'it is needed and left empty' });
      continue;
    }
    const read = readCell(column, words);
    if ('why' in read) refused.push({ row: key, column: column.id, words, why: read.why });
    else if (column.at.part === 'title') parts.push(writeQuoted(words));
    else if (column.at.part === 'property') parts.push(`${column.at.name}=${writeValue(read.value)}`);
    else if (column.at.part === 'argument')
      parts.push(column.at.rest ? words.split(/\s+/).map(writeName).join(' ') : writeValue(read.value));
    else if (column.at.part === 'child') {
      const values = children.get(column.at.node) ?? new Map<ChildPart, Scalar>();
      children.set(column.at.node, values.set(column.at.of, read.value));
    }
  }
  if (refused.length > 0) return { refused };
  const inner = [...children].map(([node, values]) => nodeWords(node, values));
  return { node: inner.length === 0 ? parts.join(' ') : `${parts.join(' ')} { ${inner.join('; ')} }` };
}

/** What was typed, as the column's sort of value. Numbers may have a comma for a point; yes and no are flags. */
function readCell(column: TableColumn, typed: string): { readonly value: Scalar } | { readonly why: string } {
  const words = typed.trim();
  if (words === '') return column.required ? { why: 'it is needed and cannot be empty' } : { value: null };
  if (column.type === null) return { value: words };
  const value = scalarOf(column.type, words);
  const problems = new ProblemList();
  const span = { file: '', line: 0, column: 0, length: 0 };
  const { at } = column;
  const isRest =
    (at.part === 'argument' && at.rest) || (at.part === 'child' && at.of.part === 'argument' && at.of.rest);
  for (const one of isRest ? words.split(/\s+/) : [value]) {
    checkValue(
      column.type,
      { name: null, nameSpan: null, value: one, valueSpan: span, quoted: false, annotation: null },
      column.title,
      problems,
    );
  }
  const [problem] = problems.sorted(['']);
  if (problem === undefined) return { value };
  return { why: problem.expected === null ? problem.what : `${problem.what}; expected ${problem.expected}` };
}

function scalarOf(type: ValueType, words: string): Scalar {
  if (type.type === 'flag') return /^(yes|true)$/i.test(words) ? true : /^(no|false)$/i.test(words) ? false : words;
  if (type.type === 'number') {
    const number = Number(words.replace(',', '.'));
    return Number.isNaN(number) ? words : number;
  }
  if (type.type === 'scalar') return /^[-+]?\d+(\.\d+)?$/.test(words) ? Number(words) : words;
  return words;
}

function titleEdit(file: ParsedFile, row: TableRow, value: Scalar): TextEdit {
  const given = argumentsOf(row.node);
  const title = titleEntry(row.node, 1);
  const index = title === null ? given.length : given.indexOf(title);
  return setArgument(file, row.path, index, value, (words) => writeQuoted(String(words)));
}

function partEdits(file: ParsedFile, path: NodePath, at: ChildPart, value: Scalar, count: number): readonly TextEdit[] {
  if (at.part === 'property') return [setProperty(file, path, at.name, value)];
  if (!at.rest) return [setArgument(file, path, at.index, value)];
  // Words one by one: what is there is replaced, what is new goes behind, what is over is taken away.
  const words = value === null ? [] : String(value).split(/\s+/);
  const edits: TextEdit[] = [];
  for (let index = at.index; index < Math.max(count, words.length); index++) {
    if (index < count) edits.push(setArgument(file, path, index, words[index - at.index] ?? null));
  }
  const more = words.slice(Math.max(0, count - at.index));
  if (more.length > 0) edits.push(setArgument(file, path, count, more.join(' '), () => more.map(writeName).join(' ')));
  return edits;
}

/** Arguments without the title. */
function wordCount(node: SourceNode | undefined): number {
  return node === undefined ? 0 : argumentsOf(node).filter(({ quoted }) => !quoted).length;
}

function nodeWords(node: string, values: ReadonlyMap<ChildPart, Scalar>): string {
  const parts = [...values].sort(([a], [b]) => Number(a.part === 'property') - Number(b.part === 'property'));
  return [
    node,
    ...parts.map(([at, value]) =>
      at.part === 'property'
        ? `${at.name}=${writeValue(value)}`
        : at.rest
          ? String(value).split(/\s+/).map(writeName).join(' ')
          : writeValue(value),
    ),
  ].join(' ');
}
