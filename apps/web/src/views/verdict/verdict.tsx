/** One sentence on top: what the plan in hand is worth, how old that word is, and the three least margins. */
import { marginWords } from '@handrail/eva/brief/parts/verdict';
import { useDerived, useDocument, useSession } from '../shell/use-stores.ts';
import styles from './verdict.module.css';

export function Verdict() {
  const evaId = useSession((state) => state.evaId);
  const opening = useDerived((state) => state.opening);
  const judged = useDerived((state) => state.judged);
  const revision = useDocument((state) => state.revision);
  const hasPlan = useDocument((state) => state.copy.timeline !== null);
  const eva = evaId === null ? undefined : judged.value?.evas.get(evaId);
  const errors = opening.value?.problems.filter(({ severity }) => severity === 'error').length ?? 0;
  const here = judged.value?.findings.filter(({ where, waiver }) => where.eva === evaId && waiver === null) ?? [];
  const weight = here.some(({ severity }) => severity === 'error')
    ? 'error'
    : here.some(({ severity }) => severity === 'unknown')
      ? 'unknown'
      : here.some(({ severity }) => severity === 'warning')
        ? 'warning'
        : 'none';
  const isStale = judged.revision !== revision || judged.isRunning;
  const age =
    judged.failed !== null
      ? `could not be judged: ${judged.failed}`
      : isStale
        ? judged.value?.hasWaysHome === false
          ? 'replayed; rules and ways home are being worked out'
          : 'being worked out again'
        : 'of the plan in hand';
  const words =
    errors > 0
      ? `The text has ${errors} ${errors === 1 ? 'error' : 'errors'}: nothing is planned or judged until ${errors === 1 ? 'it is' : 'they are'} mended.`
      : !hasPlan
        ? 'No plan yet. Plan the campaign to see a timeline.'
        : (eva?.verdict ?? 'The plan is being judged.');
  return (
    <section className={styles.verdict} aria-label="Verdict" data-testid="verdict" data-fresh={String(!isStale)}>
      <p className={styles.sentence} data-weight={errors > 0 ? 'error' : weight}>
        {words} {hasPlan && errors === 0 ? <span className={styles.age}>({age})</span> : null}
      </p>
      {eva === undefined || errors > 0 ? null : (
        <ul className={styles.margins} aria-label="The three least margins">
          {eva.margins.map((margin) => (
            <li key={margin.words} className={margin.marginS < 0 ? styles.short : undefined}>
              {marginWords(margin)}
            </li>
          ))}
        </ul>
      )}
      {opening.value?.levelSentence == null ? null : <p className={styles.age}>{opening.value.levelSentence}</p>}
    </section>
  );
}
