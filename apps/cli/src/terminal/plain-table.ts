/** A table for the terminal without lines between its rows. */
import Table from 'cli-table3';

export function plainTable(head: string[]): Table.Table {
  const chars = { mid: '', 'left-mid': '', 'mid-mid': '', 'right-mid': '' };
  return new Table({ head, chars, style: { head: [], border: [] } });
}
