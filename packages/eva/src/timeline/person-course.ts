/**
 * The course of one person through one EVA: an unbroken list of stretches from the first passage to the last, as charts,
 * scripts and rules read it. It is derived from the timeline alone and repeats its times exactly.
 */
import type { Campaign, Stint } from '../campaign/campaign.ts';
import type { EvaTimeline, PlannedStint } from './timeline.ts';

export interface Stretch {
  readonly kind: 'passage' | 'work' | 'move' | 'wait';
  readonly startS: number;
  readonly endS: number;
  /** Where it starts and ends; equal but for moves and rides. */
  readonly place: string;
  readonly to: string;
  /** Arm id while standing on its plate at the end of the stretch; null on structure. */
  readonly on: string | null;
  readonly stint: Stint | null;
  readonly planned: PlannedStint | null;
  /** Role index within the stint. */
  readonly role: number | null;
  readonly path: readonly string[];
  readonly carrying: readonly string[];
}

export function personCourse(campaign: Campaign, eva: EvaTimeline, person: string): readonly Stretch[] {
  const hatch = campaign.vehicle.hatch ?? 'hatch';
  const stints = stintsByKey(campaign);
  const found: Stretch[] = [];
  const plain = { on: null, stint: null, planned: null, role: null, path: [], carrying: [] };
  for (const passage of eva.passages) {
    if (passage.person !== person) continue;
    found.push({ ...plain, kind: 'passage', startS: passage.startS, endS: passage.endS, place: hatch, to: hatch });
  }
  for (const move of eva.moves) {
    if (move.who !== person) continue;
    const { startS, endS, from, to, path, carrying } = move;
    found.push({ ...plain, kind: 'move', startS, endS, place: from, to, path, carrying });
  }
  for (const planned of eva.stints) {
    const stint = stints.get(planned.stint);
    if (stint === undefined) continue;
    for (const [index, role] of stint.roles.entries()) {
      if (planned.assigned[index] !== person) continue;
      found.push({
        kind: 'work',
        startS: stepStart(planned, role.fromStep),
        endS:
          role.toStep >= planned.stepEndsS.length ? planned.endS : (planned.stepEndsS[role.toStep - 1] ?? planned.endS),
        place: role.at,
        to: role.to,
        on: role.endOn,
        stint,
        planned,
        role: index,
        path: [],
        carrying: [],
      });
    }
  }
  found.sort((a, b) => a.startS - b.startS || a.endS - b.endS);
  return withWaits(found);
}

/** When step k of a planned stint starts: the end of the one before. */
export function stepStart(planned: PlannedStint, step: number): number {
  return step <= 0 ? planned.startS : (planned.stepEndsS[step - 1] ?? planned.startS);
}

export function stintsByKey(campaign: Campaign): ReadonlyMap<string, Stint> {
  return new Map(campaign.tasks.flatMap((task) => task.stints.map((stint) => [stint.key, stint] as const)));
}

function withWaits(stretches: readonly Stretch[]): Stretch[] {
  const course: Stretch[] = [];
  for (const stretch of stretches) {
    const before = course.at(-1);
    if (before !== undefined && stretch.startS > before.endS) {
      course.push({
        kind: 'wait',
        startS: before.endS,
        endS: stretch.startS,
        place: before.to,
        to: before.to,
        on: before.on,
        stint: null,
        planned: null,
        role: null,
        path: [],
        carrying: [],
      });
    }
    course.push(stretch);
  }
  return course;
}
