/** Every response at any minute of the demo campaign has an answer that a person can act on: it ends, says who and what, and never helps. */
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { allResponses } from '@handrail/eva/response/any-response';
import { isBroken, whatIf } from '@handrail/eva/response/what-if';
import { whatIfThroughout } from '@handrail/eva/response/what-if-throughout';
import { expect, test } from 'vitest';
import { whatIfLines } from '../../../apps/cli/src/what-if-lines.ts';
import { plannedFulmar } from '../../support/planned-fulmar.ts';

const { campaign, hardware, timeline } = plannedFulmar();
const MIN = 60;

test.each(timeline.evas.map((eva) => [eva.eva, eva] as const))('EVA %s', (_, eva) => {
  const outside = campaign.people.filter(({ role }) => role === 'outside').map(({ id }) => id);
  let [asked, applied] = [0, 0];
  const responses = allResponses(campaign);
  for (let petS = 7 * MIN; petS < eva.bothInS; petS += 29 * MIN) {
    for (const response of responses) {
      asked++;
      const found = whatIf(campaign, hardware, standardLibrary, timeline, eva, response, petS);
      const words = whatIfLines(found).join('\n');
      expect(words).not.toMatch(/\b(undefined|NaN|null|Infinity)\b/);
      const title = `${response.id} at ${petS}`;
      if (found.notHere !== null) {
        expect(found.notHere.length, title).toBeGreaterThan(20);
        expect(found.responding, title).toEqual([]);
        continue;
      }
      applied++;
      const [self] = found.responding;
      expect(outside, title).toContain(self?.person);
      // What is told for anybody is no better than what is told for each.
      for (const who of [self?.person ?? '', ...found.alsoFor]) {
        const one = whatIf(campaign, hardware, standardLibrary, timeline, eva, response, petS, who);
        expect(one.responding[0]?.person, title).toBe(who);
        const broken = (what: typeof one): number =>
          what.consequences.filter(({ breaks }) => breaks).length + what.missingKit.length;
        expect(broken(found), title).toBeGreaterThanOrEqual(broken(one));
      }
      expect(found.delayS ?? 0, title).toBeGreaterThanOrEqual(response.timeS?.high ?? 0);
      if (response.leadsTo === null) {
        expect(found.bothInS?.thenS ?? 0, title).toBeGreaterThanOrEqual(eva.bothInS);
        expect((found.bothInS?.thenS ?? 0) - eva.bothInS, title).toBeLessThanOrEqual((found.delayS ?? 0) + 1);
      } else {
        expect(found.home?.way.mode, title).toBe(response.leadsTo);
        // Either a way with its sum, or why there is none.
        const way = found.home?.way;
        expect(way?.totalS !== null || way.blocked.length + way.unknown.length > 0, title).toBe(true);
        const running = eva.stints.filter((one) => one.endS > petS).map((one) => one.stint);
        expect([...found.givenUp.undone].sort(), title).toEqual(running.sort());
      }
    }
  }
  // Of 19 responses eleven can come up anywhere.
  expect(applied / asked).toBeGreaterThan(0.4);
});

test('asked over a whole EVA, each occasion is answered as it is when asked alone, and hatches at the end', () => {
  const eva = timeline.evas[0];
  if (eva === undefined) throw new Error('no EVA');
  for (const response of allResponses(campaign).filter(({ id }) => /bolt|connector|hatch|arm/.test(id))) {
    const all = whatIfThroughout(campaign, hardware, standardLibrary, timeline, eva, response);
    for (const { found, broken } of all) {
      const alone = whatIf(campaign, hardware, standardLibrary, timeline, eva, response, found.petS);
      expect([alone.notHere, isBroken(alone)]).toEqual([null, broken]);
      expect(alone.consequences).toEqual(found.consequences);
    }
    const times = all.map(({ found }) => found.petS);
    expect(times).toEqual([...new Set(times)].sort((a, b) => a - b));
    const closingS = eva.passages.find(({ kind }) => kind === 'close-hatch')?.startS;
    if (response.kinds.includes('hatch')) expect(times.at(-1)).toBe(closingS);
  }
});
