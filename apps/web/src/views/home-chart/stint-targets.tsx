import type { HomeChartData } from '@handrail/eva/brief/home-chart/home-chart-data';
import { formatPet } from '@handrail/quantity/time';
import { memo } from 'react';
import { look } from '../../session/session-store.ts';

interface StintTargetsProps {
  readonly data: HomeChartData;
  readonly numbers: ReadonlyMap<string, number>;
  readonly selected: string | null;
}

/**
 * Every stint of the chart for keyboard and screen reader; the selection that follows the focus is what is seen of it. They know
 * nothing of the viewport, so that moving the chart costs them nothing.
 */
export const StintTargets = memo(({ data, numbers, selected }: StintTargetsProps) => (
  <div className="out-of-sight">
    {data.lanes.flatMap((lane) =>
      lane.course.flatMap(({ stint, startS, endS }) =>
        stint === null
          ? []
          : [
              <button
                key={`${stint.key}|${lane.person}|${startS}`}
                type="button"
                aria-label={`${numbers.get(stint.key) ?? ''} ${lane.person}: ${stint.title}, PET ${formatPet(startS)} to ${formatPet(endS)}`}
                aria-pressed={selected === stint.key}
                onFocus={() => look({ selection: { what: 'stint', id: stint.key }, minuteS: startS })}
              />,
            ],
      ),
    )}
  </div>
));
StintTargets.displayName = 'StintTargets';
