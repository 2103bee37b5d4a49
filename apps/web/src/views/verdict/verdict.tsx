/** One sentence on top: what the plan in hand is worth, how old that word is, and the three least margins. */
import { formatDuration, formatPet } from '@handrail/quantity/time';
import { useDerived, useDocument, useSession } from '../shell/use-stores.ts';
import { Why } from '../why/why.tsx';
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
  const level = opening.value?.levelSentence ?? null;
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
      <ul className={styles.margins} aria-label="The three least margins, and what the words rest on">
        {eva === undefined || errors > 0
          ? null
          : eva.margins.map((margin) => (
              <li key={margin.words} className={margin.marginS < 0 ? styles.short : undefined}>
                <Why
                  of={margin.marginS < 0 ? 'a limit that is passed' : 'one of the three least margins'}
                  sum={[
                    margin.words,
                    `${margin.marginS < 0 ? 'short by' : 'left'}: ${formatDuration(Math.abs(margin.marginS))}`,
                    ...(margin.petS === null ? [] : [`at PET ${formatPet(margin.petS)}`]),
                  ]}
                >
                  {margin.marginS < 0 ? 'short by ' : ''}
                  {formatDuration(Math.abs(margin.marginS))}
                  {margin.marginS < 0 ? '' : ' left'}
                </Why>{' '}
                {margin.words}
              </li>
            ))}
        {level === null ? null : (
          <li>
            <Why of="input level" sum={[level]}>
              {/^Rests on input level \d/.exec(level)?.[0] ?? 'Input level'}
            </Why>
          </li>
        )}
      </ul>
    </section>
  );
}
