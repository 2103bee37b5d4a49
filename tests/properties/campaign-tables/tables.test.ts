import { readFileSync } from 'node:fs';
import { applyEdit } from '@handrail/eva/campaign/edit/text-edit';
import { ProblemList } from '@handrail/eva/campaign/problem/problem';
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { CAMPAIGN_TABLES } from '@handrail/eva/campaign/table/campaign-tables';
import { editCells, newRow } from '@handrail/eva/campaign/table/edit-table';
import { readTable, type TableRow } from '@handrail/eva/campaign/table/read-table';
import type { TableColumn, TableDefinition } from '@handrail/eva/campaign/table/table-definition';
import { guessMapping, takeSheet } from '@handrail/eva/campaign/table/take-sheet';
import { type ParsedFile, parseFile } from '@handrail/eva/campaign/text/parse-file';
import type { TextEdit } from '@handrail/eva/campaign/edit/text-edit';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { templates } from '@handrail/eva/kinds/templates.generated';
import { describe, expect, test } from 'vitest';

const NAME = 'fulmar.kdl';
const FULMAR = readFileSync('examples/fulmar.kdl', 'utf8');
const parsed = (text: string): ParsedFile => parseFile(NAME, text, new ProblemList());
const file = parsed(FULMAR);

function applied(text: string, edits: readonly TextEdit[]): string {
  let files = [{ name: NAME, text }] as readonly { name: string; text: string }[];
  for (const edit of edits) files = applyEdit(files, edit).files;
  return files[0]?.text ?? '';
}
function tableOf(id: string): TableDefinition {
  const found = CAMPAIGN_TABLES.find((table) => table.id === id);
  if (found === undefined) throw new Error(id);
  return found;
}
function columnOf(table: TableDefinition, id: string): TableColumn {
  const found = table.columns.find((column) => column.id === id);
  if (found === undefined) throw new Error(`${table.id} ${id}`);
  return found;
}
function rowOf(rows: readonly TableRow[], key: string): TableRow {
  const found = rows.find((row) => row.key === key);
  if (found === undefined) throw new Error(`${key} of ${rows.map((row) => row.key).join(' ')}`);
  return found;
}
const errorsOf = (text: string): readonly string[] =>
  readCampaign([{ name: NAME, text }], standardLibrary, { templates })
    .problems.filter((one) => one.severity === 'error')
    .map((one) => one.what);

describe.each(CAMPAIGN_TABLES.map((table) => [table.id, table] as const))('the table of %s', (_, table) => {
  const rows = readTable(file, table);

  test('has a row for each node of its sort, with keys that tell them apart', () => {
    const written = FULMAR.split('\n').filter((line) =>
      table.nodes.some((node) => new RegExp(`^\\s*${node} `).test(line)),
    );
    // A second way to count: lines of the demo begin with their node's name, one node a line.
    expect(rows.length).toBe(written.length);
    expect(new Set(rows.map(({ key }) => key)).size).toBe(rows.length);
  });

  test('taken out as a sheet and in again, it changes nothing', () => {
    const headings = table.columns.map(({ title }) => title);
    const mapping = guessMapping(table, headings);
    expect(mapping).toEqual(table.columns.map(({ id }) => id));
    const sheet = { headings, rows: rows.map(({ cells }) => cells.map((cell) => cell ?? '')) };
    const taken = takeSheet(file, table, sheet, mapping);
    expect(taken).toMatchObject({ edits: [], refused: [], changed: 0, added: 0 });
    expect(taken.same + rows.filter(({ key }) => key.includes('line ')).length).toBe(rows.length);
  });

  test('a cell written as it stands is no edit', () => {
    const changes = rows.flatMap((row) =>
      table.columns.flatMap((column, index) => {
        const words = row.cells[index];
        return words == null || column.at.part === 'around' ? [] : [{ row, column, words }];
      }),
    );
    const { edits, refused } = editCells(file, changes);
    expect(refused).toEqual([]);
    // Numbers may be written otherwise (1.0 as 1); what the text says is the same.
    const after = readTable(parsed(applied(FULMAR, edits)), table);
    expect(after.map(({ cells }) => cells)).toEqual(rows.map(({ cells }) => cells));
  });
});

describe('an edited cell', () => {
  test('changes its value and leaves every other byte', () => {
    const table = tableOf('durations');
    const rows = readTable(file, table);
    const row = rows.find(({ cells }) => cells[table.columns.findIndex(({ id }) => id === 'minutes-likely')] !== null);
    if (row === undefined) throw new Error('the demo has minutes');
    const { edits, refused } = editCells(file, [{ row, column: columnOf(table, 'minutes-likely'), words: '17,5' }]);
    expect(refused).toEqual([]);
    expect(edits).toHaveLength(1);
    const [edit] = edits as [TextEdit];
    expect(edit.insert).toBe('17.5');
    const text = applied(FULMAR, edits);
    expect(text.slice(0, edit.at)).toBe(FULMAR.slice(0, edit.at));
    expect(text.slice(edit.at + 4)).toBe(FULMAR.slice(edit.at + edit.remove.length));
  });

  test('of a node that is not there yet brings it, with all its cells', () => {
    const table = tableOf('places');
    const row = readTable(file, table).find(({ key }) => key.endsWith('/porch')) as TableRow;
    const changes = ['x', 'y', 'z'].map((axis) => ({
      row,
      column: columnOf(table, `seen-from-${axis}`),
      words: '4 m',
    }));
    const text = applied(FULMAR, editCells(file, changes).edits);
    expect(text).toContain('seen-from x="4 m" y="4 m" z="4 m"');
    expect(errorsOf(text)).toEqual([]);
  });

  test.each([
    ['hardware', 'mass', '12 bananas', /unit|mass|quantity/i],
    ['hardware', 'kind', '', /needed/],
    ['tasks', 'rank', 'first', /number/i],
    ['crew', 'role', 'outsid', /outside/],
  ])('of %s %s as "%s" is refused, with the reason', (id, column, words, why) => {
    const table = tableOf(id);
    const [row] = readTable(file, table) as [TableRow];
    const { edits, refused } = editCells(file, [{ row, column: columnOf(table, column), words }]);
    expect(edits).toEqual([]);
    expect(refused[0]?.why).toMatch(why);
  });

  test('emptied, takes the value away; titles keep their quotes', () => {
    const table = tableOf('crew');
    const row = rowOf(readTable(file, table), 'EV1');
    const { edits } = editCells(file, [
      { row, column: columnOf(table, 'carries'), words: '' },
      { row, column: columnOf(table, 'title'), words: 'Lead' },
    ]);
    const line =
      applied(FULMAR, edits)
        .split('\n')
        .find((one) => one.startsWith('person EV1')) ?? '';
    expect(line).toContain('person EV1 "Lead" role=outside');
    expect(line).not.toContain('carries');
  });
});

describe('a sheet', () => {
  const table = tableOf('objectives');
  const headings = ['ID', 'Title', 'Rank', 'Somebody’s own column'];

  test('changes the rows it knows and adds the others', () => {
    const [known] = readTable(file, table) as [TableRow];
    const rows = [
      [known.key, 'Renamed', '', 'x'],
      ['inspect-fin', 'Look at the fin', '90', ''],
      ['inspect-lamp', 'Look at the lamp', '91', ''],
    ];
    const mapping = guessMapping(table, headings);
    expect(mapping).toEqual(['id', 'title', 'rank', null]);
    const taken = takeSheet(file, table, { headings, rows }, mapping);
    expect(taken).toMatchObject({ refused: [], changed: 1, added: 2, same: 0 });
    const after = readTable(parsed(applied(FULMAR, taken.edits)), table);
    expect(after.map(({ key }) => key)).toEqual([
      ...readTable(file, table).map(({ key }) => key),
      'inspect-fin',
      'inspect-lamp',
    ]);
    expect(rowOf(after, known.key).cells[1]).toBe('Renamed');
  });

  test('has its bad rows refused by name while the good ones are taken', () => {
    const rows = [
      ['good', 'Good', '92'],
      ['bad', 'Bad', 'soon'],
      ['', 'nameless', '93'],
    ];
    const taken = takeSheet(file, table, { headings, rows }, guessMapping(table, headings));
    expect(taken.added).toBe(1);
    expect(taken.refused.map(({ row, column }) => [row, column])).toEqual([
      ['bad', 'rank'],
      ['row 3', 'id'],
    ]);
  });

  test('a row of it reads as one node of the text', () => {
    expect(
      newRow(
        tableOf('hardware'),
        new Map([
          ['ids', 'n1 n2'],
          ['kind', 'bolt'],
          ['at', 'pump-bay'],
          ['turns', '12'],
        ]),
      ),
    ).toEqual({
      node: 'hardware n1 n2 kind=bolt at=pump-bay turns=12',
    });
  });
});
