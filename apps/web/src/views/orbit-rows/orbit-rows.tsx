/** The second arrangement: a row a revolution with sunrise at the left, so that what depends on light stands in columns. */
import type { HomeChartData } from '@handrail/eva/brief/home-chart/home-chart-data';
import { rowsOf } from '@handrail/eva/brief/orbit-rows';
import { formatPet, formatUtcClock } from '@handrail/quantity/time';
import { look } from '../../session/session-store.ts';
import { useSession } from '../shell/use-stores.ts';
import styles from './orbit-rows.module.css';

export function OrbitRows({ data }: { readonly data: HomeChartData }) {
  const selection = useSession((state) => state.selection);
  const minuteS = useSession((state) => state.minuteS);
  const timeMode = useSession((state) => state.timeMode);
  const night = data.bands.find((band) => band.window.shownAs === 'night')?.pieces ?? [];
  const rows = rowsOf(data, night);
  const longest = Math.max(...rows.map((row) => row.endS - row.startS));
  const share = (seconds: number): string => `${(seconds / longest) * 100}%`;
  const isHere = selection?.what === 'stint' && data.eva.stints.some((one) => one.stint === selection.id);
  const tabbed = isHere ? selection.id : data.eva.stints[0]?.stint;
  const clock = (petS: number): string =>
    timeMode === 'pet' ? formatPet(petS) : formatUtcClock(data.eva.petZeroUtcMs + petS * 1000);
  return (
    <div className={styles.rows} tabIndex={0} role="region" aria-label={`Orbit rows of ${data.title}`}>
      {night.length === 0 ? <p>No night is stated: rows are of 90 minutes.</p> : null}
      {rows.map((row) => (
        <div key={row.startS} className={styles.row}>
          <div className={styles.when}>
            {clock(Math.max(row.startS, data.startS))}
            <br />
            {night.length === 0 ? 'from' : 'sunrise'}
          </div>
          <div className={styles.track} style={{ width: share(row.endS - row.startS) }}>
            {night
              .filter(([from, to]) => to > row.startS && from < row.endS)
              .map(([from, to]) => {
                const [a, b] = [Math.max(from, row.startS), Math.min(to, row.endS)];
                const span = row.endS - row.startS;
                return (
                  <div
                    key={from}
                    className={styles.night}
                    title={`night, PET ${formatPet(from)} to ${formatPet(to)}`}
                    style={{ left: `${((a - row.startS) / span) * 100}%`, width: `${((b - a) / span) * 100}%` }}
                  />
                );
              })}
            {data.lanes.flatMap((lane, laneIndex) =>
              lane.course
                .filter((stretch) => stretch.endS > row.startS && stretch.startS < row.endS && stretch.kind !== 'wait')
                .map((stretch) => {
                  const [a, b] = [Math.max(stretch.startS, row.startS), Math.min(stretch.endS, row.endS)];
                  const span = row.endS - row.startS;
                  const style = {
                    left: `${((a - row.startS) / span) * 100}%`,
                    width: `${((b - a) / span) * 100}%`,
                    top: 2 + laneIndex * 28,
                  };
                  const { stint } = stretch;
                  if (stint === null)
                    return (
                      <div
                        key={`${lane.person}${stretch.startS}`}
                        className={styles.move}
                        style={style}
                        title={`${lane.person}: ${stretch.kind}`}
                      />
                    );
                  return (
                    <button
                      key={`${lane.person}${stretch.startS}`}
                      type="button"
                      // One of them is in the tab order; the arrow keys go from one to the next.
                      tabIndex={stint.key === tabbed ? 0 : -1}
                      className={styles.work}
                      data-lane={laneIndex}
                      style={style}
                      aria-pressed={selection?.what === 'stint' && selection.id === stint.key}
                      title={`${lane.person}: ${stint.title}, PET ${formatPet(stretch.startS)} to ${formatPet(stretch.endS)}`}
                      onClick={() => look({ selection: { what: 'stint', id: stint.key }, minuteS: stretch.startS })}
                    >
                      {lane.person} {stint.title}
                    </button>
                  );
                }),
            )}
            {minuteS >= row.startS && minuteS < row.endS ? (
              <div
                className={styles.minute}
                style={{ left: `${((minuteS - row.startS) / (row.endS - row.startS)) * 100}%` }}
              />
            ) : null}
          </div>
        </div>
      ))}
    </div>
  );
}
