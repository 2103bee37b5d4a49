import type { EvaTimeline, PlannedStint, Timeline } from '../timeline.ts';
import type { TimelineEdit } from './hand-edit.ts';
import { layLanes } from './lay-lanes.ts';

export interface StintMove {
  readonly stint: string;
  /** New start, s of PET. */
  readonly startS: number;
  /** Stints of the same people that would overlap go later by what it takes; otherwise everything else stays where it is. */
  readonly pushesLater: boolean;
}

/** A stint moved in time, its steps with it; the ways of those who take part are laid anew. Unknown stint: nothing changes. */
export function moveStint({ stint: key, startS, pushesLater }: StintMove): TimelineEdit {
  return (ground, timeline) =>
    inEvaOf(timeline, key, (was) => {
      const moved = was.stints.find(({ stint }) => stint === key) as PlannedStint;
      if (moved.startS === startS) return was;
      const at = new Map<string, number>([[key, startS]]);
      if (pushesLater) push(was, moved, startS, at);
      const stints = was.stints.map((planned) =>
        shifted(planned, (at.get(planned.stint) ?? planned.startS) - planned.startS),
      );
      const people = new Set(was.stints.filter(({ stint }) => at.has(stint)).flatMap(({ assigned }) => assigned));
      return layLanes(ground, was, byHand({ ...was, stints: stints.sort((a, b) => a.startS - b.startS) }), people);
    });
}

/** Later stints of the same bodies keep the gap that they had before the one ahead of them, where there is room for none. */
function push(eva: EvaTimeline, moved: PlannedStint, startS: number, at: Map<string, number>): void {
  const endOf = new Map(moved.assigned.map((who) => [who, startS + moved.endS - moved.startS]));
  const oldEndOf = new Map(moved.assigned.map((who) => [who, moved.endS]));
  for (const planned of eva.stints.toSorted((a, b) => a.startS - b.startS)) {
    if (planned.stint === moved.stint || planned.startS < moved.startS) continue;
    const shared = planned.assigned.filter((who) => endOf.has(who));
    if (shared.length === 0) continue;
    const least = Math.max(
      planned.startS,
      ...shared.map((who) => (endOf.get(who) as number) + Math.max(0, planned.startS - (oldEndOf.get(who) as number))),
    );
    // Room enough as it stands: the chain of pushes ends here.
    const starts =
      (endOf.get(shared[0] as string) as number) <= (oldEndOf.get(shared[0] as string) as number)
        ? planned.startS
        : least;
    if (starts > planned.startS) at.set(planned.stint, starts);
    for (const who of planned.assigned) {
      endOf.set(who, starts + planned.endS - planned.startS);
      oldEndOf.set(who, planned.endS);
    }
  }
}

export function shifted(planned: PlannedStint, byS: number): PlannedStint {
  if (byS === 0) return planned;
  return {
    ...planned,
    startS: planned.startS + byS,
    endS: planned.endS + byS,
    stepEndsS: planned.stepEndsS.map((endS) => endS + byS),
  };
}

export function byHand(eva: EvaTimeline): EvaTimeline {
  return { ...eva, claim: { status: 'written by hand', levels: [], seed: 0, conflicts: 0 } };
}

export function inEvaOf(timeline: Timeline, stint: string, edit: (eva: EvaTimeline) => EvaTimeline): Timeline {
  const index = timeline.evas.findIndex((eva) => eva.stints.some((planned) => planned.stint === stint));
  const eva = timeline.evas[index];
  if (eva === undefined) return timeline;
  const edited = edit(eva);
  return edited === eva ? timeline : { ...timeline, evas: timeline.evas.with(index, edited) };
}
