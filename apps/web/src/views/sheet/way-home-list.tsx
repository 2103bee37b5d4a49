/** The way home of everybody in this stint, at its changes: sums that can be redone by hand, and how to leave it. */
import type { HomeChartData } from '@handrail/eva/brief/home-chart/home-chart-data';
import type { PlannedStint } from '@handrail/eva/timeline/timeline';
import { formatDuration, formatPet } from '@handrail/quantity/time';
import { Why } from '../why/why.tsx';
import styles from './sheet.module.css';

export function WayHomeList({
  chart,
  planned,
  isKnown,
}: {
  readonly chart: HomeChartData;
  readonly planned: PlannedStint;
  readonly isKnown: boolean;
}) {
  const ways = chart.lanes.flatMap((lane) =>
    planned.assigned.includes(lane.person)
      ? lane.samples
          .filter(({ petS }) => petS >= planned.startS && petS <= planned.endS)
          .map((sample) => ({ ...sample, person: lane.person }))
      : [],
  );
  // Where one piece of work ends and the next begins, the same way home comes twice.
  const shown = ways.filter((way, index) => {
    const before = ways[index - 1];
    return (
      before === undefined || before.person !== way.person || before.petS !== way.petS || before.words !== way.words
    );
  });
  if (!isKnown) return <p className={styles.empty}>being worked out</p>;
  if (ways.length === 0) return <p className={styles.empty}>nothing to close</p>;
  return (
    <ul>
      {shown.map((way) => {
        const state = way.unknown.length > 0 ? 'unknown' : way.committed ? 'warning' : 'note';
        const sum = [
          `close and put away: ${formatDuration(way.closeS)}`,
          `let go, wait, detours: ${formatDuration(way.otherS)}`,
          `straight way from here: ${way.travelS === null ? 'none' : formatDuration(way.travelS)}`,
          `to hatch closed, both in: ${way.totalS === null ? 'unknown' : formatDuration(way.totalS)}`,
          way.shortest ? 'proved to be the shortest' : 'an upper bound: found and replayed, not proved shortest',
          way.words,
        ];
        return (
          <li key={`${way.person}${way.petS}${way.place}${way.words}`} className={styles[state]}>
            {way.person} at {formatPet(way.petS)}:{' '}
            {way.committed ? (
              <b>no safe stop in reach</b>
            ) : (
              <Why of={`way home of ${way.person} at PET ${formatPet(way.petS)}`} sum={sum}>
                {way.totalS === null ? 'unknown' : formatDuration(way.totalS)}
              </Why>
            )}
            {way.committed ? null : ' to hatch closed'}
            {way.unknown.length === 0 ? null : <div>unknown here: {way.unknown.join(', ')}</div>}
            {way.closing.length === 0 ? null : (
              <div>
                <b>leave it like this:</b> {way.closing.join(', ')}
              </div>
            )}
          </li>
        );
      })}
    </ul>
  );
}
