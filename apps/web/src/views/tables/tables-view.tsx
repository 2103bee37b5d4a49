/** The campaign as tables: sorted, filtered, edited in place, taken in from spreadsheets and given out to them. */
import { CAMPAIGN_TABLES } from '@handrail/eva/campaign/table/campaign-tables';
import { editCells, type RefusedCell } from '@handrail/eva/campaign/table/edit-table';
import { readTable, type TableRow } from '@handrail/eva/campaign/table/read-table';
import type { TableColumn, TableDefinition } from '@handrail/eva/campaign/table/table-definition';
import { ProblemList } from '@handrail/eva/campaign/problem/problem';
import { parseFile } from '@handrail/eva/campaign/text/parse-file';
import { useMemo, useRef, useState } from 'react';
import { change } from '../../document/document-store.ts';
import { FILE_NAME } from '../../document/working-copy.ts';
import { look, tell } from '../../session/session-store.ts';
import { useDocument, useSession } from '../shell/use-stores.ts';
import { csvText, workbookFile } from './sheet-files.ts';
import { SheetIntake } from './sheet-intake.tsx';
import styles from './tables.module.css';

export default function TablesView() {
  const text = useDocument((state) => state.copy.text);
  const page = useSession((state) => state.page);
  const table = (CAMPAIGN_TABLES.find(({ id }) => id === page) ?? CAMPAIGN_TABLES[0]) as TableDefinition;
  const [words, setWords] = useState('');
  const [sort, setSort] = useState<{ readonly column: number; readonly isUp: boolean } | null>(null);
  const [refused, setRefused] = useState<readonly RefusedCell[]>([]);
  const [isTaking, setTaking] = useState(false);
  const file = useMemo(() => parseFile(FILE_NAME, text, new ProblemList()), [text]);
  const rows = useMemo(() => readTable(file, table), [file, table]);
  const columns = shownColumns(table, rows);
  const seen = rows.filter((row) => row.cells.some((cell) => cell?.toLowerCase().includes(words.toLowerCase())));
  const sorted =
    sort === null
      ? seen
      : seen.toSorted((a, b) => compare(a.cells[sort.column] ?? '', b.cells[sort.column] ?? '') * (sort.isUp ? 1 : -1));

  const write = (row: TableRow, column: TableColumn, typed: string): boolean => {
    const made = editCells(file, [{ row, column, words: typed }]);
    setRefused(made.refused);
    if (made.edits.length > 0) change(`${table.title}: ${row.key}`, { edits: made.edits });
    const [first] = made.refused;
    tell(
      first === undefined
        ? `${row.key} ${column.title} is now ${typed === '' ? 'not stated' : typed}`
        : `Not taken: ${first.why}`,
    );
    return first === undefined;
  };
  const asRows = (): readonly (readonly string[])[] => rows.map(({ cells }) => cells.map((cell) => cell ?? ''));
  const headings = table.columns.map(({ title }) => title);

  return (
    <section className={styles.view} aria-label="Tables">
      <div className={styles.tabs} role="group" aria-label="Which table">
        {CAMPAIGN_TABLES.map(({ id, title }) => (
          <button
            key={id}
            type="button"
            aria-pressed={id === table.id}
            onClick={() => {
              look({ page: id });
              setSort(null);
              setRefused([]);
              setTaking(false);
            }}
          >
            {title}
          </button>
        ))}
      </div>
      <div>
        <div className={styles.bar}>
          <span>{table.about}</span>
          <input
            type="search"
            aria-label="Filter rows"
            placeholder="filter"
            value={words}
            onChange={(event) => setWords(event.target.value)}
          />
          <button type="button" aria-expanded={isTaking} onClick={() => setTaking(!isTaking)}>
            Take in a sheet …
          </button>
          <button
            type="button"
            onClick={() => save(new Blob([csvText(headings, asRows())], { type: 'text/csv' }), `${table.id}.csv`)}
          >
            CSV
          </button>
          <button
            type="button"
            onClick={() =>
              void workbookFile(table.title, headings, asRows()).then((blob) => save(blob, `${table.id}.xlsx`))
            }
          >
            XLSX
          </button>
        </div>
        {file.document === null ? (
          <p className={styles.refused}>
            The text has a syntax error: tables can be read as far as it goes, and edited when it is mended.
          </p>
        ) : null}
        {refused.length === 0 ? null : (
          <ul className={styles.refused} role="alert">
            {refused.map((one) => (
              <li key={`${one.row}${one.column}${one.words}`}>
                {one.row}, {one.column}: "{one.words}" was not taken: {one.why}
              </li>
            ))}
          </ul>
        )}
        {isTaking ? (
          <SheetIntake file={file} table={table} onDone={(not) => (setRefused(not), setTaking(false))} />
        ) : null}
      </div>
      <div className={styles.scroll} tabIndex={0} role="region" aria-label={`${table.title}, can be scrolled`}>
        <table className={styles.grid}>
          <caption>
            {table.title}: {sorted.length} of {rows.length} rows
          </caption>
          <thead>
            <tr>
              {columns.map(({ column, index }) => (
                <th
                  key={column.id}
                  scope="col"
                  aria-sort={sort?.column === index ? (sort.isUp ? 'ascending' : 'descending') : 'none'}
                >
                  <button
                    type="button"
                    title={column.about}
                    onClick={() => setSort({ column: index, isUp: sort?.column === index ? !sort.isUp : true })}
                  >
                    {column.title}
                    {sort?.column === index ? (sort.isUp ? ' ▲' : ' ▼') : ''}
                  </button>
                </th>
              ))}
              <th scope="col">text</th>
            </tr>
          </thead>
          <tbody>
            {sorted.map((row) => (
              <tr key={row.key}>
                {columns.map(({ column, index }, at) => (
                  <td key={column.id} className={at === 0 ? styles.key : undefined}>
                    <Cell
                      row={row}
                      column={column}
                      now={row.cells[index] ?? ''}
                      isFixed={file.document === null || column.at.part === 'around'}
                      onWrite={write}
                    />
                  </td>
                ))}
                <td>
                  <button type="button" onClick={() => look({ view: 'text', line: row.span.line })}>
                    line {row.span.line}
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

interface CellProps {
  readonly row: TableRow;
  readonly column: TableColumn;
  readonly now: string;
  readonly isFixed: boolean;
  readonly onWrite: (row: TableRow, column: TableColumn, words: string) => boolean;
}

/** Enter or leaving writes, Escape leaves what stands, arrows up and down go through the column. */
function Cell({ row, column, now, isFixed, onWrite }: CellProps) {
  const field = useRef<HTMLInputElement>(null);
  const take = (): void => {
    const typed = field.current?.value ?? '';
    if (typed !== now && !onWrite(row, column, typed) && field.current !== null) field.current.value = now;
  };
  return (
    <input
      // A changed text gives the cell its new words.
      key={now}
      ref={field}
      defaultValue={now}
      readOnly={isFixed}
      aria-label={`${column.title} of ${row.key}`}
      onBlur={take}
      onKeyDown={(event) => {
        if (event.key === 'Enter') take();
        if (event.key === 'Escape') event.currentTarget.value = now;
        if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
        const cell = event.currentTarget.closest('td');
        const line = cell?.parentElement;
        const next = event.key === 'ArrowUp' ? line?.previousElementSibling : line?.nextElementSibling;
        next?.children[[...(line?.children ?? [])].indexOf(cell as Element)]?.querySelector('input')?.focus();
      }}
    />
  );
}

/** Columns that some row uses or every row needs; the others would be empty screens. */
function shownColumns(
  table: TableDefinition,
  rows: readonly TableRow[],
): readonly { readonly column: TableColumn; readonly index: number }[] {
  return table.columns
    .map((column, index) => ({ column, index }))
    .filter(
      ({ column, index }) =>
        column.required ||
        column.at.part !== 'property' ||
        rows.length < 400 ||
        rows.some(({ cells }) => cells[index] !== null),
    );
}

function compare(a: string, b: string): number {
  const [x, y] = [Number.parseFloat(a), Number.parseFloat(b)];
  return Number.isNaN(x) || Number.isNaN(y) ? a.localeCompare(b) : x - y;
}

function save(blob: Blob, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
