import type { Compilation } from '../engine/compilation.ts';
import type { Windows } from '../model/model.ts';
import { InsideWindowsPropagator, OutsideWindowsPropagator } from '../propagators/windows.ts';

/** A stretch inside one of, or outside all of, fixed windows. Inferences `windows`, `stretch` (it does not run backwards). */
export function postWindows(c: Windows, index: number, at: Compilation): void {
  const conditions = [...c.when.map((l) => at.literal(l)), ...at.presences([c.from.interval, c.to.interval])];
  const from = at.point(c.from);
  const to = at.point(c.to);
  at.kernel.postArc(from, to, 0, conditions, index, 'stretch');
  if (c.mode === 'inside') {
    const length = Math.max(0, at.leastLength(c.from, c.to));
    new InsideWindowsPropagator(at.kernel, from, to, length, c.windows, conditions, index);
  } else {
    const proper = c.windows.filter(([a, b]) => a < b);
    new OutsideWindowsPropagator(at.kernel, from, to, proper, conditions, index);
  }
}
