/** The text of a table whose rows are all known. It fits the terminal: its widest columns are wrapped, never cut. */
import { plainTable } from './plain-table.ts';
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

export function tableText(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  { aligns = [], width = textWidth() }: TableOptions = {},
): string {
  const columns = head.map((title, at) => [title, ...rows.map((row) => row[at] ?? '')]);
  const natural = columns.map((cells) => Math.max(...cells.map((cell) => cell.length)));
  const whole = columns.map((cells) =>
    Math.max(...cells.flatMap((cell) => cell.split(' ').map((word) => word.length))),
  );
  const room = width - AROUND * head.length - 1;
  // Sentences are wrapped first; ids and figures are broken only where that is not enough.
  const widths = narrowed(narrowed(natural, whole, room), [], room);
  const wrapped = (cell: string, at: number): string => wrapLines(cell, widths[at] ?? LEAST).join('\n');
  const table = plainTable(head.map(wrapped), aligns);
  for (const row of rows) table.push(row.map(wrapped));
  return table.toString();
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
