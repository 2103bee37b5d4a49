/**
 * A response applied to one minute of a plan: who does what and for how long (the 90th percentile, and fetching its kit), what comes
 * later because of it, which clock, window, request, gate or limit breaks, what cannot be done any more if it does not work, what is
 * given up, and what the way home takes from there once the immediate actions are done.
 *
 * The rest of the plan keeps its order and its durations; nothing is re-planned. Windows are looked at as the plan uses them.
 *
 * @checked tests/scenarios/trouble, tests/scenarios/wayhome/responses.test.ts
 */
import type { Campaign, Stint } from '../campaign/campaign.ts';
import { formatDuration, formatPet } from '@handrail/quantity/time';
import { givenUpBy } from '../gate/after-no.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import type { KindsLibrary } from '../kinds/kinds-library.ts';
import { stintsByKey } from '../timeline/person-course.ts';
import { statesWithout } from '../timeline/states-without.ts';
import type { EvaTimeline, Timeline } from '../timeline/timeline.ts';
import type { Segment } from '../wayhome/segments.ts';
import { blockedWords } from '../wayhome/way-home-plan.ts';
import { type WayHomeSurface, wayHomeSurface } from '../wayhome/way-home-surface.ts';
import type { AnyResponse } from './any-response.ts';
import { concernedBy } from './concerned.ts';
import { type Consequence, consequencesOf, gatesThatSayNo } from './consequences.ts';
import { movedTimeline } from './moved-timeline.ts';
import { givenUp, type GivenUp } from './given-up.ts';
import { type HomeThen, homeThen } from './home-then.ts';
import { type LeftState, leftStates } from './left-states.ts';
import { type ResponseKit, responseKit } from './response-kit.ts';

export interface WhatIf {
  readonly eva: string;
  readonly petS: number;
  readonly response: AnyResponse;
  /** Who stops for it, and in which stint. The first has the trouble. */
  readonly responding: readonly { readonly person: string; readonly stint: string | null; readonly place: string }[];
  /** Who else could have it at this minute; what is told is the worse for the plan. */
  readonly alsoFor: readonly string[];
  /** The steps with the names of who does them. */
  readonly steps: readonly { readonly who: string; readonly words: string }[];
  /** null: it can come up here. Else why it cannot. */
  readonly notHere: string | null;
  readonly kit: readonly ResponseKit[];
  /** Of the kit, what nobody outside can get at. */
  readonly missingKit: readonly string[];
  /** The response at its 90th percentile and the way to its kit and back. */
  readonly delayS: number | null;
  /** Stints that end later, in order of time. */
  readonly delayed: readonly { readonly stint: string; readonly fromS: number; readonly toS: number }[];
  readonly bothInS: { readonly plannedS: number; readonly thenS: number } | null;
  readonly consequences: readonly Consequence[];
  /** What it leaves when it does not work. */
  readonly left: readonly LeftState[];
  readonly givenUp: GivenUp;
  readonly home: HomeThen | null;
  /** Abort, where there is no terminate from there: what leaves open what cannot be closed. null: not needed, or none either. */
  readonly instead: HomeThen | null;
  /** What is missing for an answer. */
  readonly cannotTell: readonly string[];
}

/** @param who who has the trouble; null: of all whom it can concern, the one for whom it is worse */
export function whatIf(
  campaign: Campaign,
  hardware: HardwareModel,
  library: KindsLibrary,
  timeline: Timeline,
  eva: EvaTimeline,
  response: AnyResponse,
  petS: number,
  who: string | null = null,
): WhatIf {
  const surface = wayHomeSurface(campaign, hardware, library, timeline, eva);
  const stints = stintsByKey(campaign);
  const now = surface.progress.at(petS);
  const { segments, notHere, closingHatch } = concernedBy(
    campaign,
    eva,
    stints,
    response,
    now,
    surface.progress.segments,
    petS,
    who,
  );
  const trouble: Trouble = { campaign, hardware, stints, surface, eva, response, petS, closingHatch };
  const [first, ...others] = segments.map((self) => {
    const alsoFor = segments.filter((one) => one !== self).map((one) => one.person);
    return { ...applied(trouble, now, self), alsoFor };
  });
  if (first === undefined) return nothing(trouble, now, notHere);
  return others.reduce((worst, one) => (isWorse(one, worst) ? one : worst), first);
}

/** What keeps the plan from being flown on as it stands, or a way home from being there. */
export function isBroken(found: WhatIf): boolean {
  const { home, response } = found;
  const noWay = response.leadsTo !== null && home !== null && home.way.blocked.length > 0;
  const isShort = home !== null && home.marginS !== null && home.marginS < 0;
  return noWay || isShort || found.missingKit.length > 0 || found.consequences.some((one) => one.breaks);
}

interface Trouble {
  readonly campaign: Campaign;
  readonly hardware: HardwareModel;
  readonly stints: ReadonlyMap<string, Stint>;
  readonly surface: WayHomeSurface;
  readonly eva: EvaTimeline;
  readonly response: AnyResponse;
  readonly petS: number;
  readonly closingHatch: boolean;
}

function nothing(trouble: Trouble, now: readonly Segment[], notHere: string | null): WhatIf {
  const { eva, petS, response } = trouble;
  return {
    eva: eva.eva,
    petS,
    response,
    responding: [],
    alsoFor: [],
    steps: namedSteps(trouble, now, null),
    notHere,
    kit: [],
    missingKit: [],
    delayS: null,
    delayed: [],
    bothInS: null,
    consequences: [],
    left: [],
    givenUp: { undone: [], cutFirst: [] },
    home: null,
    instead: null,
    cannotTell: response.timeS === null ? [`"${response.title}" states no minutes`] : [],
  };
}

function applied(trouble: Trouble, now: readonly Segment[], self: Segment): WhatIf {
  const { campaign, hardware, surface, eva, response, petS, closingHatch } = trouble;
  const { progress, ground } = surface;
  const plain = nothing(trouble, now, null);
  const state = progress.state(
    now,
    now.map((segment) => segment.index),
    petS,
    'alive',
    'high',
  );
  const inHand = self.stint === null || self.step === null ? null : { stint: self.stint, step: self.step };
  const kit = responseKit(ground, progress, response.kit, self, now, state.values);
  // All who are out stop where it leads home or the hatch does not close; else who has it, and whoever is in the same stint.
  const all = response.leadsTo !== null ? now.filter((one) => one.kind !== 'inside') : closingHatch ? [...now] : [self];
  const shared = now.filter((one) => self.stint !== null && one.stint === self.stint && one.step === self.step);
  const responding = [self, ...[...all, ...shared].filter((one) => one !== self)].filter(
    (one, at, list) => list.indexOf(one) === at,
  );
  const found: WhatIf = {
    ...plain,
    responding: responding.map(({ person, stint, place }) => ({ person, stint, place })),
    steps: namedSteps(trouble, now, self),
    kit,
    missingKit: kit.filter((one) => one.fetchS === null).map((one) => one.asked),
    left: leftStates(campaign, hardware, response, inHand),
  };
  if (response.timeS === null) return found;
  const delayS = response.timeS.high + Math.max(0, ...kit.map((one) => one.fetchS ?? 0));
  const mode = response.leadsTo ?? 'terminate';
  const home = closingHatch ? null : homeThen(surface, response, self, petS, now, found.left, delayS, mode);
  const isShut = mode === 'terminate' && home !== null && home.way.blocked.length > 0;
  const abort = isShut ? homeThen(surface, response, self, petS, now, found.left, delayS, 'abort') : null;
  const instead = abort?.way.totalS == null ? null : abort;
  const cannotTell = home === null || home.way.totalS !== null ? [] : home.way.unknown;
  if (response.leadsTo !== null) {
    return { ...found, delayS, home, instead, cannotTell, givenUp: givenUp(campaign, eva, petS, null) };
  }
  const moved = closingHatch
    ? { ...eva, bothInS: eva.bothInS + delayS }
    : movedTimeline(campaign, hardware, surface, eva, responding, delayS);
  const changed = new Map(found.left.map(({ variable, value }) => [variable, value] as const));
  const noGates = gatesThatSayNo(campaign, surface, eva, moved, petS);
  // A gate that is only proposed gives nothing up: nobody has agreed to it.
  const leftOut = new Set(noGates.filter(({ gate }) => !gate.proposed).flatMap(({ gate }) => givenUpBy(eva, gate)));
  const otherwise = { fromS: petS, values: state.values, changed, inHand, leftOut };
  const needs = changed.size + leftOut.size === 0 ? [] : statesWithout(campaign, hardware, eva, otherwise).unmet;
  const shortS = surface.limit === null ? 0 : Math.max(0, moved.bothInS - surface.limit.petS);
  return {
    ...found,
    delayS,
    delayed: eva.stints.flatMap((planned, at) => {
      const later = moved.stints[at];
      return later !== undefined && later.endS > planned.endS + 0.5
        ? [{ stint: planned.stint, fromS: planned.endS, toS: later.endS }]
        : [];
    }),
    bothInS: { plannedS: eva.bothInS, thenS: moved.bothInS },
    consequences: [
      ...consequencesOf(campaign, hardware, trouble.stints, surface, eva, moved, noGates),
      ...needs.map(
        (need): Consequence => ({
          about: 'state',
          words: `${need.underWay ? 'under the hands of somebody at work, ' : ''}${need.stint} cannot be done: ${need.words}`,
          marginS: null,
          breaks: true,
        }),
      ),
      ...committedThen(trouble, moved, home),
    ],
    givenUp: givenUp(campaign, eva, petS, { shortS, undone: [...leftOut, ...needs.map((need) => need.stint)] }),
    home,
    instead,
    cannotTell,
  };
}

/** Later in, then less margin home, then more that breaks. */
function isWorse(one: WhatIf, other: WhatIf): boolean {
  const rank = (found: WhatIf): readonly number[] => [
    found.consequences.filter((consequence) => consequence.breaks).length + found.missingKit.length,
    found.bothInS?.thenS ?? 0,
    -(found.home?.marginS ?? 0),
  ];
  const [a, b] = [rank(one), rank(other)];
  const at = a.findIndex((value, index) => value !== b[index]);
  return at >= 0 && (a[at] as number) > (b[at] as number);
}

function namedSteps(trouble: Trouble, now: readonly Segment[], self: Segment | null): WhatIf['steps'] {
  const { campaign, response } = trouble;
  const partner = now.find((one) => self !== null && one.person !== self.person)?.person ?? 'the partner';
  const has = self?.person ?? 'who has it';
  const names = {
    self: has,
    partner,
    both: self === null ? 'both' : `${has} and ${partner}`,
    reader: campaign.people.find((person) => person.role === 'inside')?.id ?? 'the reader',
    operator: campaign.arms.find((arm) => arm.id === self?.onArm?.arm)?.operator ?? 'the arm operator',
  };
  return response.steps.map(({ by, words }) => ({ who: names[by], words }));
}

/** No safe stop after it: planned so, and for longer now, or only because of it. */
function committedThen({ surface, petS }: Trouble, moved: EvaTimeline, home: WhatIf['home']): Consequence[] {
  if (home === null || home.way.blocked.length === 0) return [];
  const planned = surface.committed.find((one) => one.startS <= petS && petS < one.endS);
  const why = home.way.blocked.map(blockedWords).join('; ');
  if (planned === undefined) {
    const words = `no safe stop is in reach after it, where the plan has one: ${why}`;
    return [{ about: 'way home', words, marginS: null, breaks: true }];
  }
  const lateS = Math.max(0, moved.bothInS - surface.progress.eva.bothInS);
  const words = `no safe stop is in reach, as planned from PET ${formatPet(planned.startS)} to ${formatPet(planned.endS)}, and up to ${formatDuration(lateS)} longer now: ${why}`;
  return [{ about: 'way home', words, marginS: null, breaks: false }];
}
