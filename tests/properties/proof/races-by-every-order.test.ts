import { flexiblePlan } from '@handrail/eva/proof/network/flexible-plan';
import { findRaces, type RaceResult } from '@handrail/eva/proof/race/find-races';
import { leastHolds } from '@handrail/eva/proof/race/least-holds';
import { breakingExecution } from '@handrail/eva/proof/race/breaking-execution';
import { stateAccesses } from '@handrail/eva/proof/race/state-accesses';
import type { TemporalNetwork } from '@handrail/eva/proof/network/temporal-network';
import type { AgreedHold } from '@handrail/eva/proof/network/network-draft';
import { replayContext } from '@handrail/eva/proof/replay/replay-context';
import { replayTimeline } from '@handrail/eva/proof/replay/replay-timeline';
import { describe, expect, it } from 'vitest';
import { everyOrder, type RandomPlan, randomPlan, timelineOf } from './random-plan.ts';

function races(plan: RandomPlan, holds: readonly AgreedHold[] = []): { result: RaceResult; network: TemporalNetwork } {
  const timeline = timelineOf(plan, plan.planned);
  const context = replayContext(plan.campaign, plan.model, timeline);
  const network = flexiblePlan(plan.campaign, plan.model, timeline, 'one', { holds }) as TemporalNetwork;
  return { result: findRaces(network, stateAccesses(context, network, context.flown[0]?.placed ?? [])), network };
}

/** Pairs of stints of which some orders have one first and some the other, or both at once. Counted from the orders alone. */
function pairsThatTurn(plan: RandomPlan, orders: readonly (readonly string[])[]): Set<string> {
  const found = new Set<string>();
  const keys = Object.keys(plan.doings);
  const places = orders.map((order) => new Map(order.map((mark, at) => [mark, at])));
  const always = (a: string, b: string): boolean => places.every((at) => (at.get(a) as number) < (at.get(b) as number));
  for (const change of keys) {
    for (const other of keys) {
      if (change === other) continue;
      for (const [variable] of plan.doings[change]?.changes ?? []) {
        const kinds = [
          // A change needs its value at the start of the stint, too, and holds the state to its end.
          (plan.doings[other]?.changes ?? []).some(([one]) => one === variable),
          (plan.doings[other]?.looks ?? []).some(([one]) => one === variable),
        ];
        if (!kinds.includes(true)) continue;
        if (always(`${change} end`, `${other} start`) || always(`${other} end`, `${change} start`)) continue;
        found.add([change, other].sort().join('|'));
      }
    }
  }
  return found;
}

describe('races', () => {
  it('are the pairs that some order turns round, in 3000 small plans', () => {
    let [free, raced] = [0, 0];
    for (let seed = 1; seed <= 3000; seed++) {
      const plan = randomPlan(seed, 3 + (seed % 2));
      const { result } = races(plan);
      const found = new Set(result.races.map(({ first, second }) => [first.by, second.by].sort().join('|')));
      const expected = pairsThatTurn(plan, everyOrder(plan));
      expect([...found].sort(), `seed ${seed}`).toEqual([...expected].sort());
      if (found.size === 0) free++;
      else raced++;
    }
    expect(Math.min(free, raced)).toBeGreaterThan(500);
  });

  it('do not exist where one replay is clean and none is found: then every order replays clean', () => {
    const about = new Set([
      'replay/need-holds-at-the-start',
      'replay/need-holds-throughout',
      'replay/one-writer-at-a-time',
    ]);
    const broken = (plan: RandomPlan, order: readonly string[]): boolean =>
      replayTimeline(plan.campaign, plan.model, timelineOf(plan, order)).some(({ rule }) => about.has(rule));
    let [proved, orders] = [0, 0];
    for (let seed = 5000; seed < 6200 && orders < 1000; seed++) {
      const plan = randomPlan(seed, 3 + (seed % 2));
      if (races(plan).result.races.length > 0 || broken(plan, plan.planned)) continue;
      const all = everyOrder(plan);
      if (all.length < 2 || all.length > 300) continue;
      proved++;
      for (const order of all) {
        orders++;
        expect(broken(plan, order), `seed ${seed}: ${order.join(', ')}`).toBe(false);
      }
    }
    expect(proved).toBeGreaterThan(20);
    expect(orders).toBeGreaterThan(800);
  });

  it('come with an execution that breaks, and go away with the holds that are proposed, none of which can be spared', () => {
    let tried = 0;
    for (let seed = 1; seed <= 120; seed++) {
      const plan = randomPlan(seed, 4);
      const { result, network } = races(plan);
      for (const race of result.races) {
        const execution = breakingExecution(network, result.arcs, race);
        expect(execution, `seed ${seed}`).not.toBeNull();
        const petS = execution?.petS ?? [];
        expect(petS[race.second.from] as number).toBeLessThan(petS[race.first.to] as number);
        for (const { from, to, leastS, mostS } of [...network.requirements, ...network.contingents]) {
          const length = (petS[to] as number) - (petS[from] as number);
          expect(length).toBeGreaterThanOrEqual(leastS ?? Number.NEGATIVE_INFINITY);
          expect(length).toBeLessThanOrEqual(mostS ?? Number.POSITIVE_INFINITY);
        }
      }
      const holds = leastHolds(network, result.arcs, result.races);
      expect(races(plan, holds).result.races, `seed ${seed}`).toEqual([]);
      for (const spared of holds) {
        const rest = holds.filter((hold) => hold !== spared);
        expect(races(plan, rest).result.races.length, `seed ${seed} without one`).toBeGreaterThan(0);
        tried++;
      }
    }
    expect(tried).toBeGreaterThan(40);
  });
});
