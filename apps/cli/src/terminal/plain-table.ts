/** A table for the terminal with one line, under its head. It fits: its widest columns are wrapped, never cut. */
import Table from 'cli-table3';
import { textWidth, wrapLines } from './wrap-text.ts';

/** A column is not made narrower than this. */
const LEAST = 6;
/** A line of the border and a space on both sides of each cell. */
const AROUND = 3;

export interface TableOptions {
  /** By column; absent: left. */
  readonly aligns?: readonly ('left' | 'right')[];
  readonly width?: number;
}

export interface PlainTable {
  readonly push: (row: readonly string[]) => void;
  readonly toString: () => string;
}

export function plainTable(head: readonly string[], { aligns = [], width }: TableOptions = {}): PlainTable {
  const rows: (readonly string[])[] = [];
  return {
    push: (row) => rows.push(row),
    toString: () => {
      const widths = fitted([head, ...rows], width ?? textWidth());
      const wrapped = (cell: string, at: number): string => wrapLines(cell, widths[at] ?? LEAST).join('\n');
      const table = new Table({
        head: head.map(wrapped),
        style: { head: [], border: [], compact: true },
        colAligns: [...aligns],
      });
      for (const row of rows) table.push(row.map(wrapped));
      return table.toString();
    },
  };
}

function fitted(rows: readonly (readonly string[])[], width: number): readonly number[] {
  const columns = (rows[0] ?? []).map((_, at) => rows.map((row) => row[at] ?? ''));
  const natural = columns.map((cells) => Math.max(...cells.map((cell) => cell.length)));
  const whole = columns.map((cells) =>
    Math.max(...cells.flatMap((cell) => cell.split(' ').map((word) => word.length))),
  );
  const room = width - AROUND * columns.length - 1;
  // Sentences are wrapped first; ids and figures are broken only where that is not enough.
  return narrowed(narrowed(natural, whole, room), [], room);
}

/** Takes from the widest column that may still give, one by one, until the sum fits or none gives any more. */
function narrowed(from: readonly number[], least: readonly number[], room: number): readonly number[] {
  const widths = [...from];
  const spare = (at: number): boolean => (widths[at] ?? 0) > Math.max(LEAST, least[at] ?? 0);
  while (widths.reduce((sum, one) => sum + one, 0) > room) {
    const giving = widths.flatMap((one, at) => (spare(at) ? [{ one, at }] : []));
    const widest = giving.reduce((most, one) => (most === undefined || one.one > most.one ? one : most), giving[0]);
    if (widest === undefined) break;
    widths[widest.at] = widest.one - 1;
  }
  return widths;
}
