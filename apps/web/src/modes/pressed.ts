import type { StintBox } from '../views/home-chart/chart-hit.ts';
import { type ChartHands, type ChartMode, CLICK_PX, type PointerPlace } from './chart-mode.ts';
import { dragging } from './dragging.ts';
import { panning } from './panning.ts';

/** Down, and not yet clear whether it is a click, a drag of a stint, or a pan. */
export function pressed(hands: ChartHands, from: PointerPlace, box: StintBox | null, rest: () => ChartMode): ChartMode {
  const same: ChartMode = {
    name: 'pressed',
    move: (place) => {
      if (Math.hypot(place.x - from.x, place.y - from.y) < CLICK_PX) return same;
      return box === null ? panning(hands, from, rest).move(place) : dragging(hands, from, box, rest).move(place);
    },
    release: (place) => {
      hands.select(box?.stint ?? null);
      hands.setMinute(hands.scale().petAt(place.x));
      return rest();
    },
    cancel: rest,
  };
  return same;
}
