import type { TimelineEdit } from './hand-edit.ts';
import { byHand, inEvaOf } from './move-stint.ts';

/** The planned stint cut where its text was: both parts at the times that the whole had, by the same people. */
export function splitPlanned(stint: string, step: number, second: string): TimelineEdit {
  return (_ground, timeline) =>
    inEvaOf(timeline, stint, (eva) => {
      const stints = eva.stints.flatMap((planned) => {
        if (planned.stint !== stint) return [planned];
        const cutS = planned.stepEndsS[step - 1] ?? planned.endS;
        return [
          { ...planned, endS: cutS, stepEndsS: planned.stepEndsS.slice(0, step) },
          { ...planned, stint: second, startS: cutS, stepEndsS: planned.stepEndsS.slice(step) },
        ];
      });
      return byHand({ ...eva, stints });
    });
}
