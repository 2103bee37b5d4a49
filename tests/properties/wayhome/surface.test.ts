/** The surface of small EVAs: longer bounds never help, equal questions have equal answers, later is never better. */
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { wayHomeSurface } from '@handrail/eva/wayhome/way-home-surface';
import { MODES } from '@handrail/eva/wayhome/way-home-state';
import type { Basis } from '@handrail/eva/wayhome/step-time';
import { wayHomeInNineOfTen } from '@handrail/eva/wayhome/way-home';
import { isWhole } from '@handrail/eva/wayhome/worst-over-pairs';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { smallCase, type SmallCase } from './small-case.ts';

const campaign = (highOne: number, highTwo: number): string => `
limits { restraint-egress "1 min" }
hardware lid "Lid" kind=cover at=tip state=closed
hardware line-tip "Line tip" kind=cable at=tip state=stowed { state retainer none }
hardware line-side "Line side" kind=cable at=side state=stowed { state retainer none }
hardware heater "Heater plug" kind=data-connector at=tip state=mated
clock cold "Unit without heat" limit="40 min" kind=difference sense=most on-stop=reset { starts heater demated; stops heater mated }
task one rank=1 eva=day {
    stint lay who=EV1 at=tip { open lid; demate heater; lay line-tip; minutes low=7 likely=10 high=${highOne} }
    stint tidy who=EV1 at=tip { gather line-tip; mate heater; close lid; minutes low=6 likely=8 high=12 }
}
task two rank=2 eva=day {
    stint lay who=EV2 at=side { lay line-side; route line-side; minutes low=5 likely=8 high=${highTwo} }
    stint tidy who=EV2 at=side { secure line-side; minutes low=3 likely=5 high=9 }
}
`;
const TIMELINE = `eva day
EV1 0:00-0:05 out
EV2 0:05-0:10 out
EV1 0:10-0:18 porch > bay > tip
EV2 0:10-0:15 porch > side
EV2 0:15-0:23 two/lay
EV1 0:18-0:28 one/lay
EV2 0:23-0:28 two/tidy
EV1 0:28-0:36 one/tidy
EV1 0:36-0:44 tip > bay > porch
EV2 0:28-0:33 side > porch
EV2 0:44-0:49 in
EV1 0:49-0:54 in
hatch 0:54-0:59
wall 6:00 longest EVA`;
const surfaceOf = (small: SmallCase) =>
  wayHomeSurface(small.campaign, small.hardware, standardLibrary, small.timeline, small.eva);

test('a longer bound never makes a margin larger or a pair go away', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 11, max: 20 }),
      fc.integer({ min: 9, max: 20 }),
      fc.integer({ min: 0, max: 20 }),
      fc.integer({ min: 0, max: 20 }),
      (one, two, more, also) => {
        const [tight, wide] = [
          surfaceOf(smallCase(campaign(one, two), TIMELINE)),
          surfaceOf(smallCase(campaign(one + more, two + also), TIMELINE)),
        ];
        expect(wide.pairs.length).toBeGreaterThanOrEqual(tight.pairs.length);
        wide.samples.forEach((sample, at) => {
          for (const mode of MODES) {
            const before = tight.samples[at]?.worst[mode].totalS ?? null;
            const after = sample.worst[mode].totalS;
            if (before !== null && after !== null) expect(after).toBeGreaterThanOrEqual(before - 1e-6);
          }
        });
      },
    ),
    { numRuns: 12, seed: 4 },
  );
});

describe('of one EVA', () => {
  const small = smallCase(campaign(15, 12), TIMELINE);
  const surface = surfaceOf(small);
  test('the worst over pairs is what each of them says when asked alone, without anything kept', () => {
    const pairs = small.progress.network.pairs();
    for (const sample of surface.samples.filter((_, at) => at % 5 === 0)) {
      for (const mode of MODES) {
        let worst: number | null = null;
        let isKnown = true;
        for (const pair of pairs) {
          if (pair.fromS >= sample.endS || pair.toS <= sample.petS) continue;
          const [when] = small.progress.anywhere([pair.a, pair.b]);
          if (when === undefined) throw new Error('there is at least one');
          for (const first of [pair.a.index, pair.a.index + 1]) {
            for (const second of [pair.b.index, pair.b.index + 1]) {
              if (pair.a.kind !== 'work' && first > pair.a.index) continue;
              if (pair.b.kind !== 'work' && second > pair.b.index) continue;
              const stateAt = (basis: Basis) =>
                small.progress.state([pair.a, pair.b], [first, second], when, 'alive', basis);
              const { totalS, unknown, blocked } = wayHomeInNineOfTen(
                small.ground,
                stateAt,
                { mode, arm: 'alive' },
                (person) => small.progress.travelOf(person, stateAt('high').values),
              );
              if (totalS !== null) worst = Math.max(worst ?? 0, totalS);
              if (unknown.length > 0 || blocked.length > 0) isKnown = false;
            }
          }
        }
        expect(sample.worst[mode].totalS ?? null, `${mode} at ${sample.petS}`).toBe(worst);
        expect(isWhole(sample.worst[mode]), `${mode} at ${sample.petS}`).toBe(isKnown);
      }
    }
  });
  test('what is planned is never worse than the worst', () => {
    for (const sample of surface.samples) {
      for (const mode of MODES) {
        const planned = sample.planned[mode].totalS;
        if (planned !== null) expect(sample.worst[mode].totalS ?? 0).toBeGreaterThanOrEqual(planned - 1e-6);
      }
    }
  });
  test('abort closes less than terminate', () => {
    for (const { planned } of surface.samples) {
      if (planned.abort.totalS !== null && planned.terminate.totalS !== null) {
        expect(planned.abort.totalS).toBeLessThanOrEqual(planned.terminate.totalS);
      }
    }
  });
  test('the last moment to start a stint is the wall less its longest course less the way home after it', () => {
    // EV2 tidies at the side, at most 9 min. The worst pair meanwhile: asked of the surface itself, which the test above has redone.
    const last = surface.lastMoments.find((moment) => moment.stint === 'two/tidy');
    const meanwhile = surface.samples.filter((sample) => sample.endS > 23 * 60 && sample.petS < 28 * 60);
    const longest = Math.max(...meanwhile.map((sample) => sample.worst.terminate.totalS ?? 0));
    const boundS = small.campaign.tasks[1]?.stints[1]?.duration.boundsS[1] ?? 0;
    expect(last?.terminate.latestS).toBeCloseTo(6 * 3600 - boundS - longest, 6);
  });
});
