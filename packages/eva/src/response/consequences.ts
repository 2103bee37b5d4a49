/** What a delay breaks or leaves: limits, clocks, windows, requests, last moments and gates, as planned and then. */
import type { Campaign, Stint, WindowSet } from '../campaign/campaign.ts';
import { formatDuration, formatPet } from '@handrail/quantity/time';
import { type GateCall, gateCalls } from '../gate/propose-gates.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import { clockRuns } from '../timeline/clock-runs.ts';
import { stateWrites } from '../timeline/state-writes.ts';
import type { EvaTimeline } from '../timeline/timeline.ts';
import type { WayHomeSurface } from '../wayhome/way-home-surface.ts';

export interface Consequence {
  readonly about: 'wall' | 'clock' | 'window' | 'request' | 'last moment' | 'gate' | 'state' | 'way home';
  readonly words: string;
  /** What is left; negative: broken. null: it has no figure. */
  readonly marginS: number | null;
  readonly breaks: boolean;
}

/**
 * @param eva as planned
 * @param moved the same with each instant where the delay puts it
 * @param noGates those that are not called in time any more
 */
export function consequencesOf(
  campaign: Campaign,
  hardware: HardwareModel,
  stints: ReadonlyMap<string, Stint>,
  surface: WayHomeSurface,
  eva: EvaTimeline,
  moved: EvaTimeline,
  noGates: ReturnType<typeof gatesThatSayNo>,
): readonly Consequence[] {
  return [
    ...wallThen(surface, moved),
    ...clocksThen(campaign, hardware, eva, moved),
    ...windowsThen(campaign, stints, eva, moved),
    ...requestsThen(campaign, hardware, eva, moved),
    ...lastMomentsThen(surface, moved),
    ...gatesThen(noGates),
  ];
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

/** Uses that move. What the plan itself misses elsewhere is not because of this. */
function windowsThen(
  campaign: Campaign,
  stints: ReadonlyMap<string, Stint>,
  eva: EvaTimeline,
  moved: EvaTimeline,
): Consequence[] {
  return moved.stints.flatMap((planned, at0) =>
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
      const before = eva.stints[at0];
      const isMoved = before !== undefined && (before.startS !== planned.startS || before.endS !== planned.endS);
      if (!isMoved || fits(window, moved.petZeroUtcMs, fromS, toS, use.mode)) return [];
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
    // What starts as planned is late, if it is, by the plan alone.
    // Where the moment itself cannot be told, what is too late for certain still is.
    const { atMostS, latestS } = moment.terminate;
    if (atMostS === null || startS <= atMostS || startS < moment.plannedS + 0.5) return [];
    const words = `${moment.stint} would start at PET ${formatPet(startS)}, after its last moment ${latestS === null ? 'at most ' : ''}${formatPet(Math.floor(atMostS))}`;
    return [{ about: 'last moment', words, marginS: atMostS - startS, breaks: true }];
  });
}

/** Gates not called yet whose latest "go" has passed when their stint would start: each is a "no". */
export function gatesThatSayNo(
  campaign: Campaign,
  surface: WayHomeSurface,
  eva: EvaTimeline,
  moved: EvaTimeline,
  petS: number,
): readonly { readonly gate: GateCall; readonly startS: number; readonly lateS: number }[] {
  return gateCalls(campaign, eva, surface).flatMap((gate) => {
    const startS = moved.stints.find((planned) => planned.stint === gate.before)?.startS ?? gate.petS;
    if (gate.petS <= petS || gate.latestPetS === null || startS <= gate.latestPetS) return [];
    return [{ gate, startS, lateS: startS - gate.latestPetS }];
  });
}

/** What was agreed for the "no" happens. */
function gatesThen(found: ReturnType<typeof gatesThatSayNo>): Consequence[] {
  return found.map(({ gate, startS, lateS }) => {
    const dropped = gate.drops.length === 0 ? '' : `; given up: ${gate.drops.join(', ')}`;
    const words = `the gate "${gate.title}"${gate.proposed ? ' (proposed)' : ''} would be called at PET ${formatPet(startS)}, after its latest "go" ${formatPet(Math.floor(startS - lateS))}: it is a "no". ${gate.onNo}${dropped}`;
    return { about: 'gate', words, marginS: -lateS, breaks: true };
  });
}
