import type { ChartHands, ChartMode, PointerPlace } from './chart-mode.ts';

/** The chart follows the pointer. */
export function panning(hands: ChartHands, from: PointerPlace, rest: () => ChartMode): ChartMode {
  let last = from;
  const same: ChartMode = {
    name: 'panning',
    move: (place) => {
      const scale = hands.scale();
      hands.panBy(scale.petAt(last.x) - scale.petAt(place.x));
      last = place;
      return same;
    },
    release: rest,
    cancel: rest,
  };
  return same;
}
