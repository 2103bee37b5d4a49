/** Rows of a spreadsheet taken into a table: those whose key is known change cells, the others become new rows. */
import { insertNode } from '../edit/edit-document.ts';
import type { TextEdit } from '../edit/text-edit.ts';
import type { ParsedFile } from '../text/parse-file.ts';
import { type CellChange, editCells, newRow, type RefusedCell } from './edit-table.ts';
import { readTable, rowName } from './read-table.ts';
import type { TableDefinition } from './table-definition.ts';

export interface Sheet {
  /** Column headings, as the sheet has them. */
  readonly headings: readonly string[];
  readonly rows: readonly (readonly string[])[];
}
/** For each heading of the sheet the id of the table's column, or null: left out. */
export type Mapping = readonly (string | null)[];

export interface TakenSheet {
  readonly edits: readonly TextEdit[];
  readonly refused: readonly RefusedCell[];
  readonly changed: number;
  readonly added: number;
  readonly same: number;
}

/** A first guess at the mapping: headings that read like a column's title or id. */
export function guessMapping(table: TableDefinition, headings: readonly string[]): Mapping {
  const plain = (words: string): string => words.toLowerCase().replace(/[^a-z0-9]+/g, '');
  const taken = new Set<string>();
  return headings.map((heading) => {
    const column = table.columns.find(
      ({ id, title }) => !taken.has(id) && [plain(id), plain(title)].includes(plain(heading)),
    );
    if (column === undefined) return null;
    taken.add(column.id);
    return column.id;
  });
}

/**
 * Empty cells of the sheet leave what is written; a value is taken away in the table itself, never by an empty cell.
 * A row inside another (a stint in its task) is found by both names; a new one of those is refused.
 */
export function takeSheet(file: ParsedFile, table: TableDefinition, sheet: Sheet, mapping: Mapping): TakenSheet {
  const rows = new Map(readTable(file, table).map((row) => [row.key, row]));
  const columns = new Map(table.columns.map((column) => [column.id, column]));
  const changes: CellChange[] = [];
  const born: TextEdit[] = [];
  const refused: RefusedCell[] = [];
  let [changed, same] = [0, 0];
  for (const [line, cells] of sheet.rows.entries()) {
    const given = new Map<string, string>();
    for (const [index, id] of mapping.entries()) {
      const words = cells[index]?.trim() ?? '';
      if (id !== null && words !== '') given.set(id, words);
    }
    if (given.size === 0) continue;
    const own = rowName(
      table,
      table.columns.map(({ id }) => given.get(id) ?? null),
    );
    const around = given.get('in');
    const key = around === undefined ? own : `${around}/${own}`;
    const row = rows.get(key);
    if (row !== undefined) {
      const differing = [...given].filter(
        ([id, words]) => row.cells[table.columns.findIndex((one) => one.id === id)] !== words,
      );
      for (const [id, words] of differing) {
        const column = columns.get(id);
        if (column !== undefined) changes.push({ row, column, words });
      }
      if (differing.length === 0) same++;
      else changed++;
    } else if (table.adds === null) {
      refused.push({
        row: key === '' ? `row ${line + 1}` : key,
        column: 'in',
        words: own,
        why: 'the text has no such row, and a new one is written in the text, inside what it belongs to',
      });
    } else {
      const made = newRow(table, given);
      if ('refused' in made)
        refused.push(...made.refused.map((one) => ({ ...one, row: one.row === '' ? `row ${line + 1}` : one.row })));
      else born.push(insertNode(file, made.node, lastOf(file, table)));
    }
  }
  const { edits, refused: cellsRefused } = editCells(file, changes);
  // New rows all go to one spot; the last one in is the first one there, so they are put in backwards.
  const all = [...born.reverse(), ...edits].sort((a, b) => b.at - a.at);
  return { edits: all, refused: [...refused, ...cellsRefused], changed, added: born.length, same };
}

function lastOf(file: ParsedFile, table: TableDefinition): { readonly after: readonly number[] } | 'end' {
  const last = file.nodes.findLastIndex(({ name }) => table.nodes.includes(name));
  return last < 0 ? 'end' : { after: [last] };
}
