/** A timeline in which a stint that has begun ends later (or sooner) than planned: what is left of it stretches, nothing else moves. */
import type { PlannedStint, Timeline } from './timeline.ts';

/**
 * @param lateS seconds; negative where it goes quicker. The end never comes before `nowS` unless it already had.
 * @returns null when the stint is not in that EVA, or starts at `nowS` or later
 */
export function runsLate(timeline: Timeline, eva: string, stint: string, lateS: number, nowS: number): Timeline | null {
  const planned = timeline.evas
    .find((candidate) => candidate.eva === eva)
    ?.stints.find((candidate) => candidate.stint === stint);
  if (planned === undefined || planned.startS >= nowS) return null;
  const changed = stretched(planned, lateS, nowS);
  return {
    ...timeline,
    evas: timeline.evas.map((candidate) =>
      candidate.eva === eva
        ? { ...candidate, stints: candidate.stints.map((other) => (other.stint === stint ? changed : other)) }
        : candidate,
    ),
  };
}

/** Steps that are over stay; the one under way and those after it share the change by their planned lengths. */
function stretched(planned: PlannedStint, lateS: number, nowS: number): PlannedStint {
  const fromS = Math.max(planned.startS, Math.min(nowS, planned.endS));
  const endS = Math.max(planned.endS + lateS, planned.endS <= nowS ? planned.startS : nowS);
  const rest = planned.endS - fromS;
  const stepEndsS = planned.stepEndsS.map((end) => {
    if (rest <= 0) return end === planned.endS ? endS : Math.min(end, endS);
    return end <= fromS ? end : Math.round(fromS + ((end - fromS) / rest) * (endS - fromS));
  });
  return { ...planned, endS, stepEndsS };
}
