/** The past of an EVA that is planned again under way: what has begun stays where it was, the rest starts from now on. */
import type { EvaDraft } from '../eva-draft.ts';
import { cellsUp, CELL_S } from '../grid.ts';
import { startAtLeast, startAtMost } from './post-orders.ts';

export function postPast(draft: EvaDraft): void {
  const { past } = draft.problem;
  if (past === null) return;
  const begun = new Map(past.begun.map((planned) => [planned.stint, planned]));
  for (const [key, stint] of draft.stints) {
    const known = begun.get(key);
    const tag = `past:${key}`;
    if (known === undefined) startAtLeast(draft, stint.master, cellsUp(past.nowS), tag);
    else {
      const cell = Math.round(known.startS / CELL_S);
      draft.post({ kind: 'clause', literals: [stint.presence], tag });
      startAtLeast(draft, stint.master, cell, tag);
      startAtMost(draft, stint.master, cell, tag);
    }
  }
}
