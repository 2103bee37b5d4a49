import type { Compilation } from '../engine/compilation.ts';
import { NO_OWNER } from '../engine/store.ts';
import { LinearPropagator } from '../propagators/linear.ts';

/** start + duration = end of an interval whose duration is a variable, duration ≥ 0. Inference `duration`. */
export function postInterval(id: number, at: Compilation): void {
  const { start, end, duration, presence } = at.interval(id);
  if (duration === null) return;
  const { store } = at.kernel;
  const parts = [start, duration, end];
  const isOwn = presence >= 0 && parts.every(({ variable }) => store.owner[variable] === presence);
  const conditions = presence < 0 || isOwn ? [] : [presence];
  const owner = isOwn ? presence : NO_OWNER;
  const shift = end.offset - start.offset - duration.offset;
  const [s, d, e] = parts.map(({ variable }) => 2 * variable) as [number, number, number];
  const ones = [1, 1, 1];
  new LinearPropagator(at.kernel, [s, d, e ^ 1], ones, shift, conditions, owner, -2 - id, 'duration');
  new LinearPropagator(at.kernel, [s ^ 1, d ^ 1, e], ones, -shift, conditions, owner, -2 - id, 'duration');
  if (isOwn || presence < 0) {
    if (store.min(duration.variable) + duration.offset < 0 && !store.set(d, -duration.offset, 0))
      at.kernel.consistent = false;
  } else {
    at.kernel.postNogood([presence, d ^ 1], [1 - (presence & 1), 1 + duration.offset], -2 - id);
  }
}
