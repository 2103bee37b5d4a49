/** The text of a table whose rows are all known. It fits the terminal: its widest columns are wrapped, never cut. */
import { plainTable } from './plain-table.ts';
import { textWidth, wrapLines } from './wrap-text.ts';

/** A column is not made narrower than this. */
const LEAST = 10;
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
  const natural = head.map((title, at) => Math.max(title.length, ...rows.map((row) => (row[at] ?? '').length)));
  const widths = fit(natural, width - AROUND * head.length - 1);
  const table = plainTable([...head], aligns);
  for (const row of rows) table.push(row.map((cell, at) => wrapLines(cell, widths[at] ?? LEAST).join('\n')));
  return table.toString();
}

/** Takes from the widest column, one by one, until the sum fits or every column is as narrow as it may be. */
function fit(natural: readonly number[], room: number): readonly number[] {
  const widths = [...natural];
  while (widths.reduce((sum, one) => sum + one, 0) > room) {
    const widest = widths.indexOf(Math.max(...widths));
    const one = widths[widest] ?? 0;
    if (one <= LEAST) break;
    widths[widest] = one - 1;
  }
  return widths;
}
