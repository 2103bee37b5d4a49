/** What must hold of any plan: more room never hurts, less spread never hurts, the hour of the day does not matter. */
import { checkControllability } from '@handrail/eva/proof/control/check-controllability';
import type { Stnu } from '@handrail/eva/proof/control/stnu';
import { prove } from '@handrail/eva/proof/claim/prove';
import { findRaces } from '@handrail/eva/proof/race/find-races';
import { flexiblePlan } from '@handrail/eva/proof/network/flexible-plan';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import { describe, expect, it } from 'vitest';
import { nominal } from '../../rejects/proof/nominal.ts';
import { CHANGE_CASES } from '../../rejects/proof/change-cases.ts';
import { NEED_CASES } from '../../rejects/proof/need-cases.ts';
import { OUTSIDE_CASES } from '../../rejects/proof/outside-cases.ts';
import { WAY_CASES } from '../../rejects/proof/way-cases.ts';
import { TIMING_CASES } from '../../rejects/proof/timing-cases.ts';
import { randomFrom } from './random-networks.ts';

function network(seed: number): Stnu {
  const random = randomFrom(seed + 900_000);
  const events = 6 + random(4);
  const contingents = [events - 1, events - 2, events - 3].map((to, at) => {
    const leastS = random(4);
    return { from: at === 0 ? 0 : random(events - 3), to, leastS, mostS: leastS + random(8), delayS: random(3) };
  });
  const requirements = Array.from({ length: events + random(events) }, () => {
    const leastS = random(12) - 6;
    return {
      from: random(events),
      to: random(events),
      leastS: random(3) === 0 ? null : leastS,
      mostS: leastS + 5 + random(14),
    };
  }).filter(({ from, to }) => from !== to);
  return { events, requirements, contingents, lanes: Array.from({ length: events }, () => 1 << random(2)) };
}

describe('a network that can be kept', () => {
  it('can be kept with more room, less spread and calls heard sooner', () => {
    let tried = 0;
    for (let seed = 1; seed <= 1200; seed++) {
      const stnu = network(seed);
      if (!checkControllability(stnu).controllable) continue;
      const random = randomFrom(seed);
      const wider = stnu.requirements.map((link) => ({
        ...link,
        leastS: link.leastS === null ? null : link.leastS - random(3),
        mostS: link.mostS === null ? null : link.mostS + random(3),
      }));
      const narrower = stnu.contingents.map((link) => {
        const cut = random(link.mostS - link.leastS + 1);
        return {
          ...link,
          leastS: link.leastS + Math.min(cut, 1),
          mostS: Math.max(link.leastS + Math.min(cut, 1), link.mostS - cut),
        };
      });
      const sooner = stnu.contingents.map((link) => ({ ...link, delayS: random((link.delayS ?? 0) + 1) }));
      for (const eased of [{ requirements: wider }, { contingents: narrower }, { contingents: sooner }]) {
        expect(
          checkControllability({ ...stnu, ...eased }).controllable,
          `seed ${seed} ${JSON.stringify({ stnu, eased })}`,
        ).toBe(true);
      }
      tried++;
    }
    expect(tried).toBeGreaterThan(200);
  });

  it('is refused with a closed chain that sums to less than nothing where it cannot', () => {
    let refused = 0;
    for (let seed = 1; seed <= 800; seed++) {
      const decided = checkControllability(network(seed));
      if (decided.controllable) continue;
      refused++;
      expect(decided.shortS, `seed ${seed}`).toBeGreaterThan(0);
      expect(decided.cycle.reduce((sum, { weightS }) => sum + weightS, 0)).toBe(-decided.shortS);
      decided.cycle.forEach((edge, at) => {
        expect(edge.to, `seed ${seed}`).toBe(decided.cycle[(at + 1) % decided.cycle.length]?.from);
      });
    }
    expect(refused).toBeGreaterThan(200);
  });
});

describe('the proof of a plan', () => {
  it('does not depend on the day: with everything in UTC shifted alike, the findings are the same', () => {
    const dayMs = 86_400_000;
    for (const { plan } of [...NEED_CASES, ...CHANGE_CASES, ...OUTSIDE_CASES, ...WAY_CASES, ...TIMING_CASES]) {
      const { campaign, model, timeline } = nominal(plan);
      const later = {
        ...campaign,
        evas: campaign.evas.map((eva) => ({ ...eva, egressUtcMs: eva.egressUtcMs + dayMs })),
        events: campaign.events.map((event) => ({ ...event, atUtcMs: event.atUtcMs + dayMs })),
        windows: campaign.windows.map((set) => ({
          ...set,
          intervals: set.intervals.map(([a, b]) => [a + dayMs, b + dayMs] as const),
        })),
      };
      const shifted: Timeline = {
        ...timeline,
        evas: timeline.evas.map((eva) => ({ ...eva, petZeroUtcMs: eva.petZeroUtcMs + dayMs })),
      };
      const said = (stamp: ReturnType<typeof prove>): string[] =>
        stamp.findings.map(({ rule, title, why }) => `${rule} ${title} ${why}`);
      const options = { mostScale: 0.5 };
      expect(said(prove(later, model, shifted, options))).toEqual(said(prove(campaign, model, timeline, options)));
    }
  });

  it('looks at the network alone: without anybody at work there is nothing to race', () => {
    const { campaign, model, timeline } = nominal({ work: [] });
    const drawn = flexiblePlan(campaign, model, timeline, 'one');
    expect(drawn).not.toBeNull();
    if (drawn !== null) expect(findRaces(drawn, new Map()).races).toEqual([]);
  });
});
