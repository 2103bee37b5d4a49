import type { HomeChartData } from './home-chart-data.ts';

/** From seconds of PET and seconds to the hatch to pixels of the drawing. Both axes count minutes, so the wall has one slope. */
export interface ChartScale {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  /** The y of the hatch (0 minutes). */
  readonly foot: number;
  readonly x: (petS: number) => number;
  readonly y: (homeS: number) => number;
  /** Seconds to the hatch at the upper edge. */
  readonly topS: number;
}

const MINUTE_S = 60;

/** What has to fit upward: every shelf, and every way home from where somebody stands; ten minutes at least. */
export function tallestS(data: HomeChartData): number {
  return Math.max(
    10 * MINUTE_S,
    ...data.shelves.map((shelf) => shelf.homeS),
    ...data.lanes.flatMap((lane) =>
      lane.samples.map((sample) => (sample.travelS ?? 0) + sample.closeS + sample.otherS),
    ),
  );
}

export function chartScale(data: HomeChartData): ChartScale {
  const width = 1040;
  const left = 172;
  const right = width - 16;
  const top = 46;
  const topS = tallestS(data) + 3 * MINUTE_S;
  const plotHeight = Math.min(460, Math.max(300, (topS / MINUTE_S) * 22));
  const foot = top + plotHeight;
  const span = data.endS - data.startS;
  return {
    width,
    height: foot + 44 + data.armRows.length * 22,
    left,
    right,
    top,
    foot,
    topS,
    x: (petS) => left + ((petS - data.startS) / span) * (right - left),
    y: (homeS) => foot - (homeS / topS) * plotHeight,
  };
}
