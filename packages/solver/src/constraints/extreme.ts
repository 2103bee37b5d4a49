import type { Compilation } from '../engine/compilation.ts';
import type { Term } from '../engine/kernel.ts';
import type { Extreme } from '../model/model.ts';
import { HullPropagator, type SideTerm } from '../propagators/hull.ts';

/** result = max or min of the present points. Inferences `bound` (an arc) and `extreme`. */
export function postExtreme(c: Extreme, index: number, at: Compilation): void {
  const result = at.term(c.result);
  const candidates = c.points.map((point) => ({
    term: at.point(point),
    presence: at.interval(point.interval).presence,
  }));
  const isMax = c.which === 'max';
  for (const { term, presence } of candidates) {
    const conditions = presence < 0 ? [] : [presence];
    if (isMax) at.kernel.postArc(term, result, 0, conditions, index, 'bound');
    else at.kernel.postArc(result, term, 0, conditions, index, 'bound');
  }
  const sided = candidates.map(({ term, presence }) => ({ ...sideTerm(term, isMax), presence }));
  const otherwise = isMax ? c.otherwise : -c.otherwise;
  new HullPropagator(at.kernel, sideTerm(result, isMax), sided, otherwise, true, -1, index, 'extreme');
}

/** A term read upwards, or mirrored so that a minimum becomes a maximum. */
export function sideTerm({ variable, offset }: Term, upwards: boolean): SideTerm {
  return upwards ? { side: 2 * variable, offset } : { side: 2 * variable + 1, offset: -offset };
}
