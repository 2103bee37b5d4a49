import { plainTable, type TableOptions } from './plain-table.ts';

/** The text of a table whose rows are all known. */
export function tableText(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  options: TableOptions = {},
): string {
  const table = plainTable(head, options);
  for (const row of rows) table.push(row);
  return table.toString();
}
