/**
 * Rows of a list to campaign text at level 0: a task for each row, in order for each person. With a place column it becomes the
 * skeleton of level 1: places, and a rail to each whose minutes are marked as a guess to be replaced.
 */
import { writeName, writeQuoted } from '@handrail/eva/campaign/edit/write-value';
import { idOf, type ListRow } from './read-list.ts';

const RAIL_GUESS = '3 min';

/** @param egress UTC instant of PET 0, as it stands in the text */
export function listToCampaign(rows: readonly ListRow[], name: string, egress: string): string {
  const sorted = rows
    .map((row, at) => ({ row, at }))
    .sort((a, b) => (a.row.order ?? a.at + 1) - (b.row.order ?? b.at + 1) || a.at - b.at)
    .map(({ row }) => row);
  const campaign = idOf(name) || 'list';
  const lines = [
    'handrail 1',
    `// Made from a list of ${rows.length} rows. Who goes out when is a guess until you set egress.`,
    `campaign ${writeName(campaign)} ${writeQuoted(name)}`,
    `eva ${writeName('one')} "EVA 1" egress="${egress}"`,
    '',
  ];
  const names = [...new Set(sorted.flatMap((row) => row.who.split(' ')))].filter(
    (who) => who !== 'any' && who !== 'both',
  );
  if (names.some((who) => who !== 'EV1' && who !== 'EV2')) {
    for (const who of names) lines.push(`person ${writeName(who)} role=outside`);
    lines.push('');
  }
  const taken = new Set<string>(names);
  const unique = (text: string): string => {
    const base = idOf(text) || 'work';
    let id = base;
    for (let count = 2; taken.has(id); count++) id = `${base}-${count}`;
    taken.add(id);
    return id;
  };
  const places = new Map<string, string>();
  for (const row of sorted) if (row.place !== null && !places.has(row.place)) places.set(row.place, unique(row.place));
  const porch = places.size > 0 ? unique('porch') : '';
  if (places.size > 0) {
    lines.push(`vehicle ${writeName('vehicle')} hatch=${porch} {`, `    place ${porch} "Outside the hatch"`);
    for (const [title, id] of places) lines.push(`    place ${writeName(id)} ${writeQuoted(title)}`);
    lines.push(`    // ${RAIL_GUESS} to each place is a guess: put your own figures, and rails between places.`);
    for (const id of places.values()) lines.push(`    rail ${porch} ${writeName(id)} minutes="${RAIL_GUESS}"`);
    lines.push('}', '');
  }
  const before = new Map<string, string>();
  for (const [at, row] of sorted.entries()) {
    const id = unique(row.what);
    const place =
      places.size === 0 ? '' : ` at=${writeName(row.place === null ? porch : (places.get(row.place) as string))}`;
    const people = row.who === 'both' || row.who === 'any' ? ['EV1', 'EV2'] : row.who.split(' ');
    const after = row.who === 'any' ? [] : [...new Set(people.flatMap((who) => before.get(who) ?? []))];
    lines.push(
      `task ${writeName(id)} rank=${at + 1} ${writeQuoted(row.what)} {`,
      `    stint work ${writeQuoted(row.what)} who=${writeName(row.who)}${place} {`,
      `        minutes ${row.minutes}`,
      ...after.map((key) => `        after ${writeQuoted(key)}`),
      '    }',
      '}',
    );
    if (row.who !== 'any') for (const who of people) before.set(who, `${id}/work`);
  }
  return `${lines.join('\n')}\n`;
}
