import type { HomeChartData } from '@handrail/eva/brief/home-chart/home-chart-data';
import { useMemo } from 'react';
import { useDerived, useSession } from '../shell/use-stores.ts';
import type { ChartMarks } from './chart-marks.ts';

const WEIGHT = { error: 3, unknown: 2, warning: 1, note: 0 } as const;

/** What stands on the chart beside the plan itself: numbers, selection, troubled stints, the other plan under this one. */
export function useMarks(data: HomeChartData, ghost: HomeChartData | null, isStale: boolean): ChartMarks {
  const timeMode = useSession((state) => state.timeMode);
  const minuteS = useSession((state) => state.minuteS);
  const selection = useSession((state) => state.selection);
  const findings = useDerived((state) => state.judged.value?.findings);
  const places = useDerived((state) => state.opening.value?.campaign?.vehicle.places);
  return useMemo(() => {
    const troubled = new Map<string, 'error' | 'warning' | 'unknown'>();
    for (const { severity, where, waiver } of findings ?? []) {
      if (where.stint === null || severity === 'note' || waiver !== null) continue;
      const before = troubled.get(where.stint);
      if (before === undefined || WEIGHT[before] < WEIGHT[severity]) troubled.set(where.stint, severity);
    }
    return {
      numbers: new Map(data.eva.stints.map(({ stint }, index) => [stint, index + 1] as const)),
      families: [...new Set((places ?? []).map(({ family }) => family))],
      timeMode,
      minuteS,
      selectedStint: selection?.what === 'stint' ? selection.id : null,
      troubled,
      ghost,
      isStale,
    };
  }, [data, ghost, isStale, timeMode, minuteS, selection, findings, places]);
}
