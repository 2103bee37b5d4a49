import { LARGEST_FILE_CHARACTERS } from '@handrail/eva/campaign/text/decode-text';
import Papa from 'papaparse';
import { listToCampaign } from './list-to-campaign.ts';
import { type ListProblem, readList } from './read-list.ts';

/** Campaign text from the text of a list; null with problems, each with its row. */
export function newFromList(
  list: string,
  name: string,
  egress: string,
): { readonly text: string | null; readonly problems: readonly ListProblem[] } {
  if (list.length > LARGEST_FILE_CHARACTERS || list.includes('\0')) {
    return { text: null, problems: [{ row: 1, what: 'this is not a list', expected: 'CSV or TSV text' }] };
  }
  const parsed = Papa.parse<string[]>(list.replace(/^\ufeff/, ''), { delimitersToGuess: [',', '\t', ';', '|'] });
  const broken = parsed.errors
    .filter((error) => error.type === 'Quotes')
    .map((error) => ({
      row: (error.row ?? 0) + 1,
      what: 'a quote is opened and not closed',
      expected: 'quotes in pairs',
    }));
  const { rows, problems } = readList(parsed.data);
  const all = [...broken, ...problems].sort((a, b) => a.row - b.row);
  return { text: all.length > 0 ? null : listToCampaign(rows, name, egress), problems: all };
}
