/**
 * Work left out of a plan: what fails then is what the independent replay refuses, stint by stint. The replay lets failed work change
 * states all the same, so the earliest that it refuses is taken out, too, and it is asked again until nothing is refused.
 */
import { replayTimeline } from '@handrail/eva/proof/replay/replay-timeline';
import { statesWithout } from '@handrail/eva/timeline/states-without';
import type { EvaTimeline, Timeline } from '@handrail/eva/timeline/timeline';
import { expect, test } from 'vitest';
import { type Doing, modelOf } from '../../rejects/replay/build-work.ts';
import { randomFrom } from '../proof/random-networks.ts';
import { type RandomPlan, randomPlan, timelineOf } from '../proof/random-plan.ts';

const NEEDS = new Set(['replay/need-holds-at-the-start', 'replay/need-holds-throughout']);

const VALUES = ['open', 'closed', 'ajar'] as const;
type Value = (typeof VALUES)[number];

/** A plan whose work rests on what stands before it: each change asks for the value that it finds, each look for what is there. */
function restingPlan(seed: number): RandomPlan {
  const plan = randomPlan(seed, 4 + (seed % 3));
  const random = randomFrom(seed + 5);
  const initial: Record<string, Value> = { cover: 'closed', valve: 'closed' };
  const now = { ...initial };
  const doings: Record<string, Doing> = {};
  for (const mark of plan.planned.filter((one) => one.endsWith(' start'))) {
    const key = mark.split(' ')[0] as string;
    const changes: [string, string, string, number][] = [];
    const looks: [string, string, number, number][] = [];
    for (const variable of ['cover', 'valve']) {
      const found = now[variable] as Value;
      const kind = random(3);
      if (kind === 0) changes.push([variable, found, (now[variable] = VALUES[random(3)] as Value), 0]);
      else if (kind === 1) looks.push([variable, random(3) === 0 ? 'open|closed' : found, 0, 1]);
    }
    doings[key] = { changes, looks };
  }
  return { ...plan, doings, model: modelOf(plan.campaign.hardware, initial, doings) };
}

function without(timeline: Timeline, gone: ReadonlySet<string>): Timeline {
  const [eva] = timeline.evas as [EvaTimeline];
  return { ...timeline, evas: [{ ...eva, stints: eva.stints.filter(({ stint }) => !gone.has(stint)) }] };
}

/** The earliest stint that the replay refuses for a need; null: none. */
function firstRefused(plan: RandomPlan, timeline: Timeline): string | null {
  const refused = replayTimeline(plan.campaign, plan.model, timeline)
    .filter(({ rule, where }) => NEEDS.has(rule) && where.stint !== null)
    .map(({ where }) => where.stint as string);
  const [eva] = timeline.evas as [EvaTimeline];
  return eva.stints.find(({ stint }) => refused.includes(stint))?.stint ?? null;
}

test('in 600 small plans, what cannot be done without one stint is what the replay refuses', () => {
  let [tried, failing, chained] = [0, 0, 0];
  for (let seed = 1; tried < 600 && seed < 8000; seed++) {
    const plan = restingPlan(seed);
    const timeline = timelineOf(plan, plan.planned);
    if (firstRefused(plan, timeline) !== null) continue;
    const [eva] = timeline.evas as [EvaTimeline];
    const first = eva.stints[seed % eva.stints.length]?.stint as string;
    tried++;
    const gone = new Set([first]);
    for (;;) {
      const refused = firstRefused(plan, without(timeline, gone));
      if (refused === null) break;
      gone.add(refused);
    }
    const { unmet } = statesWithout(plan.campaign, plan.model, eva, {
      fromS: -1,
      values: new Map(),
      changed: new Map(),
      inHand: null,
      leftOut: new Set([first]),
    });
    expect([first, ...unmet.map(({ stint }) => stint)].sort(), `seed ${seed}`).toEqual([...gone].sort());
    if (gone.size > 1) failing++;
    if (gone.size > 2) chained++;
  }
  expect(tried).toBe(600);
  expect(failing).toBeGreaterThan(100);
  expect(chained).toBeGreaterThan(30);
});
