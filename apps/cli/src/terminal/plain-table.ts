/** A table for the terminal with one line, under its head. */
import Table from 'cli-table3';

export function plainTable(head: string[], aligns: readonly ('left' | 'right')[] = []): Table.Table {
  return new Table({ head, style: { head: [], border: [], compact: true }, colAligns: [...aligns] });
}
