import type { StintBox } from '../views/home-chart/chart-hit.ts';
import type { ChartHands, ChartMode, DragShown, PointerPlace } from './chart-mode.ts';

/** Up or down by so much gives the stint to the other person. */
const GIVE_PX = 36;

/** A stint in hand: along time it moves, up or down it goes to the other person. Nothing changes before it is dropped. */
export function dragging(hands: ChartHands, from: PointerPlace, box: StintBox, rest: () => ChartMode): ChartMode {
  let shown: DragShown = { box, startS: box.startS, to: box.person };
  const same: ChartMode = {
    name: 'dragging',
    move: (place) => {
      const scale = hands.scale();
      const wanted = box.startS + scale.petAt(place.x) - scale.petAt(from.x);
      const other = Math.abs(place.y - from.y) > GIVE_PX ? hands.otherOf(box.person) : null;
      shown = { box, startS: hands.snap(wanted, box.stint), to: other ?? box.person };
      hands.showDrag(shown);
      return same;
    },
    release: () => {
      hands.showDrag(null);
      if (shown.startS !== box.startS || shown.to !== box.person) hands.drop(shown);
      return rest();
    },
    cancel: () => {
      hands.showDrag(null);
      return rest();
    },
  };
  return same;
}
