/** What one stint asks of one state variable and does to it, by step boundaries, with roles replaced by the bodies of a mode. */
import type { Stint } from '../campaign/campaign.ts';
import type { StintEffects } from '../hardware/effects.ts';
import { leaveBoundary } from './eva-draft.ts';
import { stepCount, type TeamMode } from './team-mode.ts';

export interface StateUse {
  readonly needs: readonly BoundaryNeed[];
  /** Its writes as one: held from the first to the last, then `value`. null: it only looks. */
  readonly write: BoundaryWrite | null;
}
export interface BoundaryNeed {
  readonly from: number;
  readonly to: number;
  readonly allowed: readonly string[];
  readonly words: string;
}
export interface BoundaryWrite {
  readonly from: number;
  readonly to: number;
  readonly value: string;
  /** Single writes in order: boundary and value. */
  readonly writes: readonly { readonly at: number; readonly value: string }[];
}

/** Variables that the stint looks at or changes. */
export function variablesOf(effects: StintEffects): ReadonlySet<string> {
  return new Set([
    ...effects.needs.map(({ variable }) => variable),
    ...effects.leaves.map(({ variable }) => variable),
    ...effects.holds.map(({ variable }) => variable),
  ]);
}

export function stateUse(stint: Stint, effects: StintEffects, variable: string, mode: TeamMode): StateUse {
  const last = stepCount(stint);
  const clip = (boundary: number) => Math.max(0, Math.min(last, boundary));
  const needs: BoundaryNeed[] = [];
  for (const need of effects.needs) {
    if (need.variable !== variable) continue;
    const allowed = need.allowed.map((value) => bodyValue(value, mode));
    const words = need.origin.words;
    if (need.when === 'start') needs.push({ from: 0, to: 0, allowed, words });
    else if (need.when === 'end') needs.push({ from: last, to: last, allowed, words });
    else needs.push({ from: clip(need.fromStep), to: clip(need.toStep), allowed, words });
  }
  const writes = effects.leaves
    .filter((leave) => leave.variable === variable)
    .map((leave) => ({ at: leaveBoundary(stint, leave.step), value: bodyValue(leave.value, mode) }))
    .sort((a, b) => a.at - b.at);
  const holds = effects.holds.filter((hold) => hold.variable === variable);
  const final = writes.at(-1);
  if (final === undefined) {
    // Held without being changed: nobody else may write it meanwhile.
    for (const { fromStep, toStep } of holds)
      needs.push({ from: clip(fromStep), to: clip(toStep), allowed: [], words: '' });
    return { needs, write: null };
  }
  const from = Math.min(...writes.map(({ at }) => at), ...holds.map(({ fromStep }) => clip(fromStep)));
  const to = Math.max(final.at, ...holds.map(({ toStep }) => clip(toStep)));
  return { needs, write: { from, to, value: final.value, writes } };
}

/** "role:1" → the person or arm in role 1, as a holder value. */
export function bodyValue(value: string, mode: TeamMode): string {
  const match = /^role:(\d+)$/.exec(value);
  if (match === null) return value;
  const body = mode.assigned[Number(match[1])];
  return body === undefined ? value : holderOf(body, mode);
}

function holderOf(body: string, mode: TeamMode): string {
  return mode.arms.has(body) ? `arm:${body}` : `person:${body}`;
}
