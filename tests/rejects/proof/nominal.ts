/** Short ways to write out a plan at one place that holds for its planning figures: minutes of PET, spreads, and what work does. */
import type { Campaign, Join, Stint } from '@handrail/eva/campaign/campaign';
import type { HardwareModel } from '@handrail/eva/hardware/effects';
import type { EvaTimeline, RequestHold, Timeline } from '@handrail/eva/timeline/timeline';
import { bareCampaign, outsidePerson, piece, place, rail, SPAN } from '../../reference/routes/bare-campaign.ts';
import { type Doing, insidePerson, MIN, modelOf, role, stint, task } from '../replay/build-work.ts';

export interface Work {
  /** `task/stint`. */
  readonly key: string;
  /** Person; more than one: lead and partner. */
  readonly who: string;
  /** Planned start, minutes of PET. */
  readonly at: number;
  /** Planning figure of each step, minutes. */
  readonly steps: readonly number[];
  /** Bounds of the whole, minutes; absent: the figure, give or take nothing. null: nothing is known. */
  readonly spread?: readonly [low: number, high: number] | null;
  readonly does?: Doing;
  /** Absent: the porch. */
  readonly place?: string;
  readonly parts?: Partial<Stint>;
}

export interface Nominal {
  readonly work: readonly Work[];
  /** Initial value of each state. */
  readonly states?: Readonly<Record<string, string>>;
  readonly joins?: readonly (readonly [releases: string, waits: string])[];
  readonly holds?: readonly RequestHold[];
  /** Ways between porch and bay: who, from, to, minute of PET, minutes. The rail is open while the state "joint" is parked. */
  readonly ways?: readonly (readonly [who: string, from: string, to: string, at: number, minutes: number])[];
  readonly campaign?: Partial<Campaign>;
  /** Anchor at the porch that everybody's tether runs from; absent: tethers are not modelled. */
  readonly anchor?: string;
  readonly slip?: number;
  /** Longest EVA, minutes. */
  readonly longest?: number;
}

export interface Flight {
  readonly campaign: Campaign;
  readonly model: HardwareModel;
  readonly timeline: Timeline;
}

export const EGRESS_MS = Date.parse('2031-09-14T12:00:00Z');
/** UTC of a minute of PET when PET 0 is on time. */
export const utc = (minute: number): number => EGRESS_MS + minute * MIN * 1000;

const BRIDGE = rail('porch', 'bay', 3 * MIN, {
  lengthM: 6,
  openWhile: [{ variable: 'joint', allowed: ['parked'], span: SPAN }],
});

/** EV1 out 0–5, EV2 5–10 (EV3 10–15), all in from the last work on. */
export function nominal(plan: Nominal): Flight {
  const people = [...new Set(['EV1', 'EV2', ...plan.work.flatMap(({ who }) => who.split(' '))])];
  const stints = plan.work.map((work) => [work, written(work)] as const);
  const tasks = [...new Set(plan.work.map(({ key }) => key.split('/')[0] as string))];
  const states = plan.states ?? {};
  const hardware = [...new Set(Object.keys(states).map((id) => id.replace(/\.holder$/, '')))]
    .filter((id) => !id.startsWith('request:'))
    .map((id) => piece(id, 'cover', 'porch'));
  if (plan.anchor !== undefined) hardware.push(piece(plan.anchor, 'anchor', 'porch'));
  const out = people.map((person) => ({ person, durationS: 5 * MIN, span: SPAN }));
  const tether = plan.anchor === undefined ? {} : { startAnchor: plan.anchor, tetherLengthM: 26 };
  const campaign = bareCampaign({
    people: [...people.map((id) => outsidePerson(id, tether)), insidePerson('IV')],
    vehicle: {
      id: 'v',
      title: 'v',
      places: [place('porch'), place('bay')],
      rails: [BRIDGE],
      loadClasses: [],
      hatch: 'porch',
      span: SPAN,
    },
    evas: [
      {
        id: 'one',
        title: 'one',
        egressUtcMs: EGRESS_MS,
        slipS: (plan.slip ?? 0) * MIN,
        longestS: (plan.longest ?? 400) * MIN,
        egress: out,
        ingress: out,
        closeHatchS: 5 * MIN,
        minimumSuccess: [],
        prebreathe: null,
        indoors: null,
        span: SPAN,
      },
    ],
    hardware,
    limits: { ...bareCampaign().limits, reactionS: 30, tetherSwapS: MIN },
    tasks: tasks.map((id, index) =>
      task(
        id,
        index + 1,
        'one',
        stints.filter(([{ key }]) => key.startsWith(`${id}/`)).map(([, one]) => one),
        {
          order: 'free',
          joins: (plan.joins ?? [])
            .filter(([releases]) => releases.startsWith(`${id}/`))
            .map(
              ([releases, waits]): Join => ({
                id: `${releases}-${waits}`,
                title: `${releases} done`,
                task: id,
                releases,
                waits,
                says: null,
                listens: null,
                span: SPAN,
              }),
            ),
        },
      ),
    ),
    ...plan.campaign,
  });
  const model = modelOf(hardware, states, Object.fromEntries(plan.work.map(({ key, does }) => [key, does ?? {}])));
  return { campaign, model, timeline: timelineOf(plan, campaign, people) };
}

function written({ key, who, steps, spread, parts, place: where }: Work): Stint {
  const [taskId, id] = key.split('/') as [string, string];
  const roles = who
    .split(' ')
    .map((person, index) => role(person, where ?? 'porch', index === 0 ? {} : { name: 'partner' }));
  const one = stint(taskId, id, steps, roles, parts);
  if (spread === null) return one;
  const { agreedS } = one.duration;
  const [lowS, highS] = spread === undefined ? [agreedS, agreedS] : spread.map((minutes) => minutes * MIN);
  const bounds = [lowS as number, highS as number] as const;
  const figures = { lowS: bounds[0], likelyS: agreedS, highS: bounds[1] };
  return { ...one, duration: { ...one.duration, spread: figures, boundsS: bounds, basis: 'three-figures' } };
}

function timelineOf(plan: Nominal, campaign: Campaign, people: readonly string[]): Timeline {
  const ends = plan.work.map(({ at, steps }) => at + steps.reduce((sum, one) => sum + one, 0));
  const wayEnds = (plan.ways ?? []).map(([, , , at, minutes]) => at + minutes);
  const inMin = Math.max(15, ...ends, ...wayEnds);
  const planned = plan.work.map(({ key, who, at, steps }) => {
    let endS = at * MIN;
    const stepEndsS = steps.map((minutes) => (endS += minutes * MIN));
    return { stint: key, startS: at * MIN, endS, assigned: who.split(' '), stepEndsS };
  });
  const passage = (kind: 'egress' | 'ingress', person: string, start: number) => ({
    kind,
    person,
    startS: start * MIN,
    endS: (start + 5) * MIN,
  });
  const lastIn = inMin + 5 * people.length;
  const eva: EvaTimeline = {
    eva: 'one',
    petZeroUtcMs: EGRESS_MS,
    tasks: campaign.tasks.map(({ id }) => id),
    stints: planned.sort((a, b) => a.startS - b.startS),
    passages: [
      ...people.map((person, index) => passage('egress', person, 5 * index)),
      ...people.map((person, index) => passage('ingress', person, inMin + 5 * index)),
      { kind: 'close-hatch', person: null, startS: lastIn * MIN, endS: (lastIn + 5) * MIN },
    ],
    moves: (plan.ways ?? []).map(([who, from, to, at, minutes]) => ({
      who,
      from,
      to,
      startS: at * MIN,
      endS: (at + minutes) * MIN,
      path: [from, to],
      anchor: plan.anchor ?? null,
      carrying: [],
    })),
    holds: plan.holds ?? [],
    joins: campaign.tasks
      .flatMap((one) => one.joins)
      .map(({ id, releases, waits }) => ({
        join: id,
        releasedS: planned.find((one) => one.stint === releases)?.endS ?? 0,
        waitsUntilS: planned.find((one) => one.stint === waits)?.startS ?? 0,
      })),
    bothInS: (lastIn + 5) * MIN,
    wall: { petS: (plan.longest ?? 400) * MIN, cause: 'longest EVA' },
    claim: { status: 'written by hand', levels: [], seed: 0, conflicts: 0 },
  };
  return {
    format: 'handrail-timeline',
    version: 1,
    campaign: campaign.id,
    documentHash: campaign.documentHash,
    library: campaign.library,
    evas: [eva],
    leftOut: [],
  };
}
