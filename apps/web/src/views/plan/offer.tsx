/** A plan that was asked for, beside the one in hand: what would change, to take or to leave. */
import { stintsByKey } from '@handrail/eva/timeline/person-course';
import { compareTimelines } from '@handrail/eva/schedule/compare-timelines';
import { ActionButton } from '../shell/action-button.tsx';
import { useDerived, useDocument, usePlanRun } from '../shell/use-stores.ts';
import { TimelineChangesList } from '../versions/timeline-changes-list.tsx';
import styles from './plan.module.css';

export function Offer() {
  const run = usePlanRun((state) => state);
  const timeline = useDocument((state) => state.copy.timeline);
  const campaign = useDerived((state) => state.opening.value?.campaign ?? null);
  if (!run.isRunning && run.offered === null && run.words === '') return null;
  const titles = campaign === null ? null : stintsByKey(campaign);
  const evas = run.judged === null ? [] : [...run.judged.evas.values()];
  return (
    <section className={styles.offer} aria-label="Planning" data-testid="offer">
      <p role="status">
        <b>{run.isRunning ? 'Planning' : run.offered === null ? 'Planning ended' : 'A plan is offered'}</b>
        {run.words === '' ? '' : `: ${run.words}`}
      </p>
      <div className={styles.group}>
        <ActionButton id="take-plan" words="Take it" />
        <ActionButton id="leave-plan" words="Leave it" isPlain />
      </div>
      {run.offered === null ? null : (
        <ul className={styles.verdicts}>
          {evas.map((eva) => (
            <li key={eva.chart.eva.eva}>{eva.verdict}</li>
          ))}
        </ul>
      )}
      {run.findings.length === 0 ? null : (
        <ul className={styles.verdicts}>
          {run.findings.slice(0, 6).map((finding) => (
            <li key={`${finding.rule}${finding.why}`} data-severity={finding.severity}>
              <b>{finding.title}.</b> {finding.why}
              {finding.mend === null ? '' : ` Mend: ${finding.mend}.`}
            </li>
          ))}
        </ul>
      )}
      {run.offered === null || timeline === null ? null : (
        <details className={styles.changes}>
          <summary>What would change</summary>
          <TimelineChangesList
            changes={compareTimelines(timeline, run.offered)}
            titleOf={(stint) => titles?.get(stint)?.title ?? stint}
          />
        </details>
      )}
    </section>
  );
}
