/** For who approves: what is still open in the version that stands, what was waived, what changed since the last approval. */
import type { Finding } from '@handrail/eva/finding/finding';
import { compareTimelines } from '@handrail/eva/schedule/compare-timelines';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import { formatUtc } from '@handrail/quantity/time';
import type { ApprovalRow, Comparison, VersionWhole } from '@handrail/wire/api/api-types';
import { useEffect, useState } from 'react';
import { hasUnsaved } from '../../document/document-store.ts';
import { api } from '../../server-link/api.ts';
import { look } from '../../session/session-store.ts';
import { useDerived, useDocument, useServer } from '../shell/use-stores.ts';
import { LineChanges } from '../versions/line-changes.tsx';
import { TimelineChangesList } from '../versions/timeline-changes-list.tsx';
import styles from './agree.module.css';
import { ApprovalForm } from './approval-form.tsx';
import { HeadRow } from '../shell/head-row.tsx';

interface Since {
  readonly approval: ApprovalRow;
  readonly words: Comparison;
  readonly version: VersionWhole;
}

export default function AgreeView() {
  const campaignId = useDocument((state) => state.campaignId);
  const saved = useDocument((state) => state.saved);
  const isUnsaved = useDocument(hasUnsaved);
  const timeline = useDocument((state) => state.copy.timeline);
  const campaign = useDerived((state) => state.opening.value?.campaign ?? null);
  const judged = useDerived((state) => state.judged);
  const revision = useDocument((state) => state.revision);
  const seen = useServer((state) => state.approvalsSeen);
  const [approvals, setApprovals] = useState<readonly ApprovalRow[]>([]);
  const [since, setSince] = useState<Since | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  useEffect(() => {
    if (campaignId === null || saved === null) return;
    const head = saved.number;
    const read = async (): Promise<void> => {
      const rows = await api.approvals(campaignId);
      setApprovals(rows.toSorted((a, b) => b.atUtcMs - a.atUtcMs));
      const last = rows
        .filter(({ decision, number }) => decision === 'agreed' && number <= head)
        .toSorted((a, b) => b.number - a.number)[0];
      if (last === undefined || last.number === head) {
        setSince(null);
        return;
      }
      const [words, version] = await Promise.all([
        api.compare(campaignId, last.number, head),
        api.version(campaignId, last.number),
      ]);
      setSince({ approval: last, words, version });
    };
    read()
      .then(() => setFault(null))
      .catch((cause: unknown) => setFault(cause instanceof Error ? cause.message : String(cause)));
  }, [campaignId, saved, seen]);
  const open = (judged.value?.findings ?? []).filter(({ waiver }) => waiver === null);
  const errors = open.filter(({ severity }) => severity === 'error');
  const unknowns = open.filter(({ severity }) => severity === 'unknown');
  const requests = campaign?.requests.filter(({ status }) => status !== 'agreed') ?? [];
  const waivers = campaign?.waivers ?? [];
  const isFresh = judged.revision === revision && !judged.isRunning && judged.value?.hasWaysHome === true;
  const here = approvals.filter(({ number }) => number === saved?.number);
  const before = since?.version.timeline as Timeline | null | undefined;
  return (
    <section className={styles.view} aria-label="Not yet agreed" tabIndex={0}>
      <h2>
        Version {saved?.number ?? '–'}: {here.length === 0 ? 'not yet decided' : here.map(words).join('; ')}
      </h2>
      <p role="status" className={styles.soft}>
        {isUnsaved
          ? 'What is in hand differs from this version: lists below are of what is in hand. Save it first, then decide.'
          : isFresh
            ? 'The replay, the rules and the ways home have run on this version; what they cannot tell stands under Unknown.'
            : 'Rules and ways home are being worked out.'}
        {fault === null ? '' : ` Approvals cannot be had now: ${fault}.`}
      </p>
      <div className={styles.columns}>
        <FindingList title="Open errors" none="No finding at error level is open." findings={errors} />
        <FindingList title="Unknown" none="Nothing is unknown to the checks that ran." findings={unknowns} />
        <section className={styles.list}>
          <h3>Requests not agreed ({requests.length})</h3>
          {requests.length === 0 ? <p className={styles.soft}>Every request is agreed.</p> : null}
          <ul>
            {requests.map((request) => (
              <li key={request.id}>
                <button
                  type="button"
                  onClick={() => look({ view: 'requests', selection: { what: 'request', id: request.id } })}
                >
                  {request.title}
                </button>{' '}
                {request.owner}, {request.status}
              </li>
            ))}
          </ul>
        </section>
        <section className={styles.list}>
          <h3>Waivers ({waivers.length})</h3>
          {waivers.length === 0 ? <p className={styles.soft}>Nothing is waived.</p> : null}
          <ul>
            {waivers.map((waiver) => (
              <li key={`${waiver.rule}${waiver.of}`}>
                <button type="button" onClick={() => look({ view: 'text', line: waiver.span.line })}>
                  {waiver.rule}
                </button>{' '}
                for {waiver.of}: {waiver.reason} ({waiver.by}, until {formatUtc(waiver.untilUtcMs)})
              </li>
            ))}
          </ul>
        </section>
      </div>
      <section className={styles.list}>
        <h3>
          {since === null
            ? approvals.some(({ decision }) => decision === 'agreed')
              ? 'Nothing has changed since the last approval.'
              : 'No version has been agreed yet: everything is new.'
            : `Changed since version ${since.approval.number}, agreed by ${since.approval.by}`}
        </h3>
        {since === null ? null : (
          <>
            {before == null || timeline === null ? null : (
              <TimelineChangesList changes={compareTimelines(before, timeline)} titleOf={(stint) => stint} />
            )}
            <LineChanges lines={since.words.lines} />
          </>
        )}
      </section>
      <ApprovalForm
        number={saved?.number ?? null}
        isUnsaved={isUnsaved}
        open={{ errors: errors.length, unknowns: unknowns.length, requests: requests.length, isFresh }}
      />
      {approvals.length === 0 ? null : (
        <table>
          <caption>Decisions so far</caption>
          <HeadRow of={['Version', 'Decision', 'Who', 'When', 'Note']} />
          <tbody>
            {approvals.map((row) => (
              <tr key={`${row.number}${row.by}${row.atUtcMs}`}>
                <th scope="row">{row.number}</th>
                <td>{row.decision}</td>
                <td>{row.by}</td>
                <td>{formatUtc(row.atUtcMs)}</td>
                <td>{row.note}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

function words(row: ApprovalRow): string {
  return `${row.decision} by ${row.by}`;
}

function FindingList({
  title,
  none,
  findings,
}: {
  readonly title: string;
  readonly none: string;
  readonly findings: readonly Finding[];
}) {
  return (
    <section className={styles.list}>
      <h3>
        {title} ({findings.length})
      </h3>
      {findings.length === 0 ? <p className={styles.soft}>{none}</p> : null}
      <ul>
        {findings.map((finding, index) => (
          <li key={`${finding.rule}${finding.where.stint ?? ''}${index}`} data-severity={finding.severity}>
            {finding.where.stint === null ? (
              <b>{finding.title}</b>
            ) : (
              <button
                type="button"
                onClick={() =>
                  look({
                    view: 'plan',
                    selection: { what: 'stint', id: finding.where.stint ?? '' },
                    ...(finding.where.eva === null ? {} : { evaId: finding.where.eva }),
                    ...(finding.where.petS === null ? {} : { minuteS: finding.where.petS }),
                  })
                }
              >
                {finding.title}
              </button>
            )}
            <div className={styles.soft}>{finding.why}</div>
          </li>
        ))}
      </ul>
    </section>
  );
}
