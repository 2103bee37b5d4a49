/** Spreadsheets in and out of the page: XLSX, CSV, and what is pasted from one. Loaded only when a table is asked for. */
import type { Sheet } from '@handrail/eva/campaign/table/take-sheet';
import Papa from 'papaparse';

/** @throws Error in words where the file is neither */
export async function readSheetFile(file: File): Promise<Sheet> {
  if (/\.xlsx$/i.test(file.name)) {
    const { default: readWorkbook } = await import('read-excel-file/browser');
    const [first] = await readWorkbook(file);
    return sheetOf((first?.data ?? []).map((row) => row.map(cellText)));
  }
  if (/\.(csv|tsv|txt)$/i.test(file.name)) return readPasted(await file.text());
  throw new Error(`${file.name} is not a spreadsheet that can be read: save it as .xlsx or .csv`);
}

/** Text as a spreadsheet copies it (parted by tabs), or CSV with any of the usual separators. */
export function readPasted(text: string): Sheet {
  const { data } = Papa.parse<string[]>(text.replace(/^\ufeff/, '').trim(), { skipEmptyLines: 'greedy' });
  return sheetOf(data);
}

export function csvText(headings: readonly string[], rows: readonly (readonly string[])[]): string {
  return Papa.unparse({ fields: [...headings], data: rows.map((row) => row.map(harmless)) });
}

export async function workbookFile(
  title: string,
  headings: readonly string[],
  rows: readonly (readonly string[])[],
): Promise<Blob> {
  const { default: writeWorkbook } = await import('write-excel-file/browser');
  const head = headings.map((value) => ({ value, fontWeight: 'bold' as const }));
  const body = rows.map((row) => row.map((value) => ({ type: String, value })));
  return writeWorkbook([head, ...body], { sheet: title.slice(0, 31) }).toBlob();
}

/** A cell that a spreadsheet would take for a formula is given a space before it: data never runs. */
function harmless(words: string): string {
  return /^[=+@\t\r]/.test(words) || /^-\D/.test(words) ? ` ${words}` : words;
}

/** A duration cell comes as a date of 1899-12-30; other dates as instants. */
function cellText(value: unknown): string {
  if (value === null || value === undefined) return '';
  if (!(value instanceof Date)) return typeof value === 'string' ? value : JSON.stringify(value);
  const EPOCH_MS = Date.UTC(1899, 11, 30);
  const sinceMs = value.getTime() - EPOCH_MS;
  const DAY_MS = 86_400_000;
  if (sinceMs >= 0 && sinceMs < 60 * DAY_MS) return `${Math.round(sinceMs / 60_000)} min`;
  return value.toISOString();
}

function sheetOf(cells: readonly (readonly string[])[]): Sheet {
  const [headings = [], ...rows] = cells;
  return { headings: headings.map((heading) => heading.trim()), rows };
}
