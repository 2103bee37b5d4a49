/** What charts and scripts show of one person's way home: at each of their own changes, as planned, terminate with a moving arm. */
import { stintsByKey } from '../timeline/person-course.ts';
import type { CommittedStretch } from './committed-stretches.ts';
import type { EvaProgress } from './eva-progress.ts';
import type { WayHomeGround } from './safe-until.ts';
import type { Segment } from './segments.ts';
import type { Solve } from './solve-state.ts';
import { travelFactor } from './step-time.ts';
import { blockedWords } from './way-home-plan.ts';

export interface PersonSample {
  readonly petS: number;
  readonly place: string;
  /** Closing and putting away that this person does in the plan. */
  readonly closeS: number;
  /** Letting go, waiting, detours: what else there is before the straight way. */
  readonly otherS: number;
  /** Straight way from here; null: none. */
  readonly travelS: number | null;
  /** The joint way home, until the hatch is closed; null: unknown here or committed. */
  readonly totalS: number | null;
  readonly words: string;
  readonly shortest: boolean;
  readonly unknown: readonly string[];
  readonly closing: readonly string[];
  /** This person's own stints left nothing open that terminate must close. */
  readonly ownClosed: boolean;
  readonly committed: boolean;
}

export function personSamples(
  ground: WayHomeGround,
  progress: EvaProgress,
  solve: Solve,
  index: number,
  committed: readonly CommittedStretch[],
): readonly PersonSample[] {
  const person = progress.persons[index] as string;
  const pace = ground.campaign.people.find((candidate) => candidate.id === person)?.pace ?? 1;
  const stints = stintsByKey(ground.campaign);
  const led = new Map(progress.eva.stints.map((planned) => [planned.stint, planned.assigned] as const));
  const own = (stint: string): boolean => led.get(stint)?.includes(person) ?? false;
  return (progress.segments[index] ?? [])
    .filter((segment) => segment.kind !== 'inside')
    .flatMap((segment) => [
      { segment, petS: segment.startS, isEnd: false },
      { segment, petS: segment.endS, isEnd: true },
    ])
    .map(({ segment, petS, isEnd }): PersonSample => {
      const now = progress.at(petS).map((planned, at) => (at === index ? segment : planned));
      const finished = now.map((one, at) => (at === index && isEnd ? one.index + 1 : one.index));
      const way = solve(now, finished, petS, { mode: 'terminate', arm: 'alive', basis: 'high' });
      const state = progress.state(now, finished, petS, 'alive', 'high');
      const place = segment.rail === null ? segment.place : isEnd ? segment.rail[1] : segment.rail[0];
      const to = isEnd && segment.stint !== null ? placeAfter(segment, stints) : place;
      const plain = progress.travelOf(person, state.values).homeSeconds(to, pace);
      const straight = plain === null ? null : plain * travelFactor(ground.campaign, 'high');
      const down =
        segment.onArm === null
          ? 0
          : Math.min(...(state.people.find((one) => one.person === person)?.starts ?? []).map((start) => start.delayS));
      const travelS = straight === null ? null : straight + (Number.isFinite(down) ? down : 0);
      const mine = way.people.find((one) => one.person === person);
      const closeS = (mine?.steps ?? [])
        .filter((step) => step.kind === 'close' || step.kind === 'put')
        .reduce((sum, step) => sum + step.endS - step.startS, 0);
      const isCommitted = committed.some(
        (stretch) => stretch.person === person && stretch.startS <= petS && petS < stretch.endS,
      );
      return {
        petS,
        place: to,
        closeS,
        otherS: mine === undefined || travelS === null ? 0 : Math.max(0, mine.atHatchS - closeS - travelS),
        travelS,
        totalS: way.totalS,
        words: way.words,
        shortest: way.shortest,
        unknown: [...way.unknown, ...(isCommitted ? way.blocked.map(blockedWords) : [])],
        closing: (mine?.steps ?? []).filter((step) => step.kind === 'close').map((step) => step.words),
        ownClosed: way.totalS !== null && way.jobs.every((job) => !job.openedBy.some(own)),
        committed: isCommitted,
      };
    });
}

function placeAfter(
  segment: Segment,
  stints: ReadonlyMap<
    string,
    {
      readonly roles: readonly { readonly at: string; readonly to: string; readonly toStep: number }[];
      readonly steps: readonly unknown[];
    }
  >,
): string {
  const stint = stints.get(segment.stint ?? '');
  const role = stint?.roles.find((one) => one.at === segment.place && one.toStep === (segment.step ?? 0) + 1);
  return role?.to ?? segment.place;
}
