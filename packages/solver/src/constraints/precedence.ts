import type { Compilation } from '../engine/compilation.ts';
import type { Precedence } from '../model/model.ts';

/** `to ≥ from + lag` as an arc under its conditions and both presences. Inference `lag`. */
export function postPrecedence(c: Precedence, index: number, at: Compilation): void {
  const conditions = [...c.when.map((l) => at.literal(l)), ...at.presences([c.from.interval, c.to.interval])];
  at.kernel.postArc(at.point(c.from), at.point(c.to), c.lag, conditions, index, 'lag');
}
