/** What the pointer is doing on the chart. A gesture is a mode; each mode is a file and says what comes next. */
import type { StintBox } from '../views/home-chart/chart-hit.ts';
import type { Scale } from '../views/home-chart/viewport.ts';

export interface PointerPlace {
  readonly x: number;
  readonly y: number;
}

/** What a mode may do to the chart and the plan. */
export interface ChartHands {
  readonly scale: () => Scale;
  readonly boxAt: (place: PointerPlace) => StintBox | null;
  readonly select: (stint: string | null) => void;
  readonly setMinute: (petS: number) => void;
  readonly panBy: (seconds: number) => void;
  /** The other person outside; null: there is none. */
  readonly otherOf: (person: string) => string | null;
  readonly snap: (petS: number, stint: string) => number;
  readonly showDrag: (drag: DragShown | null) => void;
  readonly drop: (drag: DragShown) => void;
}

export interface DragShown {
  readonly box: StintBox;
  /** Where it would start. */
  readonly startS: number;
  /** Who would have it. */
  readonly to: string;
}

export interface ChartMode {
  readonly name: 'resting' | 'pressed' | 'panning' | 'dragging';
  readonly move: (place: PointerPlace) => ChartMode;
  readonly release: (place: PointerPlace) => ChartMode;
  /** Escape, or the pointer is taken away. */
  readonly cancel: () => ChartMode;
}

/** A press that moves less than this is a click. */
export const CLICK_PX = 5;
