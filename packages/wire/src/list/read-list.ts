/**
 * A pasted list to rows of work: who, what, minutes, order, place. Header words may stand in any order and in several
 * wordings; every mistake is told with its row.
 */
export interface ListRow {
  /** Row of the file, the header being 1. */
  readonly row: number;
  /** Ids of people, "any" or "both". */
  readonly who: string;
  readonly what: string;
  readonly minutes: number;
  /** null: no such column, or empty. */
  readonly order: number | null;
  readonly place: string | null;
}

export interface ListProblem {
  readonly row: number;
  readonly what: string;
  readonly expected: string;
}

type Column = 'who' | 'what' | 'minutes' | 'order' | 'place';
const HEADER_WORDS: Readonly<Record<Column, readonly string[]>> = {
  who: ['who', 'person', 'people', 'crew', 'ev', 'crew member'],
  what: ['what', 'task', 'activity', 'work', 'title', 'description', 'step'],
  minutes: ['minutes', 'min', 'mins', 'duration', 'time', 'duration (min)', 'minutes (min)'],
  order: ['order', 'no', 'no.', 'nr', 'number', '#', 'seq', 'sequence', 'rank'],
  place: ['place', 'where', 'at', 'worksite', 'site', 'location'],
};

/** @param cells rows of cells, the header first */
export function readList(cells: readonly (readonly string[])[]): {
  readonly rows: readonly ListRow[];
  readonly problems: readonly ListProblem[];
} {
  const problems: ListProblem[] = [];
  const header = (cells[0] ?? []).map((cell) =>
    cell
      .replace(/^\ufeff/, '')
      .trim()
      .toLowerCase(),
  );
  const columns = new Map<Column, number>();
  for (const [column, words] of Object.entries(HEADER_WORDS) as [Column, readonly string[]][]) {
    const found = header.flatMap((cell, at) => (words.includes(cell) ? [at] : []));
    if (found.length > 1) {
      problems.push({ row: 1, what: `two columns say "${column}"`, expected: 'one of them' });
    }
    if (found[0] !== undefined) columns.set(column, found[0]);
  }
  for (const column of ['who', 'what', 'minutes'] as const) {
    if (columns.has(column)) continue;
    problems.push({
      row: 1,
      what: `no column says "${column}"`,
      expected: `a header row with who, what, minutes and, if you like, order and place`,
    });
  }
  if (problems.length > 0) return { rows: [], problems };

  const rows: ListRow[] = [];
  for (const [at, line] of cells.slice(1).entries()) {
    if (line.every((cell) => cell.trim() === '')) continue;
    const row = at + 2;
    const cell = (column: Column): string => (line[columns.get(column) ?? -1] ?? '').trim();
    const who = readWho(cell('who'));
    const minutes = readMinutes(cell('minutes'));
    const order = cell('order') === '' ? null : Number(cell('order').replace(/\.$/, ''));
    if (who === null) {
      problems.push({ row, what: `"${cell('who')}" is nobody outside`, expected: 'EV1, EV2, both, any, or a name' });
    }
    if (cell('what') === '') problems.push({ row, what: 'nothing says what is done', expected: 'a few words' });
    if (minutes === null) {
      problems.push({ row, what: `"${cell('minutes')}" is not a time`, expected: '20, 20 min, or 1:05' });
    }
    if (order !== null && !Number.isFinite(order)) {
      problems.push({ row, what: `"${cell('order')}" is not a place in the order`, expected: 'a number' });
    }
    if (who === null || minutes === null || cell('what') === '') continue;
    rows.push({ row, who, what: cell('what'), minutes, order, place: cell('place') === '' ? null : cell('place') });
  }
  if (rows.length === 0 && problems.length === 0) {
    problems.push({
      row: 1,
      what: 'the list has a header and nothing below it',
      expected: 'a row for each piece of work',
    });
  }
  return { rows, problems };
}

/** "EV1", "ev 1", "both", "EV1 + EV2" → both; "EV1 or EV2" → either; null: nobody outside. */
function readWho(cell: string): string | null {
  const text = cell.toLowerCase().replace(/\bev\s+(?=\d)/g, 'ev');
  if (text === '' || /^(iv|inside|reader)$/.test(text)) return null;
  if (text === 'both' || text === 'any') return text;
  const names = text.split(/\s*(?:\+|&|,|\/|\band\b|\bor\b)\s*/).filter((name) => name !== '');
  const ids = names.map(idOf);
  if (ids.includes('')) return null;
  if (ids.length === 1) return ids[0] ?? null;
  if (/\bor\b|\//.test(text)) return ids.join(' ');
  return ids.length === 2 ? 'both' : null;
}

/** An id made from free text; '' where nothing is left of it. EV1 and its like keep their capitals. */
export function idOf(text: string): string {
  const plain = text.normalize('NFD').replace(/\p{M}/gu, '');
  if (/^ev\d$/i.test(plain)) return plain.toUpperCase();
  const slug = plain
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^[-0-9]+|-+$/g, '');
  return slug.slice(0, 40).replace(/-+$/, '');
}

/** 0.1 to 1440 minutes. */
function readMinutes(cell: string): number | null {
  const clock = /^(\d{1,2}):([0-5]\d)$/.exec(cell);
  const plain = /^(\d+(?:[.,]\d+)?)\s*(?:m|min|mins|minutes?)?$/i.exec(cell);
  const minutes =
    clock !== null
      ? Number(clock[1]) * 60 + Number(clock[2])
      : plain !== null
        ? Number((plain[1] as string).replace(',', '.'))
        : Number.NaN;
  return minutes >= 0.1 && minutes <= 1440 ? minutes : null;
}
