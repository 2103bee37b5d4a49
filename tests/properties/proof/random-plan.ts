/** Random small plans in one place: a few stints for two or three people, states that they change and need, some joins. */
import type { Campaign, Join, Stint } from '@handrail/eva/campaign/campaign';
import type { HardwareModel } from '@handrail/eva/hardware/effects';
import type { EvaTimeline, Timeline } from '@handrail/eva/timeline/timeline';
import { bareCampaign, outsidePerson, piece, place, SPAN } from '../../reference/routes/bare-campaign.ts';
import { type Doing, MIN, modelOf, role, stint, task } from '../../rejects/replay/build-work.ts';
import { randomFrom } from './random-networks.ts';

export interface RandomPlan {
  readonly campaign: Campaign;
  readonly model: HardwareModel;
  /** In the planned order of the start and end of every stint: "t/s0 start". */
  readonly planned: readonly string[];
  /** Pairs of marks that nothing turns round: own order, joins, start before end. */
  readonly before: readonly (readonly [string, string])[];
  readonly doings: Readonly<Record<string, Doing>>;
  readonly people: readonly string[];
  readonly who: ReadonlyMap<string, string>;
}

const VALUES = ['open', 'closed'] as const;

export function randomPlan(seed: number, stints: number): RandomPlan {
  const random = randomFrom(seed);
  const people = ['EV1', 'EV2', 'EV3'].slice(0, 2 + random(2));
  const keys = Array.from({ length: stints }, (_, at) => `t/s${at}`);
  const who = new Map(keys.map((key) => [key, people[random(people.length)] as string]));
  const variables = ['cover', 'valve'].slice(0, 1 + random(2));
  const doings: Record<string, Doing> = {};
  for (const key of keys) {
    const changes: [string, string, string, number][] = [];
    const looks: [string, string, number, number][] = [];
    for (const variable of variables) {
      const kind = random(4);
      if (kind === 0) changes.push([variable, 'open|closed', VALUES[random(2)] as string, 0]);
      else if (kind === 1)
        looks.push([variable, random(3) === 0 ? 'open|closed' : (VALUES[random(2)] as string), 0, 1]);
    }
    doings[key] = { changes, looks };
  }
  const joins: (readonly [string, string])[] = [];
  for (let at = 0; at < stints; at++) {
    for (let later = at + 1; later < stints; later++) {
      const [a, b] = [keys[at] as string, keys[later] as string];
      if (who.get(a) !== who.get(b) && random(4) === 0) joins.push([a, b]);
    }
  }
  const hardware = variables.map((id) => piece(id, 'cover', 'porch'));
  const wide = (one: Stint): Stint => ({
    ...one,
    duration: { ...one.duration, boundsS: [1, 100_000], spread: { lowS: 1, likelyS: MIN, highS: 100_000 } },
  });
  const campaign = bareCampaign({
    people: people.map((id) => outsidePerson(id)),
    vehicle: { id: 'v', title: 'v', places: [place('porch')], rails: [], loadClasses: [], hatch: 'porch', span: SPAN },
    evas: [
      {
        id: 'one',
        title: 'one',
        egressUtcMs: 0,
        slipS: 0,
        longestS: null,
        egress: people.map((person) => ({ person, durationS: 1, span: SPAN })),
        ingress: people.map((person) => ({ person, durationS: 1, span: SPAN })),
        closeHatchS: 1,
        minimumSuccess: [],
        prebreathe: null,
        indoors: null,
        span: SPAN,
      },
    ],
    hardware,
    tasks: [
      task(
        't',
        1,
        'one',
        keys.map((key) => wide(stint('t', key.slice(2), [1], [role(who.get(key) as string, 'porch')]))),
        {
          order: 'free',
          joins: joins.map(
            ([releases, waits]): Join => ({
              id: `${releases}-${waits}`,
              title: 'done',
              task: 't',
              releases,
              waits,
              says: null,
              listens: null,
              span: SPAN,
            }),
          ),
        },
      ),
    ],
  });
  const model = modelOf(hardware, Object.fromEntries(variables.map((id) => [id, VALUES[random(2)] as string])), doings);
  const before: [string, string][] = keys.map((key) => [`${key} start`, `${key} end`]);
  keys.forEach((key, at) => {
    const last = keys.slice(0, at).findLast((other) => who.get(other) === who.get(key));
    if (last !== undefined) before.push([`${last} end`, `${key} start`]);
  });
  for (const [a, b] of joins) before.push([`${a} end`, `${b} start`]);
  const planned = keys.flatMap((key) => [`${key} start`, `${key} end`]);
  return { campaign, model, planned, before, doings, people, who };
}

/** The plan with its marks a minute apart, in a given order. */
export function timelineOf(plan: RandomPlan, order: readonly string[]): Timeline {
  const at = (mark: string): number => 600 + 60 * order.indexOf(mark);
  const stints = plan.campaign.tasks[0]?.stints ?? [];
  const endS = 600 + 60 * order.length;
  const count = plan.people.length;
  const eva: EvaTimeline = {
    eva: 'one',
    petZeroUtcMs: 0,
    tasks: ['t'],
    stints: stints
      .map(({ key }) => {
        const [startS, stopS] = [at(`${key} start`), at(`${key} end`)];
        return { stint: key, startS, endS: stopS, assigned: [plan.who.get(key) as string], stepEndsS: [stopS] };
      })
      .sort((a, b) => a.startS - b.startS),
    passages: [
      ...plan.people.map((person, index) => ({ kind: 'egress' as const, person, startS: index, endS: index + 1 })),
      ...plan.people.map((person, index) => ({
        kind: 'ingress' as const,
        person,
        startS: endS + index,
        endS: endS + index + 1,
      })),
      { kind: 'close-hatch' as const, person: null, startS: endS + count, endS: endS + count + 1 },
    ],
    moves: [],
    holds: [],
    joins: [],
    bothInS: endS + count + 1,
    wall: null,
    claim: { status: 'written by hand', levels: [], seed: 0, conflicts: 0 },
  };
  return {
    format: 'handrail-timeline',
    version: 1,
    campaign: plan.campaign.id,
    documentHash: plan.campaign.documentHash,
    library: plan.campaign.library,
    evas: [eva],
    leftOut: [],
  };
}

/** Every order of the marks that keeps what is kept. */
export function everyOrder(plan: RandomPlan): readonly (readonly string[])[] {
  const orders: string[][] = [];
  const needs = new Map(plan.planned.map((mark) => [mark, plan.before.filter(([, b]) => b === mark).map(([a]) => a)]));
  const extend = (order: string[], left: ReadonlySet<string>): void => {
    if (left.size === 0) orders.push(order);
    for (const mark of left) {
      if ((needs.get(mark) ?? []).some((one) => left.has(one))) continue;
      extend([...order, mark], new Set([...left].filter((one) => one !== mark)));
    }
  };
  extend([], new Set(plan.planned));
  return orders;
}
