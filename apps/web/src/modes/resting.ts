import type { ChartHands, ChartMode, PointerPlace } from './chart-mode.ts';
import { pressed } from './pressed.ts';

export function resting(): ChartMode {
  const same: ChartMode = { name: 'resting', move: () => same, release: () => same, cancel: () => same };
  return same;
}

/** The pointer goes down. */
export function press(hands: ChartHands, place: PointerPlace): ChartMode {
  return pressed(hands, place, hands.boxAt(place), resting);
}
