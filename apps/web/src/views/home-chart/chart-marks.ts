import type { HomeChartData } from '@handrail/eva/brief/home-chart/home-chart-data';

/** What stands on the chart beside the plan itself. */
export interface ChartMarks {
  readonly numbers: ReadonlyMap<string, number>;
  readonly families: readonly string[];
  readonly timeMode: 'pet' | 'utc';
  readonly minuteS: number;
  readonly selectedStint: string | null;
  /** Stints with findings, by the worst of them. */
  readonly troubled: ReadonlyMap<string, 'error' | 'warning' | 'unknown'>;
  /** Another plan under this one: what it was before, or what is offered. */
  readonly ghost: HomeChartData | null;
  readonly isStale: boolean;
}
