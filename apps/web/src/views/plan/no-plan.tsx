import { look } from '../../session/session-store.ts';
import { ActionButton } from '../shell/action-button.tsx';
import { useDerived, usePlanRun } from '../shell/use-stores.ts';
import styles from './plan.module.css';

/** Before there is a plan: what is there, and what to do next. */
export function NoPlan() {
  const opening = useDerived((state) => state.opening.value);
  const isRunning = usePlanRun((state) => state.isRunning);
  if (opening === null) {
    return (
      <p role="status" className={styles.waiting}>
        The text is being read.
      </p>
    );
  }
  const errors = opening.problems.filter(({ severity }) => severity === 'error');
  const first = errors[0];
  if (opening.campaign === null) {
    return (
      <div className={styles.empty}>
        <h2>{opening.skyFault === null ? 'The text has errors' : 'The sky cannot be computed'}</h2>
        <p>
          {opening.skyFault ??
            `${errors.length} ${errors.length === 1 ? 'error keeps' : 'errors keep'} the campaign from being read. The first: ${first?.what ?? ''}.`}
        </p>
        <button type="button" onClick={() => look({ view: 'text', line: first?.span.line ?? 1 })}>
          Go to line {first?.span.line ?? 1}
        </button>
      </div>
    );
  }
  const stints = opening.campaign.tasks.flatMap((task) => task.stints);
  return (
    <div className={styles.empty}>
      <h2>No plan yet</h2>
      <p>
        {opening.campaign.tasks.length} {opening.campaign.tasks.length === 1 ? 'task' : 'tasks'} with {stints.length}{' '}
        {stints.length === 1 ? 'stint' : 'stints'} wait for {opening.campaign.evas.length}{' '}
        {opening.campaign.evas.length === 1 ? 'EVA' : 'EVAs'}. Planning finds who does what when, and says what does not
        fit and why.
      </p>
      {isRunning ? null : <ActionButton id="plan-all" />}
    </div>
  );
}
