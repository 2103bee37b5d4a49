/** Long work can be watched and stopped; what was found until then is kept. */
import { readFileSync, writeFileSync } from 'node:fs';
import { timelineSchema } from '@handrail/wire/timeline/timeline-schema';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { isClean, PackedHandrail } from './packed-handrail.ts';

let handrail: PackedHandrail;

beforeAll(async () => {
  handrail = await PackedHandrail.packed();
});
afterAll(() => handrail.remove());

/**
 * A stint at each place of a ring of rails with chords, each for either person: the routing of two people, whose first plan comes
 * at once and whose best takes far longer to prove than a test waits, on any machine.
 */
function stintsForAnybody(places: number): string {
  const ids = Array.from({ length: places }, (_, i) => i);
  const chordFrom = (i: number) =>
    `site-${i} site-${(i * 7 + 3) % places === i ? (i + 2) % places : (i * 7 + 3) % places}`;
  return [
    'handrail 1',
    'campaign many "Stints for anybody"',
    'person EV1 role=outside',
    'person EV2 role=outside',
    'eva long "Long EVA" egress="2031-09-14T11:40:00Z" longest="15 h"',
    'vehicle station hatch=site-0 {',
    ...ids.map((i) => `  place site-${i}`),
    ...ids.map((i) => `  rail site-${i} site-${(i + 1) % places} minutes="${2 + ((i * 29) % 7)} min"`),
    ...ids.map((i) => `  rail id=chord-${i} ${chordFrom(i)} minutes="${3 + ((i * 17) % 6)} min"`),
    '}',
    ...ids
      .slice(1)
      .map((i) => `task task-${i} { stint work who=any at=site-${i} { minutes ${11 + ((i * 37) % 23)} } }`),
  ].join('\n');
}

describe('Ctrl-C during planning', () => {
  it('keeps and prints the best plan so far, and says that it is not the last word', async () => {
    writeFileSync(handrail.path('long.kdl'), stintsForAnybody(30));
    const args = ['plan', 'long.kdl', '--eva', 'long', '--budget', '100000000', '-o', 'long.json'];
    const ended = await handrail.interrupted(args, /planning EVA long: \d+ conflicts?, both in after/);
    expect(ended.sawIt).toBe(true);
    expect(ended.err).toContain('stopping; the best timeline so far is kept');
    expect(ended.out).toContain('best found: both in at PET');
    expect(ended.out).toContain('Stopped before the search was done');
    expect(ended.code).toBe(0);
    expect(isClean(ended)).toBe(true);
    const kept = timelineSchema.parse(JSON.parse(readFileSync(handrail.path('long.json'), 'utf8')));
    expect(kept.evas.map(({ eva, claim }) => [eva, claim.status])).toEqual([['long', 'best found']]);
    // Progress is for the person at the terminal, not for the file that the answer goes to.
    expect(ended.out).not.toContain('planning EVA');
  });
});
