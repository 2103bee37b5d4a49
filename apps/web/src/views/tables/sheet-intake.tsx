/** A spreadsheet on its way in: what it has, which column it goes to, what that would change. Nothing is written before it is said so. */
import type { RefusedCell } from '@handrail/eva/campaign/table/edit-table';
import type { TableDefinition } from '@handrail/eva/campaign/table/table-definition';
import { guessMapping, type Mapping, type Sheet, takeSheet } from '@handrail/eva/campaign/table/take-sheet';
import type { ParsedFile } from '@handrail/eva/campaign/text/parse-file';
import { useState } from 'react';
import { change } from '../../document/document-store.ts';
import { tell } from '../../session/session-store.ts';
import { readPasted, readSheetFile } from './sheet-files.ts';
import styles from './tables.module.css';

interface SheetIntakeProps {
  readonly file: ParsedFile;
  readonly table: TableDefinition;
  readonly onDone: (refused: readonly RefusedCell[]) => void;
}

export function SheetIntake({ file, table, onDone }: SheetIntakeProps) {
  const [sheet, setSheet] = useState<Sheet | null>(null);
  const [mapping, setMapping] = useState<Mapping>([]);
  const [failed, setFailed] = useState('');
  const take = (read: Sheet): void => {
    setSheet(read);
    setMapping(guessMapping(table, read.headings));
    setFailed(read.rows.length === 0 ? 'There is a row of headings and nothing below it' : '');
  };
  const taken = sheet === null || file.document === null ? null : takeSheet(file, table, sheet, mapping);
  return (
    <div className={styles.mapping}>
      <label>
        A file, .xlsx or .csv
        <input
          type="file"
          accept=".xlsx,.csv,.tsv,.txt"
          onChange={(event) => {
            const [chosen] = event.target.files ?? [];
            if (chosen !== undefined)
              readSheetFile(chosen).then(take, (cause: unknown) =>
                setFailed(cause instanceof Error ? cause.message : String(cause)),
              );
          }}
        />
      </label>
      <label>
        or paste from a spreadsheet, headings first
        <textarea
          aria-label="Paste rows here"
          onChange={(event) =>
            event.target.value.trim() === '' ? setSheet(null) : take(readPasted(event.target.value))
          }
        />
      </label>
      {failed === '' ? null : <p role="alert">{failed}</p>}
      {sheet === null ? null : (
        <>
          <h3>Which heading goes where</h3>
          <ul>
            {sheet.headings.map((heading, index) => (
              // oxlint-disable-next-line react/no-array-index-key
              <li key={`${index}${heading}`}>
                <label>
                  {heading === '' ? `column ${index + 1}` : heading}
                  <select
                    value={mapping[index] ?? ''}
                    onChange={(event) =>
                      setMapping(mapping.with(index, event.target.value === '' ? null : event.target.value))
                    }
                  >
                    <option value="">left out</option>
                    {table.columns.map((column) => (
                      <option
                        key={column.id}
                        value={column.id}
                        disabled={mapping.includes(column.id) && mapping[index] !== column.id}
                      >
                        {column.title}
                      </option>
                    ))}
                  </select>
                </label>
              </li>
            ))}
          </ul>
          <p>
            {taken === null
              ? 'The text has a syntax error: mend it first.'
              : `${taken.changed} rows would change, ${taken.added} would be new, ${taken.same} are the same, ${taken.refused.length} cells would not be taken${
                  taken.refused.length === 0
                    ? ''
                    : `: ${taken.refused
                        .slice(0, 3)
                        .map((one) => `${one.row} ${one.column} (${one.why})`)
                        .join('; ')}`
                }.`}
          </p>
          <div>
            <button
              type="button"
              disabled={taken === null || taken.edits.length === 0}
              onClick={() => {
                if (taken === null) return;
                change(`Take a sheet into ${table.title}`, { edits: taken.edits });
                tell(`${taken.changed} rows changed, ${taken.added} new`);
                onDone(taken.refused);
              }}
            >
              Take it in
            </button>
          </div>
        </>
      )}
    </div>
  );
}
