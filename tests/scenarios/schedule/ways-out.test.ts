/** The example that cannot fit: the way out that is named is the least that works, shown by planning with it and with a minute less. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { inferHardware } from '@handrail/eva/hardware/infer-hardware';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { planCampaign } from '@handrail/eva/schedule/plan-campaign';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import { describe, expect, test } from 'vitest';

const TEXT = readFileSync(join(import.meta.dirname, '../../../examples/cannot-fit.kdl'), 'utf8');

function planned(text: string): Timeline {
  const { campaign } = readCampaign([{ name: 'cannot-fit.kdl', text }], standardLibrary);
  if (campaign === null) throw new Error('the example does not read');
  const running = planCampaign(campaign, inferHardware(campaign, standardLibrary), { seed: 1, conflictBudget: 2000 });
  let next = running.next();
  while (next.done !== true) next = running.next();
  return next.value.timeline;
}

const withLimit = (minutes: number): string => TEXT.replace('limit="20 min"', `limit="${minutes} min"`);

describe('a box that cannot wait', () => {
  const why = planned(TEXT).leftOut[0]?.why ?? '';

  test('is left out for its clock and the joins that stretch it', () => {
    expect(why).toContain('the clock "Box without power" (at most 20 min)');
    expect(why).toContain('the join "old box is out"');
  });

  test('is planned with the limit that is offered, and not with a minute less', () => {
    const offered = Number(/at (\d+) min instead of 20 min/.exec(why)?.[1]);
    expect(offered).toBeGreaterThan(20);
    expect(planned(withLimit(offered)).leftOut).toEqual([]);
    expect(planned(withLimit(offered - 1)).leftOut.map(({ task }) => task)).toEqual(['swap-box']);
  });
});
