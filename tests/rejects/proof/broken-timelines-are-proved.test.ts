/** Whatever is wrong with a timeline, the proof ends, never says "checked", and says something of it. */
import { prove } from '@handrail/eva/proof/claim/prove';
import { describe, expect, it } from 'vitest';
import { breakIt } from '../replay/broken.ts';
import { BROKEN } from '../replay/timelines/all.ts';
import { TWO_EVAS } from '../replay/two-evas.ts';

describe('the proof of a timeline with something wrong', () => {
  // All that break the structure, and every fifth of the others: the replay has its own test of each.
  const structural = /format|names|times|steps-fill|every-|hatch|passage|role|path-leads/;
  for (const broken of BROKEN.filter(({ rule }, at) => structural.test(rule) || at % 5 === 0)) {
    it(`ends and is not "checked" when ${broken.name}`, () => {
      const { campaign, model, timeline } = breakIt(broken);
      const stamp = prove(campaign, model, timeline, { mostScale: 0 });
      expect(stamp.verdict).not.toBe('checked');
      expect(stamp.findings.some(({ rule }) => rule === broken.rule)).toBe(true);
    });
  }

  it('ends for an empty timeline', () => {
    const { campaign, model, timeline } = TWO_EVAS;
    const stamp = prove(campaign, model, { ...timeline, evas: [] });
    expect(stamp.verdict).not.toBe('checked');
    expect(stamp.evas).toEqual([]);
  });
});
