/** What one person or arm does in one EVA, in order of time, read from the timeline alone. */
import type { Role } from '../../../campaign/campaign.ts';
import type { EvaTimeline, PlannedMove, PlannedPassage } from '../../../timeline/timeline.ts';
import { type Placed, type ReplayContext, roleSpanS } from '../replay-context.ts';

export type Doing =
  | { readonly kind: 'passage'; readonly startS: number; readonly endS: number; readonly passage: PlannedPassage }
  | { readonly kind: 'move'; readonly startS: number; readonly endS: number; readonly move: PlannedMove }
  | {
      readonly kind: 'stint';
      readonly startS: number;
      readonly endS: number;
      readonly placed: Placed;
      readonly role: Role;
      readonly roleIndex: number;
    };

export interface Lane {
  readonly who: string;
  readonly eva: string;
  readonly plan: EvaTimeline;
  /** By start, then end. */
  readonly doings: readonly Doing[];
}

/** Lanes of all persons and arms that the timeline names, EVA by EVA. */
export function lanesOf(context: ReplayContext): readonly Lane[] {
  return context.flown.flatMap(({ eva, plan, placed }) => {
    const lanes = new Map<string, Doing[]>();
    const add = (who: string, doing: Doing): void => {
      const lane = lanes.get(who);
      if (lane === undefined) lanes.set(who, [doing]);
      else lane.push(doing);
    };
    for (const passage of plan.passages) {
      const { person, startS, endS } = passage;
      if (person !== null) add(person, { kind: 'passage', startS, endS, passage });
    }
    for (const move of plan.moves) add(move.who, { kind: 'move', startS: move.startS, endS: move.endS, move });
    for (const one of placed) {
      one.stint.roles.forEach((role, roleIndex) => {
        const who = one.planned.assigned[roleIndex];
        if (who === undefined) return;
        const [startS, endS] = roleSpanS(one, role);
        add(who, { kind: 'stint', startS, endS, placed: one, role, roleIndex });
      });
    }
    return [...lanes].map(([who, doings]) => ({
      who,
      eva: eva.id,
      plan,
      doings: doings.sort((a, b) => a.startS - b.startS || a.endS - b.endS),
    }));
  });
}

/** In words: `"Free the old pump"`, `the way from a to b`, `the egress`. */
export function nameOf(doing: Doing): string {
  if (doing.kind === 'passage') return `the ${doing.passage.kind}`;
  if (doing.kind === 'move') return `the way from ${doing.move.from} to ${doing.move.to}`;
  return `"${doing.placed.stint.title}"`;
}

/** Place (for an arm: pose) at which a doing starts and ends; null: inside the hatch. */
export function endsOf(doing: Doing, hatch: string): { readonly from: string | null; readonly to: string | null } {
  if (doing.kind === 'move') return { from: doing.move.from, to: doing.move.to };
  if (doing.kind === 'stint') return { from: doing.role.at, to: doing.role.to };
  return doing.passage.kind === 'egress' ? { from: null, to: hatch } : { from: hatch, to: null };
}
