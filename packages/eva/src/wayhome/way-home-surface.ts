/**
 * The way home over a whole EVA: what it takes at every change as planned, and at every minute the worst over all pairs of
 * progress that can stand side by side then, with the margin to each limit, the stretches from which no safe stop is in reach,
 * and the last moment to start each stint.
 *
 * The worst over a stretch of time takes each step both as not begun and as done: with several pieces in one step, any part of
 * them lies between. Somebody on a rail is taken to be as far as can be from both its ends. W is the 90 % way home (step-time.ts).
 */
import type { Campaign } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import type { KindsLibrary } from '../kinds/kinds-library.ts';
import { takesPart } from '../suit/eva-supplies.ts';
import { suitWall } from '../suit/supplies-wall.ts';
import { indoorsWall } from '../timeline/indoors-wall.ts';
import type { EvaTimeline, Timeline } from '../timeline/timeline.ts';
import { type CommittedStretch, committedStretches } from './committed-stretches.ts';
import { EvaProgress } from './eva-progress.ts';
import type { Horizon } from './horizon.ts';
import { type LastMoment, lastMoments } from './last-moments.ts';
import type { ProgressPair } from './progress-network.ts';
import { type PersonSample, personSamples } from './person-samples.ts';
import { wayHomeGround, type WayHomeGround } from './safe-until.ts';
import { solver } from './solve-state.ts';
import { valuesAtEgress } from './values-at-egress.ts';
import { memoryOf } from './way-home-memory.ts';
import type { WayHome } from './way-home-plan.ts';
import type { ArmIs, Mode } from './way-home-state.ts';
import { segmentsOfPair, waysOfPair } from './ways-of-pair.ts';
import type { WaysOfPair } from './worst-of-ways.ts';
import { type Worst, type WorstAt, worstOverPairs } from './worst-over-pairs.ts';

export interface SurfaceSample {
  /** From here to the next sample. */
  readonly petS: number;
  readonly endS: number;
  /** As planned, at `petS`. */
  readonly planned: Readonly<Record<Mode, WayHome>>;
  /** Over every pair that can stand side by side between `petS` and `endS`; the arm may stop at any instant. */
  readonly worst: Readonly<Record<Mode, Worst>>;
  /**
   * Limit − endS − W, the least over those pairs whose way home is known: the margin is this or less. It is the margin where no
   * other pair of the stretch is unknown or committed (`isWhole`). null: none is known, or no limit is stated.
   */
  readonly marginAtMostS: Readonly<Record<Mode, number | null>>;
  /** The operator's return limit (`home-within`) less the time to the hatch in abort, over the same pairs; null: not stated, or none known. */
  readonly returnMarginAtMostS: number | null;
}
export interface WayHomeSurface {
  readonly eva: string;
  readonly horizon: Horizon;
  /** The least of the wall and the suits; null: none is stated. */
  readonly limit: { readonly petS: number; readonly cause: string } | null;
  readonly samples: readonly SurfaceSample[];
  /** For each person, at each of their own changes: what charts and scripts show. */
  readonly people: ReadonlyMap<string, readonly PersonSample[]>;
  readonly committed: readonly CommittedStretch[];
  readonly lastMoments: readonly LastMoment[];
  /** All that can stand side by side. */
  readonly pairs: readonly ProgressPair[];
  readonly progress: EvaProgress;
  readonly ground: WayHomeGround;
}

/** Surfaces of one campaign that are kept: those of a plan of some EVAs, and of a few hands on it. */
const MOST_KEPT = 12;
interface Kept {
  /** All that a surface rests on besides the campaign: the EVA as planned, and how the vehicle is left for it. */
  readonly key: string;
  readonly surface: WayHomeSurface;
}
const shelves = new WeakMap<Campaign, Kept[]>();
/** By timeline object, so that a rule that asks again does not have to compare. */
const asked = new WeakMap<EvaTimeline, { readonly timeline: Timeline; readonly kept: Kept }>();

/**
 * Kept for equal questions about one campaign: after an edit of one EVA the surfaces of the others stand, unless the edit changes
 * what they find at egress. In the EVA that was edited those pairs of progress stand that are as they were (way-home-memory.ts).
 * @checked tests/properties/wayhome/after-an-edit.test.ts
 */
export function wayHomeSurface(
  campaign: Campaign,
  hardware: HardwareModel,
  library: KindsLibrary,
  timeline: Timeline,
  eva: EvaTimeline,
  horizon: Horizon = 'tonight',
): WayHomeSurface {
  const isOf = ({ ground, horizon: of }: WayHomeSurface): boolean =>
    ground.campaign === campaign && ground.hardware === hardware && ground.library === library && of === horizon;
  const last = asked.get(eva);
  if (last?.timeline === timeline && isOf(last.kept.surface)) return last.kept.surface;
  const atEgress = valuesAtEgress({ campaign, hardware }, timeline, eva);
  const key = JSON.stringify([eva, [...atEgress].sort(([a], [b]) => (a < b ? -1 : 1))]);
  const shelf = shelves.get(campaign) ?? [];
  const found = shelf.find((one) => one.key === key && isOf(one.surface));
  const ground = (): WayHomeGround => wayHomeGround(campaign, hardware, library);
  const kept = found ?? { key, surface: makeSurface(ground(), atEgress, timeline, eva, horizon) };
  shelves.set(campaign, [kept, ...shelf.filter((one) => one !== kept)].slice(0, MOST_KEPT));
  asked.set(eva, { timeline, kept });
  return kept.surface;
}

/** The least of the wall, the longest EVA, a window in which nobody is outside, and the suits, by stated limit or by supplies. */
export function limitOf(
  campaign: Campaign,
  eva: EvaTimeline,
): { readonly petS: number; readonly cause: string } | null {
  const planned = campaign.evas.find((candidate) => candidate.id === eva.eva);
  const limits = [
    ...(eva.wall === null ? [] : [eva.wall]),
    ...(planned === undefined || planned.longestS === null ? [] : [{ petS: planned.longestS, cause: 'longest EVA' }]),
    ...[planned === undefined ? null : indoorsWall(campaign, planned, eva.petZeroUtcMs)].filter((one) => one !== null),
    ...campaign.people
      .filter((person) => person.role === 'outside' && takesPart(eva, person.id))
      .flatMap((person) => suitWall(campaign, person) ?? []),
  ];
  return limits.reduce<{ petS: number; cause: string } | null>(
    (least, one) => (least === null || one.petS < least.petS ? one : least),
    null,
  );
}

function makeSurface(
  ground: WayHomeGround,
  atEgress: ReadonlyMap<string, string>,
  timeline: Timeline,
  eva: EvaTimeline,
  horizon: Horizon,
): WayHomeSurface {
  const { campaign } = ground;
  const memory = memoryOf(ground, horizon);
  const progress = new EvaProgress(ground, atEgress, timeline, eva, memory);
  const solve = solver(ground, progress, horizon, memory);
  const [a = [], b = []] = progress.segments;
  const pairs = progress.network.pairs();
  const rides =
    campaign.arms.length > 0 && progress.segments.some((list) => list.some((segment) => segment.onArm !== null));
  const changes = [...new Set([...a, ...b].flatMap((segment) => [segment.startS, segment.endS]))]
    .filter((petS) => petS >= 0 && petS <= eva.bothInS)
    .sort((x, y) => x - y);
  const arms: readonly ArmIs[] = rides ? ['alive', 'dead'] : ['alive'];
  const ways = new Map<ProgressPair, WaysOfPair>();
  const waysFrom = (pair: ProgressPair): WaysOfPair => {
    const known = ways.get(pair);
    if (known !== undefined) return known;
    const made = waysOfPair(progress, segmentsOfPair(pair), solve, arms, memory);
    ways.set(pair, made);
    return made;
  };
  const worst = worstOverPairs(pairs, changes, waysFrom);
  const limit = limitOf(campaign, eva);
  const samples = changes.slice(0, -1).map((petS, at): SurfaceSample => {
    const endS = changes[at + 1] as number;
    const now = progress.at(petS);
    const finished = now.map((segment) => segment.index);
    const one = (mode: Mode): WayHome => solve(now, finished, petS, { mode, arm: 'alive', basis: 'high' });
    const worstHere = (worst[at] as WorstAt).byMode;
    const margin = (mode: Mode): number | null => {
      const { totalS } = worstHere[mode];
      return limit === null || totalS === null ? null : limit.petS - endS - totalS;
    };
    return {
      petS,
      endS,
      planned: { terminate: one('terminate'), abort: one('abort'), assist: one('assist') },
      worst: worstHere,
      returnMarginAtMostS:
        campaign.limits.homeWithinS === null || worstHere.abort.atHatchS === null
          ? null
          : campaign.limits.homeWithinS - worstHere.abort.atHatchS,
      marginAtMostS: { terminate: margin('terminate'), abort: margin('abort'), assist: margin('assist') },
    };
  });
  const committed = committedStretches(progress, pairs, waysFrom);
  return {
    eva: eva.eva,
    horizon,
    limit,
    samples,
    people: new Map(
      progress.persons.map(
        (person, index) => [person, personSamples(ground, progress, solve, index, committed)] as const,
      ),
    ),
    committed,
    lastMoments: lastMoments(progress, changes, worst, limit),
    pairs,
    progress,
    ground,
  };
}
