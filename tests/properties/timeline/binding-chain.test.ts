/** What is called tight cannot start sooner: the replay, which shares nothing with the chain, objects to every earlier start. */
import { bindingChain, bindings } from '@handrail/eva/timeline/binding-chain';
import { replayTimeline } from '@handrail/eva/proof/replay/replay-timeline';
import type { EvaTimeline, Timeline } from '@handrail/eva/timeline/timeline';
import { beforeAll, describe, expect, test } from 'vitest';
import { plannedFulmar } from '../../support/planned-fulmar.ts';

let planned: ReturnType<typeof plannedFulmar>;
beforeAll(() => {
  planned = plannedFulmar(300);
});

const EARLIER_S = 60;

/** The timeline with one stint a minute sooner and its travel before it moved along. */
function sooner(timeline: Timeline, eva: EvaTimeline, key: string): Timeline {
  const stint = eva.stints.find((candidate) => candidate.stint === key);
  if (stint === undefined) throw new Error(`no ${key}`);
  const moved = {
    ...stint,
    startS: stint.startS - EARLIER_S,
    endS: stint.endS - EARLIER_S,
    stepEndsS: stint.stepEndsS.map((s) => s - EARLIER_S),
  };
  return {
    ...timeline,
    evas: timeline.evas.map((other) =>
      other.eva === eva.eva
        ? { ...other, stints: other.stints.map((candidate) => (candidate.stint === key ? moved : candidate)) }
        : other,
    ),
  };
}

describe('bindings', () => {
  test('the plan they are read from is clean', () => {
    expect(
      replayTimeline(planned.campaign, planned.hardware, planned.timeline).filter(
        (finding) => finding.severity === 'error',
      ),
    ).toEqual([]);
  });

  test('every tight stint breaks something when it starts a minute sooner', () => {
    const { campaign, hardware, timeline } = planned;
    let tight = 0;
    for (const eva of timeline.evas) {
      for (const binding of bindings(campaign, hardware, eva).values()) {
        if (binding.kind !== 'tight') continue;
        tight++;
        const errors = replayTimeline(campaign, hardware, sooner(timeline, eva, binding.stint)).filter(
          (finding) => finding.severity === 'error',
        );
        expect(errors.length, `${binding.stint}: ${binding.words}`).toBeGreaterThan(0);
      }
    }
    expect(tight).toBeGreaterThan(30);
  });

  test('no stint is said to start before it could', () => {
    for (const eva of planned.timeline.evas) {
      for (const binding of bindings(planned.campaign, planned.hardware, eva).values())
        expect(binding.slackS, binding.stint).toBeGreaterThanOrEqual(0);
    }
  });

  test('a chain goes back in time and ends', () => {
    for (const eva of planned.timeline.evas) {
      const found = bindings(planned.campaign, planned.hardware, eva);
      const starts = new Map(eva.stints.map((stint) => [stint.stint, stint.startS]));
      for (const key of found.keys()) {
        const chain = bindingChain(found, key);
        for (let at = 1; at < chain.length; at++) {
          expect(starts.get(chain[at]?.stint ?? '')).toBeLessThanOrEqual(starts.get(chain[at - 1]?.stint ?? '') ?? 0);
        }
      }
    }
  });
});
