/** What changed between two plans, in words. */
import type { TimelineChanges } from '@handrail/eva/schedule/compare-timelines';
import { formatDuration, formatPet } from '@handrail/quantity/time';
import styles from './versions.module.css';
import { HeadRow } from '../shell/head-row.tsx';

export function TimelineChangesList({
  changes,
  titleOf,
}: {
  readonly changes: TimelineChanges;
  readonly titleOf: (stint: string) => string;
}) {
  const evas = changes.evas.filter(({ bothInLaterS, stints }) => bothInLaterS !== 0 || stints.length > 0);
  if (evas.length === 0 && changes.tasksIn.length === 0 && changes.tasksOut.length === 0) {
    return <p className={styles.soft}>The plans are the same.</p>;
  }
  return (
    <div>
      {changes.tasksIn.length === 0 ? null : <p>In: {changes.tasksIn.join(', ')}</p>}
      {changes.tasksOut.length === 0 ? null : <p>Out: {changes.tasksOut.join(', ')}</p>}
      {evas.map((eva) => (
        <div key={eva.eva}>
          <h3>
            {eva.eva}
            {eva.bothInLaterS === null
              ? ': in only one of the two'
              : eva.bothInLaterS === 0
                ? ''
                : `: both in ${formatDuration(Math.abs(eva.bothInLaterS))} ${eva.bothInLaterS > 0 ? 'later' : 'sooner'}`}
          </h3>
          <table>
            <caption className="out-of-sight">Stints of {eva.eva} that differ</caption>
            <HeadRow of={['Stint', 'Before', 'After', 'What']} />
            <tbody>
              {eva.stints.map((one) => (
                <tr key={one.stint}>
                  <th scope="row">{titleOf(one.stint)}</th>
                  <td>{one.from === null ? '–' : `${formatPet(one.from.startS)} ${one.from.assigned.join(', ')}`}</td>
                  <td>{one.to === null ? '–' : `${formatPet(one.to.startS)} ${one.to.assigned.join(', ')}`}</td>
                  <td>{wordsOf(one)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      ))}
    </div>
  );
}

function wordsOf({ kind, laterS, longerS, people }: TimelineChanges['evas'][number]['stints'][number]): string {
  if (kind !== 'moved') return kind;
  return [
    laterS === 0 ? '' : `${formatDuration(Math.abs(laterS))} ${laterS > 0 ? 'later' : 'sooner'}`,
    longerS === 0 ? '' : `${formatDuration(Math.abs(longerS))} ${longerS > 0 ? 'longer' : 'shorter'}`,
    ...people.map(({ from, to }) => `${to} in place of ${from}`),
  ]
    .filter((words) => words !== '')
    .join(', ');
}
