/** Long work can be watched and stopped; what was found until then is kept. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { timelineSchema } from '@handrail/wire/timeline/timeline-schema';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EXAMPLES, isClean, PackedHandrail } from './packed-handrail.ts';

let handrail: PackedHandrail;

beforeAll(async () => {
  handrail = await PackedHandrail.packed();
});
afterAll(() => handrail.remove());

describe('Ctrl-C during planning', () => {
  it('keeps and prints the best plan so far, and says that it is not the last word', async () => {
    const args = ['plan', join(EXAMPLES, 'fulmar.kdl'), '--eva', 'mast', '--budget', '100000000', '-o', 'mast.json'];
    const ended = await handrail.interrupted(args, /planning EVA mast: \d+ conflicts?, both in after/);
    expect(ended.sawIt).toBe(true);
    expect(ended.err).toContain('stopping; the best timeline so far is kept');
    expect(ended.out).toContain('best found: both in at PET');
    expect(ended.out).toContain('Stopped before the search was done');
    expect(ended.code).toBe(0);
    expect(isClean(ended)).toBe(true);
    const kept = timelineSchema.parse(JSON.parse(readFileSync(handrail.path('mast.json'), 'utf8')));
    expect(kept.evas.map(({ eva, claim }) => [eva, claim.status])).toEqual([['mast', 'best found']]);
    // Progress is for the person at the terminal, not for the file that the answer goes to.
    expect(ended.out).not.toContain('planning EVA');
  });
});
