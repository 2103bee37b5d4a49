import { plainTable } from './plain-table.ts';

/** The text of a table whose rows are all known. */
export function tableText(head: string[], rows: readonly (readonly string[])[]): string {
  const table = plainTable(head);
  for (const row of rows) table.push([...row]);
  return table.toString();
}
