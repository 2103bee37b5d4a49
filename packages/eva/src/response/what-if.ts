/**
 * A response applied to one minute of a plan: who stops for how long (the 90th percentile), what comes later because of it, which
 * clock, window, request or limit breaks, and what the way home takes from there once the immediate actions are done.
 *
 * The rest of the plan keeps its order and its durations; nothing is re-planned. Windows are looked at as the plan uses them.
 */
import type { Campaign, Stint, WindowSet } from '../campaign/campaign.ts';
import { formatDuration, formatPet } from '@handrail/quantity/time';
import type { HardwareModel } from '../hardware/effects.ts';
import type { KindsLibrary } from '../kinds/kinds-library.ts';
import { clockRuns } from '../timeline/clock-runs.ts';
import { stintsByKey } from '../timeline/person-course.ts';
import { stateWrites } from '../timeline/state-writes.ts';
import type { EvaTimeline, Timeline } from '../timeline/timeline.ts';
import { eventNetwork } from '../wayhome/event-network.ts';
import { locatePiece } from '../wayhome/locate-piece.ts';
import { boundaryName, type Segment } from '../wayhome/segments.ts';
import { wayHome } from '../wayhome/way-home.ts';
import type { WayHome } from '../wayhome/way-home-plan.ts';
import type { WayHomeCase } from '../wayhome/way-home-state.ts';
import { type WayHomeSurface, wayHomeSurface } from '../wayhome/way-home-surface.ts';
import { valueIn } from '../wayhome/safe-until.ts';
import type { AnyResponse } from './any-response.ts';
import { delayFrom } from './delay-from.ts';

export interface Consequence {
  readonly about: 'wall' | 'clock' | 'window' | 'request' | 'last moment';
  readonly words: string;
  /** What is left; negative: broken. null: it has no figure. */
  readonly marginS: number | null;
  readonly breaks: boolean;
}
export interface WhatIf {
  readonly eva: string;
  readonly petS: number;
  readonly response: AnyResponse;
  /** Who stops for it, and in which stint. */
  readonly responding: readonly { readonly person: string; readonly stint: string | null; readonly place: string }[];
  /** null: it can come up here. Else why it cannot. */
  readonly notHere: string | null;
  readonly missingKit: readonly string[];
  readonly delayS: number | null;
  /** Stints that end later, in order of time. */
  readonly delayed: readonly { readonly stint: string; readonly fromS: number; readonly toS: number }[];
  readonly bothInS: { readonly plannedS: number; readonly thenS: number } | null;
  readonly consequences: readonly Consequence[];
  readonly home: { readonly startS: number; readonly way: WayHome; readonly marginS: number | null } | null;
  /** What is missing for an answer. */
  readonly cannotTell: readonly string[];
}

export function whatIf(
  campaign: Campaign,
  hardware: HardwareModel,
  library: KindsLibrary,
  timeline: Timeline,
  eva: EvaTimeline,
  response: AnyResponse,
  petS: number,
): WhatIf {
  const surface = wayHomeSurface(campaign, hardware, library, timeline, eva);
  const { progress } = surface;
  const now = progress.at(petS);
  const stints = stintsByKey(campaign);
  const concerned = now.filter((segment) => concerns(campaign, stints, response, segment, petS));
  const notHere = concerned.length > 0 ? null : whyNotHere(response, petS);
  // Both stop: what is wrong with one is watched by the other only where it leads home; else who has it carries on alone.
  const responding = response.leadsTo !== null ? now.filter((one) => one.kind !== 'inside') : concerned.slice(0, 1);
  const cannotTell = response.timeS === null ? [`"${response.title}" states no minutes`] : [];
  const base = {
    eva: eva.eva,
    petS,
    response,
    responding: responding.map((segment) => ({ person: segment.person, stint: segment.stint, place: segment.place })),
    notHere,
    missingKit: missingKit(surface, response, now, petS),
  };
  if (response.timeS === null || notHere !== null) {
    return { ...base, delayS: null, delayed: [], bothInS: null, consequences: [], home: null, cannotTell };
  }
  const delayS = response.timeS.high;
  const home = wayHomeThen(surface, response, petS, delayS);
  if (home.way.totalS === null) cannotTell.push(...home.way.unknown);
  if (response.leadsTo !== null) {
    return { ...base, delayS, delayed: [], bothInS: null, consequences: [], home, cannotTell };
  }
  const [a = [], b = []] = progress.segments;
  const network = eventNetwork(campaign, hardware, eva, a, b);
  const times = delayFrom(network, responding, delayS);
  const then = (name: string): number => times.get(name) ?? network.planned.get(name) ?? 0;
  const moved = movedTimeline(
    eva,
    stints,
    then,
    [...a, ...b].filter((segment) => segment.kind === 'in'),
  );
  const delayed = eva.stints.flatMap((planned, at) => {
    const later = moved.stints[at];
    return later !== undefined && later.endS > planned.endS + 0.5
      ? [{ stint: planned.stint, fromS: planned.endS, toS: later.endS }]
      : [];
  });
  return {
    ...base,
    delayS,
    delayed,
    bothInS: { plannedS: eva.bothInS, thenS: moved.bothInS },
    consequences: [
      ...wallThen(surface, moved),
      ...clocksThen(campaign, hardware, eva, moved),
      ...windowsThen(campaign, stints, moved),
      ...requestsThen(campaign, hardware, eva, moved),
      ...lastMomentsThen(surface, moved),
    ],
    home,
    cannotTell,
  };
}

function concerns(
  campaign: Campaign,
  stints: ReadonlyMap<string, Stint>,
  response: AnyResponse,
  segment: Segment,
  petS: number,
): boolean {
  if (segment.kind === 'inside' || petS < segment.startS) return false;
  if (response.armStops && segment.onArm === null) return false;
  if (response.stint !== null) return segment.stint === response.stint;
  if (response.kinds.length === 0 || response.armStops) return true;
  if (segment.stint === null || segment.step === null) return false;
  const step = stints.get(segment.stint)?.steps[segment.step];
  return (step?.objects ?? []).some((id) =>
    response.kinds.includes(campaign.hardware.find((piece) => piece.id === id)?.kind ?? ''),
  );
}

function whyNotHere(response: AnyResponse, petS: number): string {
  const at = `PET ${formatPet(petS)}`;
  if (response.armStops) return `nobody is on an arm at ${at}`;
  if (response.stint !== null) return `${response.stint} is not under way at ${at}`;
  if (response.kinds.length > 0) return `nobody works on a ${response.kinds.join(' or a ')} at ${at}`;
  return `nobody is outside at ${at}`;
}

/** Kit that nobody outside holds, nor finds at the place of who responds. */
function missingKit(
  surface: WayHomeSurface,
  response: AnyResponse,
  now: readonly Segment[],
  petS: number,
): readonly string[] {
  const { ground, progress } = surface;
  const state = progress.state(
    now,
    now.map((segment) => segment.index),
    petS,
    'alive',
    'high',
  );
  const valueOf = valueIn(ground, state);
  return response.kit.filter((asked) => {
    const pieces = ground.campaign.hardware.filter((piece) => piece.id === asked || piece.kind === asked);
    return !pieces.some((piece) => {
      const at = locatePiece(ground.facts, piece, valueOf);
      return at?.kind === 'person' || now.some((segment) => at?.kind === 'place' && at.id === segment.place);
    });
  });
}

function wayHomeThen(
  surface: WayHomeSurface,
  response: AnyResponse,
  petS: number,
  delayS: number,
): NonNullable<WhatIf['home']> {
  const { progress, ground } = surface;
  const now = progress.at(petS);
  const what: WayHomeCase = {
    mode: response.leadsTo ?? 'terminate',
    arm: response.armStops ? 'dead' : 'alive',
    basis: 'high',
  };
  const before = progress.state(
    now,
    now.map((segment) => segment.index),
    petS,
    what.arm,
    what.basis,
  );
  const values = new Map(before.values);
  const writtenBy = new Map(before.writtenBy);
  for (const leave of response.leaves) {
    values.set(leave.variable, leave.value);
    writtenBy.set(leave.variable, response.id);
  }
  const clocks = before.clocks.map((running) => ({ ...running, leftS: running.leftS - delayS }));
  const state = { ...before, values, writtenBy, clocks };
  const way = wayHome(ground, state, what, (person) => progress.travelOf(person, values), surface.horizon);
  const startS = petS + delayS;
  const marginS = surface.limit === null || way.totalS === null ? null : surface.limit.petS - startS - way.totalS;
  return { startS, way, marginS };
}

/** The same timeline with each instant where the delay puts it. */
function movedTimeline(
  eva: EvaTimeline,
  stints: ReadonlyMap<string, Stint>,
  then: (name: string) => number,
  ingress: readonly Segment[],
): EvaTimeline {
  const moved = eva.stints.map((planned) => {
    const count = Math.max(1, stints.get(planned.stint)?.steps.length ?? 1);
    return {
      ...planned,
      startS: then(boundaryName(planned.stint, 0)),
      endS: then(boundaryName(planned.stint, count)),
      stepEndsS: planned.stepEndsS.map((_, step) => then(boundaryName(planned.stint, step + 1))),
    };
  });
  const lastInS = Math.max(0, ...eva.passages.filter((one) => one.kind === 'ingress').map((one) => one.endS));
  const thenInS = Math.max(0, ...ingress.map((segment) => then(segment.till)));
  return { ...eva, stints: moved, bothInS: eva.bothInS + Math.max(0, thenInS - lastInS) };
}

function wallThen(surface: WayHomeSurface, moved: EvaTimeline): Consequence[] {
  if (surface.limit === null) return [];
  const marginS = surface.limit.petS - moved.bothInS;
  const words = `both in at PET ${formatPet(moved.bothInS)}, the limit is PET ${formatPet(surface.limit.petS)} (${surface.limit.cause})`;
  return [{ about: 'wall', words, marginS, breaks: marginS < 0 }];
}

function clocksThen(campaign: Campaign, hardware: HardwareModel, eva: EvaTimeline, moved: EvaTimeline): Consequence[] {
  const lengths = (timeline: EvaTimeline): Map<string, number> =>
    new Map(
      clockRuns(campaign, hardware, timeline, stateWrites(campaign, hardware, timeline)).map((run) => [
        `${run.clock.id} ${run.startedBy}`,
        (run.stopS ?? timeline.bothInS) - run.startS,
      ]),
    );
  const before = lengths(eva);
  return [...lengths(moved)].flatMap(([key, lengthS]): Consequence[] => {
    const clock = campaign.clocks.find((candidate) => key.startsWith(`${candidate.id} `));
    const was = before.get(key) ?? 0;
    if (clock === undefined || Math.abs(lengthS - was) < 0.5) return [];
    const marginS = clock.sense === 'most' ? clock.limitS - lengthS : lengthS - clock.limitS;
    const words = `${clock.title} runs ${formatDuration(lengthS)} instead of ${formatDuration(was)}, ${clock.sense === 'most' ? 'at most' : 'at least'} ${formatDuration(clock.limitS)}`;
    return [{ about: 'clock', words, marginS, breaks: marginS < 0 }];
  });
}

function windowsThen(campaign: Campaign, stints: ReadonlyMap<string, Stint>, moved: EvaTimeline): Consequence[] {
  return moved.stints.flatMap((planned) =>
    (stints.get(planned.stint)?.windowUses ?? []).flatMap((use): Consequence[] => {
      const window = campaign.windows.find((candidate) => candidate.id === use.window);
      if (window === undefined || use.prefers) return [];
      const at = (step: number): number => (step <= 0 ? planned.startS : (planned.stepEndsS[step - 1] ?? planned.endS));
      const [fromS, toS] =
        use.part === 'whole'
          ? [planned.startS, planned.endS]
          : use.part === 'start'
            ? [planned.startS, planned.startS]
            : [at(use.fromStep), at(use.toStep)];
      if (fits(window, moved.petZeroUtcMs, fromS, toS, use.mode)) return [];
      const words = `${planned.stint} from PET ${formatPet(fromS)} to ${formatPet(toS)} ${use.mode === 'inside' ? 'is no longer inside' : 'now meets'} ${window.title}`;
      return [{ about: 'window', words, marginS: null, breaks: true }];
    }),
  );
}

function fits(window: WindowSet, zeroMs: number, fromS: number, toS: number, mode: 'inside' | 'outside'): boolean {
  const pad = window.padS * 1000;
  const [from, to] = [zeroMs + fromS * 1000, zeroMs + toS * 1000];
  if (mode === 'inside') return window.intervals.some(([a, b]) => a + pad <= from && to <= b - pad);
  return window.intervals.every(([a, b]) => b + pad <= from || to <= a - pad);
}

/** A request is in force until whoever uses it last is done. */
function requestsThen(
  campaign: Campaign,
  hardware: HardwareModel,
  eva: EvaTimeline,
  moved: EvaTimeline,
): Consequence[] {
  return eva.holds.flatMap((hold): Consequence[] => {
    const request = campaign.requests.find((candidate) => candidate.id === hold.request);
    if (request === undefined || request.longestHoldS === null) return [];
    const usedUntil = (timeline: EvaTimeline): number =>
      Math.max(
        0,
        ...timeline.stints.flatMap((planned, at) => {
          const planned0 = eva.stints[at];
          if (planned0 === undefined || planned0.endS <= hold.firstUseS || planned0.startS >= hold.lastUseS) return [];
          return (hardware.effects.get(planned.stint)?.controls ?? [])
            .filter((control) => control.request === hold.request)
            .map((control) => planned.stepEndsS[control.toStep - 1] ?? planned.endS);
        }),
      );
    const lateS = usedUntil(moved) - usedUntil(eva);
    if (lateS < 0.5) return [];
    const lengthS = hold.clearedS - hold.verifiedS + lateS;
    const marginS = request.longestHoldS - lengthS;
    const words = `${request.title} is held ${formatDuration(lengthS)} instead of ${formatDuration(hold.clearedS - hold.verifiedS)}, at most ${formatDuration(request.longestHoldS)}`;
    return [{ about: 'request', words, marginS, breaks: marginS < 0 }];
  });
}

function lastMomentsThen(surface: WayHomeSurface, moved: EvaTimeline): Consequence[] {
  return surface.lastMoments.flatMap((moment): Consequence[] => {
    const startS = moved.stints.find((planned) => planned.stint === moment.stint)?.startS ?? moment.plannedS;
    if (moment.latestS === null || startS <= moment.latestS) return [];
    const words = `${moment.stint} would start at PET ${formatPet(startS)}, after its last moment ${formatPet(Math.floor(moment.latestS))}`;
    return [{ about: 'last moment', words, marginS: moment.latestS - startS, breaks: true }];
  });
}
