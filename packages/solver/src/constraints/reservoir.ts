import type { Compilation } from '../engine/compilation.ts';
import type { Reservoir } from '../model/model.ts';
import { ReservoirPropagator } from '../propagators/reservoir.ts';

/** A level between a floor and a ceiling. Inference `reservoir`. */
export function postReservoir(c: Reservoir, index: number, at: Compilation): void {
  if (c.initial < c.min || c.initial > c.max) {
    at.kernel.postNogood([], [], index);
    return;
  }
  at.isPairwise = false;
  const events = c.events.map(({ at: point, change }) => ({
    at: at.point(point),
    presence: at.interval(point.interval).presence,
    change,
  }));
  new ReservoirPropagator(at.kernel, events, c.initial, c.min, index);
  new ReservoirPropagator(
    at.kernel,
    events.map((e) => ({ ...e, change: -e.change })),
    -c.initial,
    -c.max,
    index,
  );
}
