/** The demo campaign, planned and then replayed by the other program. */
import { readFileSync } from 'node:fs';
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { formatFindings } from '@handrail/eva/finding/format-finding';
import { inferHardware } from '@handrail/eva/hardware/infer-hardware';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { templates } from '@handrail/eva/kinds/templates.generated';
import { replayTimeline } from '@handrail/eva/proof/replay/replay-timeline';
import { planCampaign } from '@handrail/eva/schedule/plan-campaign';
import type { PlannedStint, Timeline } from '@handrail/eva/timeline/timeline';
import { describe, expect, it } from 'vitest';

function load(name: string) {
  const file = new URL(`../../../examples/${name}`, import.meta.url);
  const { campaign, problems } = readCampaign([{ name, text: readFileSync(file) }], standardLibrary, { templates });
  if (campaign === null) throw new Error(`${name} does not read: ${problems[0]?.what ?? ''}`);
  const model = inferHardware(campaign, standardLibrary);
  const running = planCampaign(campaign, model, { seed: 1, conflictBudget: 300, skipReasons: true, sharingTries: 0 });
  let next = running.next();
  while (next.done !== true) next = running.next();
  return { campaign, model, timeline: next.value.timeline };
}

describe('the plan of Fulmar Station', () => {
  const { campaign, model, timeline } = load('fulmar.kdl');
  const stints = timeline.evas.flatMap((plan) => plan.stints);

  it('has all three EVAs and replays without an error', () => {
    expect(timeline.evas.map((plan) => plan.eva)).toEqual(['mast', 'pump', 'harvest']);
    expect(stints.length).toBeGreaterThanOrEqual(60);
    const errors = replayTimeline(campaign, model, timeline).filter((finding) => finding.severity === 'error');
    expect(formatFindings(errors)).toBe('');
  });

  it('does not replay when any one stint is started half an hour earlier or later', () => {
    const moved = (key: string, byS: number): Timeline => ({
      ...timeline,
      evas: timeline.evas.map((plan) => ({
        ...plan,
        stints: plan.stints.map(
          (one): PlannedStint =>
            one.stint !== key
              ? one
              : {
                  ...one,
                  startS: one.startS + byS,
                  endS: one.endS + byS,
                  stepEndsS: one.stepEndsS.map((endS) => endS + byS),
                },
        ),
      })),
    });
    const unseen = stints.flatMap(({ stint }) =>
      [-1800, 1800]
        .filter((byS) => replayTimeline(campaign, model, moved(stint, byS)).length === 0)
        .map((byS) => `${stint} ${byS}`),
    );
    // The lanes are full: hardly anything has half an hour of room around it.
    expect(unseen.length).toBeLessThanOrEqual(stints.length * 2 * 0.05);
  });

  it('does not replay when two people swap their work', () => {
    const swap: Record<string, string> = { EV1: 'EV2', EV2: 'EV1' };
    for (const { stint } of stints.filter((one) => one.assigned.includes('EV1'))) {
      const other: Timeline = {
        ...timeline,
        evas: timeline.evas.map((plan) => ({
          ...plan,
          stints: plan.stints.map((one) =>
            one.stint === stint ? { ...one, assigned: one.assigned.map((id) => swap[id] ?? id) } : one,
          ),
        })),
      };
      expect(replayTimeline(campaign, model, other).length, stint).toBeGreaterThan(0);
    }
  });
});

describe('a first campaign without places', () => {
  it('replays without an error', () => {
    const { campaign, model, timeline } = load('first-campaign.kdl');
    expect(timeline.evas[0]?.stints).toHaveLength(4);
    const errors = replayTimeline(campaign, model, timeline).filter((finding) => finding.severity === 'error');
    expect(formatFindings(errors)).toBe('');
  });
});
