import type { Problem } from '@handrail/eva/campaign/problem/problem';
import type { Finding, Severity } from '@handrail/eva/finding/finding';
import { formatPet } from '@handrail/quantity/time';
import { useMemo, useState } from 'react';
import { look } from '../../session/session-store.ts';
import { useDerived } from '../shell/use-stores.ts';
import styles from './findings.module.css';
import { safeMend } from './safe-mends.ts';
import { WaiverForm } from './waiver-form.tsx';

type Row = {
  readonly key: string;
  readonly severity: Severity;
  readonly title: string;
  readonly why: string;
  readonly mend: string | null;
  readonly rule: string;
  readonly finding: Finding | null;
  readonly line: number | null;
};

const WEIGHTS: readonly Severity[] = ['error', 'unknown', 'warning', 'note'];

export default function FindingsView() {
  const problems = useDerived((state) => state.opening.value?.problems);
  const judged = useDerived((state) => state.judged);
  const [shown, setShown] = useState<readonly Severity[]>(['error', 'unknown', 'warning']);
  const [words, setWords] = useState('');
  const [order, setOrder] = useState<'weight' | 'time' | 'rule'>('weight');
  const rows = useMemo(
    () => [...(problems ?? []).map(ofProblem), ...(judged.value?.findings ?? []).map(ofFinding)],
    [problems, judged],
  );
  const wanted = rows
    .filter(
      (row) =>
        shown.includes(row.severity) &&
        `${row.title} ${row.why} ${row.rule} ${row.finding?.where.stint ?? ''}`
          .toLowerCase()
          .includes(words.toLowerCase()),
    )
    .toSorted((a, b) =>
      order === 'weight'
        ? WEIGHTS.indexOf(a.severity) - WEIGHTS.indexOf(b.severity)
        : order === 'rule'
          ? a.rule.localeCompare(b.rule)
          : place(a) - place(b),
    );
  const count = (severity: Severity): number => rows.filter((row) => row.severity === severity).length;
  return (
    <section className={styles.view} aria-label="Findings" tabIndex={0}>
      <div className={styles.filters}>
        <h2>Findings</h2>
        {WEIGHTS.map((severity) => (
          <button
            key={severity}
            type="button"
            aria-pressed={shown.includes(severity)}
            onClick={() =>
              setShown(shown.includes(severity) ? shown.filter((one) => one !== severity) : [...shown, severity])
            }
          >
            {severity} {count(severity)}
          </button>
        ))}
        <input
          type="search"
          placeholder="words, rule or stint"
          aria-label="Filter findings"
          value={words}
          onChange={(event) => setWords(event.target.value)}
        />
        <label>
          by{' '}
          <select value={order} onChange={(event) => setOrder(event.target.value as typeof order)}>
            <option value="weight">weight</option>
            <option value="time">time</option>
            <option value="rule">rule</option>
          </select>
        </label>
      </div>
      {judged.isRunning ? <p role="status">Rules and ways home are being worked out.</p> : null}
      {wanted.length === 0 ? (
        <p>
          {rows.length === 0
            ? 'Nothing was noticed. That says no more than that every check that could run has passed.'
            : 'Nothing of what is chosen above.'}
        </p>
      ) : null}
      <ul>
        {wanted.map((row) => (
          <FindingCard key={row.key} row={row} />
        ))}
      </ul>
    </section>
  );
}

function FindingCard({ row }: { readonly row: Row }) {
  const [isWaiving, setWaiving] = useState(false);
  const { finding } = row;
  const mend = finding === null ? null : safeMend(finding);
  const where = finding?.where;
  return (
    <li className={styles.finding} data-severity={row.severity}>
      <h3>
        <span className={styles.weight}>{row.severity}</span> {row.title}
        {finding?.waiver == null ? '' : ' (waived)'}
      </h3>
      <dl>
        <dt>why</dt>
        <dd>
          {row.why}
          {finding?.source == null ? '' : ` [${finding.source}]`}
        </dd>
        {row.mend === null ? null : (
          <>
            <dt>mend</dt>
            <dd>{row.mend}</dd>
          </>
        )}
        {finding?.waiver == null ? null : (
          <>
            <dt>waived</dt>
            <dd>{finding.waiver}</dd>
          </>
        )}
      </dl>
      <div className={styles.jumps}>
        {where?.stint == null ? null : (
          <button
            type="button"
            onClick={() =>
              look({
                view: 'plan',
                ...(where.eva === null ? {} : { evaId: where.eva }),
                selection: { what: 'stint', id: where.stint ?? '' },
                ...(where.petS === null ? {} : { minuteS: where.petS }),
              })
            }
          >
            {where.stint}
          </button>
        )}
        {where?.petS == null ? null : (
          <button
            type="button"
            onClick={() =>
              look({ view: 'plan', ...(where.eva === null ? {} : { evaId: where.eva }), minuteS: where.petS ?? 0 })
            }
          >
            {where.eva} PET {formatPet(where.petS)}
          </button>
        )}
        {row.line === null ? null : (
          <button type="button" onClick={() => look({ view: 'text', line: row.line })}>
            line {row.line}
          </button>
        )}
        {mend === null ? null : (
          <button type="button" onClick={mend.run}>
            Mend: {mend.title}
          </button>
        )}
        {finding === null || finding.waiver !== null || row.severity === 'note' ? null : (
          <button type="button" aria-expanded={isWaiving} onClick={() => setWaiving(!isWaiving)}>
            Waive …
          </button>
        )}
        <button type="button" onClick={() => look({ view: 'help', page: row.rule })}>
          {row.rule}
        </button>
      </div>
      {isWaiving && finding !== null ? <WaiverForm finding={finding} onDone={() => setWaiving(false)} /> : null}
    </li>
  );
}

function place(row: Row): number {
  return row.finding?.where.petS ?? -1;
}
function ofProblem(problem: Problem): Row {
  const why = [
    problem.expected === null ? null : `expected ${problem.expected}`,
    problem.nearest === null ? null : `did you mean "${problem.nearest}"?`,
  ]
    .filter((one) => one !== null)
    .join('; ');
  return {
    key: `${problem.code}${problem.span.line}:${problem.span.column}${problem.what}`,
    severity: problem.severity,
    title: problem.what,
    why: why === '' ? 'in the text' : why,
    mend: null,
    rule: problem.code,
    finding: null,
    line: problem.span.line,
  };
}
function ofFinding(finding: Finding, index: number): Row {
  return {
    key: `${finding.rule}${finding.where.stint ?? ''}${finding.where.petS ?? ''}${index}`,
    severity: finding.severity,
    title: finding.title,
    why: finding.why,
    mend: finding.mend,
    rule: finding.rule,
    finding,
    line: finding.where.span?.line ?? null,
  };
}
