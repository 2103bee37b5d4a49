/** Timelines whose start or whose remainder lies later. Times of PET before the cut stay as they are. */
import type { EvaTimeline, Timeline } from '../timeline/timeline.ts';

/** The plan up to one EVA, with PET 0 of that EVA later: all PET times are kept, so all UTC times of that EVA move. */
export function startingLate(timeline: Timeline, eva: string, lateS: number): Timeline {
  const at = timeline.evas.findIndex((one) => one.eva === eva);
  return {
    ...timeline,
    evas: timeline.evas
      .slice(0, at + 1)
      .map((one) => (one.eva === eva ? { ...one, petZeroUtcMs: one.petZeroUtcMs + lateS * 1000 } : one)),
  };
}

/**
 * One EVA in which whatever starts at `fromS` or after starts `waitS` later; what runs then runs on. Everybody waits, since
 * hand-overs, joins and the hatch tie the two together.
 */
export function waitingFrom(plan: EvaTimeline, fromS: number, waitS: number): EvaTimeline {
  const moved = (petS: number): number => (petS >= fromS ? petS + waitS : petS);
  const span = <T extends { readonly startS: number; readonly endS: number }>(one: T): T =>
    one.startS >= fromS ? { ...one, startS: one.startS + waitS, endS: one.endS + waitS } : one;
  return {
    ...plan,
    stints: plan.stints.map((one) =>
      one.startS >= fromS ? { ...span(one), stepEndsS: one.stepEndsS.map((endS) => endS + waitS) } : one,
    ),
    passages: plan.passages.map(span),
    moves: plan.moves.map(span),
    holds: plan.holds.map((hold) =>
      // A hold that is not yet asked for moves as one; one in force lasts on.
      hold.firstUseS >= fromS
        ? {
            ...hold,
            askS: hold.askS + waitS,
            verifiedS: hold.verifiedS + waitS,
            firstUseS: hold.firstUseS + waitS,
            lastUseS: hold.lastUseS + waitS,
            clearedS: hold.clearedS + waitS,
          }
        : { ...hold, lastUseS: moved(hold.lastUseS), clearedS: moved(hold.clearedS) },
    ),
    joins: plan.joins.map((join) => ({
      ...join,
      releasedS: moved(join.releasedS),
      waitsUntilS: moved(join.waitsUntilS),
    })),
    bothInS: plan.bothInS + waitS,
  };
}
