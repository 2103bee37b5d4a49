/** Which part of the chart is seen, and how seconds become pixels. */
import { tallestS } from '@handrail/eva/brief/home-chart/chart-scale';
import type { HomeChartData } from '@handrail/eva/brief/home-chart/home-chart-data';

export interface Viewport {
  /** Seconds of PET at the left and right edge of the plot. */
  readonly fromS: number;
  readonly toS: number;
}

export interface Scale {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  /** y of the hatch. */
  readonly foot: number;
  readonly topS: number;
  readonly viewport: Viewport;
  readonly x: (petS: number) => number;
  readonly y: (homeS: number) => number;
  readonly petAt: (x: number) => number;
}

const MINUTE_S = 60;
const LEAST_SPAN_S = 10 * MINUTE_S;

export function wholeOf(data: HomeChartData): Viewport {
  return { fromS: data.startS, toS: data.endS };
}

export function scaleOf(data: HomeChartData, viewport: Viewport, width: number, height: number): Scale {
  const left = width < 700 ? 96 : 158;
  const right = width - 14;
  const top = 30;
  const foot = height - 46 - data.armRows.length * 20;
  const topS = tallestS(data) + 2 * MINUTE_S;
  const span = viewport.toS - viewport.fromS;
  return {
    width,
    height,
    left,
    right,
    top,
    foot,
    topS,
    viewport,
    x: (petS) => left + ((petS - viewport.fromS) / span) * (right - left),
    y: (homeS) => foot - (homeS / topS) * (foot - top),
    petAt: (x) => viewport.fromS + ((x - left) / (right - left)) * span,
  };
}

/** Zooms about a second that stays where it is on the screen; never beyond the whole, never below ten minutes. */
export function zoomed(viewport: Viewport, whole: Viewport, aboutS: number, factor: number): Viewport {
  const span = viewport.toS - viewport.fromS;
  const wanted = Math.min(whole.toS - whole.fromS, Math.max(LEAST_SPAN_S, span * factor));
  const share = (aboutS - viewport.fromS) / span;
  return within({ fromS: aboutS - wanted * share, toS: aboutS + wanted * (1 - share) }, whole);
}

export function panned(viewport: Viewport, whole: Viewport, byS: number): Viewport {
  return within({ fromS: viewport.fromS + byS, toS: viewport.toS + byS }, whole);
}

/** Moves the viewport so that a stretch is in it. */
export function showing(viewport: Viewport, whole: Viewport, startS: number, endS: number): Viewport {
  if (startS >= viewport.fromS && endS <= viewport.toS) return viewport;
  const middle = (startS + endS) / 2;
  return panned(viewport, whole, middle - (viewport.fromS + viewport.toS) / 2);
}

function within(wanted: Viewport, whole: Viewport): Viewport {
  const span = wanted.toS - wanted.fromS;
  const fromS = Math.min(whole.toS - span, Math.max(whole.fromS, wanted.fromS));
  return { fromS, toS: fromS + span };
}
