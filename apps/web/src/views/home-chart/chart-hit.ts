/** What lies under a point of the chart. */
import type { HomeChartData } from '@handrail/eva/brief/home-chart/home-chart-data';
import { homeOf, LANE_SHIFT } from './draw-chart.ts';
import type { Scale } from './viewport.ts';

export interface StintBox {
  readonly stint: string;
  readonly title: string;
  readonly person: string;
  readonly startS: number;
  readonly endS: number;
  readonly place: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const NEAR_PX = 12;

/** The work of everybody that is in view, as boxes large enough to hit. */
export function stintBoxes(data: HomeChartData, scale: Scale): readonly StintBox[] {
  return data.lanes.flatMap((lane, index) =>
    lane.course.flatMap((stretch) => {
      if (stretch.stint === null) return [];
      const [x1, x2] = [scale.x(stretch.startS), scale.x(stretch.endS)];
      if (x2 < scale.left || x1 > scale.right) return [];
      const y1 = scale.y(homeOf(data, lane, stretch.place)) + index * LANE_SHIFT;
      const y2 = scale.y(homeOf(data, lane, stretch.to)) + index * LANE_SHIFT;
      const left = Math.max(scale.left, x1);
      return [
        {
          stint: stretch.stint.key,
          title: stretch.stint.title,
          person: lane.person,
          startS: stretch.startS,
          endS: stretch.endS,
          place: stretch.place,
          x: left,
          y: Math.min(y1, y2) - NEAR_PX,
          width: Math.max(8, Math.min(scale.right, x2) - left),
          height: Math.abs(y2 - y1) + NEAR_PX * 2,
        },
      ];
    }),
  );
}

/** The box at a point; of several the one whose line is nearest. */
export function stintAt(boxes: readonly StintBox[], x: number, y: number): StintBox | null {
  const under = boxes.filter((box) => x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height);
  return under.toSorted((a, b) => Math.abs(a.y + a.height / 2 - y) - Math.abs(b.y + b.height / 2 - y))[0] ?? null;
}
