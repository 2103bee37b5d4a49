import { look } from '../../session/session-store.ts';
import { ActionButton } from '../shell/action-button.tsx';
import { useDerived, useDocument, usePlanRun, useSession } from '../shell/use-stores.ts';
import styles from './plan.module.css';

/** Which EVA, which arrangement, and planning: nothing is planned unasked. */
export function PlanBar() {
  const timeline = useDocument((state) => state.copy.timeline);
  const campaign = useDerived((state) => state.opening.value?.campaign ?? null);
  const evaId = useSession((state) => state.evaId);
  const arrangement = useSession((state) => state.arrangement);
  const isTable = useSession((state) => state.isTwinShown);
  const isRunning = usePlanRun((state) => state.isRunning);
  const planned = timeline?.evas.map(({ eva }) => eva) ?? [];
  return (
    <div className={styles.bar}>
      <div role="group" aria-label="EVA" className={styles.group}>
        {planned.map((id) => (
          <button
            key={id}
            type="button"
            aria-pressed={id === evaId}
            onClick={() => look({ evaId: id, selection: null, minuteS: 0 })}
          >
            {campaign?.evas.find((eva) => eva.id === id)?.title ?? id}
          </button>
        ))}
      </div>
      <div role="group" aria-label="Arrangement" className={styles.group}>
        <button
          type="button"
          aria-pressed={arrangement === 'home' && !isTable}
          onClick={() => look({ arrangement: 'home', isTwinShown: false })}
        >
          Home chart
        </button>
        <button
          type="button"
          aria-pressed={arrangement === 'orbits' && !isTable}
          onClick={() => look({ arrangement: 'orbits', isTwinShown: false })}
        >
          Orbit rows
        </button>
        <button type="button" aria-pressed={isTable} onClick={() => look({ isTwinShown: !isTable })}>
          Table
        </button>
      </div>
      <ActionButton id="vehicle" words="Vehicle" isPlain />
      <span className={styles.push} />
      {isRunning ? (
        <ActionButton id="stop-planning" words="Stop" isPlain />
      ) : (
        <>
          <ActionButton id="plan-eva" words="Plan this EVA" isPlain />
          <ActionButton id="plan-all" words={timeline === null ? 'Plan the campaign' : 'Plan all'} isPlain />
        </>
      )}
      <ActionButton id="print-briefing" words="Briefing" isPlain />
    </div>
  );
}
