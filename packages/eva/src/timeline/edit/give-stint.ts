import type { PlannedStint } from '../timeline.ts';
import type { TimelineEdit } from './hand-edit.ts';
import { layLanes } from './lay-lanes.ts';
import { byHand, inEvaOf } from './move-stint.ts';

export interface StintGift {
  readonly stint: string;
  /** Who has it now, and who gets it. Where the other already takes part in the stint, the two change roles. */
  readonly from: string;
  readonly to: string;
}

/** A stint given to another person, at the same time; the ways of both are laid anew. The replay says whether they may do it. */
export function giveStint({ stint: key, from, to }: StintGift): TimelineEdit {
  return (ground, timeline) =>
    inEvaOf(timeline, key, (was) => {
      const given = was.stints.find(({ stint }) => stint === key) as PlannedStint;
      if (from === to || !given.assigned.includes(from)) return was;
      const assigned = given.assigned.map((who) => (who === from ? to : who === to ? from : who));
      const stints = was.stints.map((planned) => (planned === given ? { ...given, assigned } : planned));
      return layLanes(ground, was, byHand({ ...was, stints }), new Set([from, to]));
    });
}
