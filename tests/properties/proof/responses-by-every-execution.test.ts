/** What a response leaves breaks exactly the work that it breaks when every order of a plan is walked through with the trouble in it. */
import type { Response } from '@handrail/eva/campaign/campaign';
import { flexiblePlan } from '@handrail/eva/proof/network/flexible-plan';
import type { TemporalNetwork } from '@handrail/eva/proof/network/temporal-network';
import { findRaces } from '@handrail/eva/proof/race/find-races';
import { brokenByResponses, responseWrites } from '@handrail/eva/proof/race/response-writes';
import { stateAccesses } from '@handrail/eva/proof/race/state-accesses';
import { replayContext } from '@handrail/eva/proof/replay/replay-context';
import { expect, test } from 'vitest';
import { SPAN } from '../../reference/routes/bare-campaign.ts';
import { randomFrom } from './random-networks.ts';
import { everyOrder, type RandomPlan, randomPlan, timelineOf } from './random-plan.ts';

const trouble = (stint: string, variable: string, value: string): Response => ({
  id: 'trouble',
  title: 'Trouble',
  trigger: 'it jams',
  appliesTo: { stint },
  steps: [],
  duration: null,
  kit: [],
  leaves: [{ variable, value, span: SPAN }],
  leavesIt: null,
  leadsTo: null,
  probability: null,
  span: SPAN,
});

/** null: the plan has races of its own, so that there is no one value to hold the trouble against. */
function brokenByProof(plan: RandomPlan, response: Response): Set<string> | null {
  const campaign = { ...plan.campaign, responses: [response] };
  const timeline = timelineOf(plan, plan.planned);
  const context = replayContext(campaign, plan.model, timeline);
  const placed = context.flown[0]?.placed ?? [];
  const network = flexiblePlan(campaign, plan.model, timeline, 'one', {}) as TemporalNetwork;
  const accesses = stateAccesses(context, network, placed);
  const result = findRaces(network, accesses);
  if (result.races.length > 0) return null;
  const broken = brokenByResponses(responseWrites(context, network, placed), accesses, result);
  return new Set(broken.map(({ other, when }) => `${other.by} ${when}`));
}

/**
 * In one order, with the trouble at the start or at the end of its stint: whose look or change meets it. The stint in trouble itself
 * leaves nothing of that state; all other work goes on changing it, and a look in the middle of which it happens is broken.
 */
function brokenInOrder(plan: RandomPlan, order: readonly string[], { appliesTo, leaves }: Response): Set<string> {
  const f = (appliesTo as { stint: string }).stint;
  const [{ variable, value }] = leaves as [Response['leaves'][number]];
  const found = new Set<string>();
  for (const troubleAt of [`${f} start`, `${f} end`]) {
    let now: string | null = null;
    const open = new Set<string>();
    for (const mark of order) {
      const [key = '', which] = mark.split(' ');
      const doing = plan.doings[key] ?? {};
      const looks = (doing.looks ?? []).find(([one]) => one === variable);
      const changes = (doing.changes ?? []).find(([one]) => one === variable);
      const minds =
        key !== f && (changes !== undefined || (looks !== undefined && !looks[1].split('|').includes(value)));
      const asks = key !== f && (looks?.[1] ?? changes?.[1]);
      if (which === 'start' && typeof asks === 'string' && now !== null && !asks.split('|').includes(now))
        found.add(key);
      if (which === 'start' && minds) open.add(key);
      if (which === 'end') open.delete(key);
      if (which === 'end' && key !== f && changes !== undefined) now = null;
      if (mark === troubleAt) {
        now = value;
        for (const one of open) found.add(one);
      }
    }
  }
  return found;
}

test('in 800 small plans without races, the same work breaks as in some order of them', () => {
  let [tried, broke, whole] = [0, 0, 0];
  for (let seed = 1; tried < 800 && seed < 6000; seed++) {
    const plan = randomPlan(seed, 3 + (seed % 2));
    const random = randomFrom(seed + 77);
    const keys = Object.keys(plan.doings);
    const response = trouble(
      keys[random(keys.length)] as string,
      'cover',
      ['open', 'closed', 'jammed'][random(3)] as string,
    );
    const found = brokenByProof(plan, response);
    if (found === null) continue;
    tried++;
    const stints = new Set([...found].map((one) => one.split(' ')[0] as string));
    const expected = new Set(everyOrder(plan).flatMap((order) => [...brokenInOrder(plan, order, response)]));
    expect([...stints].sort(), `seed ${seed}`).toEqual([...expected].sort());
    if (expected.size === 0) whole++;
    else broke++;
  }
  expect(tried).toBe(800);
  expect(Math.min(broke, whole)).toBeGreaterThan(150);
});
