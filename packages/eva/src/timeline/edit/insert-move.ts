import type { TimelineEdit } from './hand-edit.ts';
import { layLanes } from './lay-lanes.ts';
import { byHand, inEvaOf } from './move-stint.ts';

export interface MoveInserted {
  /** The stint that the person comes to. */
  readonly stint: string;
  readonly person: string;
  /** Place to go by before it; null: straight again. */
  readonly by: string | null;
}

/** The way to a stint led over a place, as a move of its own; it stays so whatever else is moved. The replay says whether it fits. */
export function insertMove({ stint, person, by }: MoveInserted): TimelineEdit {
  return (ground, timeline) =>
    inEvaOf(timeline, stint, (eva) => {
      const role = eva.stints.find((one) => one.stint === stint)?.assigned.indexOf(person) ?? -1;
      if (role < 0) return eva;
      return layLanes(ground, eva, byHand(eva), new Set([person]), { person, stay: `${stint}#${role}`, by });
    });
}
