/** The chart as a table: every stretch of everybody, for reading aloud, searching and checking by hand. */
import type { HomeChartData } from '@handrail/eva/brief/home-chart/home-chart-data';
import { formatDuration, formatPet, formatUtcClock } from '@handrail/quantity/time';
import { look } from '../../session/session-store.ts';
import { useSession } from '../shell/use-stores.ts';
import styles from './plan.module.css';
import { HeadRow } from '../shell/head-row.tsx';

export function ChartTwin({ data }: { readonly data: HomeChartData }) {
  const timeMode = useSession((state) => state.timeMode);
  const selection = useSession((state) => state.selection);
  const clock = (petS: number): string =>
    timeMode === 'pet' ? formatPet(petS) : formatUtcClock(data.eva.petZeroUtcMs + petS * 1000);
  const place = new Map(data.shelves.map((shelf) => [shelf.place, shelf] as const));
  const rows = data.lanes
    .flatMap((lane) => lane.course.map((stretch) => ({ ...stretch, person: lane.person })))
    .filter(({ startS, endS }) => endS > startS)
    .toSorted((a, b) => a.startS - b.startS || (a.person < b.person ? -1 : 1));
  return (
    <div className={styles.twin} tabIndex={0} role="region" aria-label={`Table of ${data.title}`}>
      <table>
        <caption>
          {data.title}: who is where, {timeMode === 'pet' ? 'PET' : 'UTC'}
        </caption>
        <HeadRow of={['From', 'To', 'Who', 'What', 'Where', 'To the hatch']} />
        <tbody>
          {rows.map((row) => (
            <tr
              key={`${row.person}${row.startS}`}
              aria-selected={selection?.id === row.stint?.key && row.stint !== null}
            >
              <td>{clock(row.startS)}</td>
              <td>{clock(row.endS)}</td>
              <td>{row.person}</td>
              <td>
                {row.stint === null ? (
                  row.kind
                ) : (
                  <button
                    type="button"
                    className={styles.link}
                    onClick={() =>
                      look({ selection: { what: 'stint', id: row.stint?.key ?? '' }, minuteS: row.startS })
                    }
                  >
                    {row.stint.title}
                  </button>
                )}
              </td>
              <td>
                {row.place === row.to
                  ? (place.get(row.place)?.title ?? row.place)
                  : `${place.get(row.place)?.title ?? row.place} to ${place.get(row.to)?.title ?? row.to}`}
              </td>
              <td>{place.get(row.to) === undefined ? '–' : formatDuration(place.get(row.to)?.homeS ?? 0)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
