/** Versions of the campaign: save one, compare any two, bring an old one back; and the choice when two people saved. */
import type { Comparison, VersionHead } from '@handrail/wire/api/api-types';
import { compareTimelines } from '@handrail/eva/schedule/compare-timelines';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import { lazy, Suspense, useEffect, useState } from 'react';
import { hasUnsaved } from '../../document/document-store.ts';
import { api } from '../../server-link/api.ts';
import { openOnServer } from '../../server-link/open-campaign.ts';
import { mayWrite } from '../../server-link/server-store.ts';
import { tell } from '../../session/session-store.ts';
import { formatUtc } from '@handrail/quantity/time';
import { useDocument, useServer } from '../shell/use-stores.ts';
import { LineChanges } from './line-changes.tsx';
import { SaveForm } from './save-form.tsx';
import { TimelineChangesList } from './timeline-changes-list.tsx';
import styles from './versions.module.css';

const Conflict = lazy(() => import('./conflict.tsx'));

interface Compared {
  readonly words: Comparison;
  readonly before: Timeline | null;
  readonly after: Timeline | null;
}

export default function VersionsView() {
  const campaignId = useDocument((state) => state.campaignId);
  const saved = useDocument((state) => state.saved);
  const isUnsaved = useDocument(hasUnsaved);
  const isAllowed = useServer(mayWrite);
  const conflict = useServer((state) => state.conflict);
  const [versions, setVersions] = useState<readonly VersionHead[] | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const [pair, setPair] = useState<readonly [number, number] | null>(null);
  const [compared, setCompared] = useState<Compared | null>(null);
  useEffect(() => {
    if (campaignId === null) return;
    api
      .versions(campaignId)
      .then((list) => {
        setVersions(list.toSorted((a, b) => b.number - a.number));
        setFault(null);
      })
      .catch((cause: unknown) => setFault(cause instanceof Error ? cause.message : String(cause)));
  }, [campaignId, saved?.number, conflict?.number]);
  useEffect(() => {
    if (campaignId === null || pair === null) return;
    setCompared(null);
    const [from, to] = pair;
    Promise.all([api.compare(campaignId, from, to), api.version(campaignId, from), api.version(campaignId, to)])
      .then(([words, before, after]) =>
        setCompared({ words, before: before.timeline as Timeline | null, after: after.timeline as Timeline | null }),
      )
      .catch((cause: unknown) => tell(`Not compared: ${cause instanceof Error ? cause.message : String(cause)}`));
  }, [campaignId, pair]);
  const [from, to] = pair ?? [versions?.[1]?.number ?? 1, versions?.[0]?.number ?? 1];
  return (
    <section className={styles.view} aria-label="Versions" tabIndex={0}>
      <h2>Versions</h2>
      <SaveForm />
      {conflict === null ? null : (
        <Suspense fallback={<p role="status">Opening both …</p>}>
          <Conflict theirs={conflict} />
        </Suspense>
      )}
      {fault === null ? null : <p role="status">The list cannot be had now: {fault}.</p>}
      {versions === null ? null : (
        <>
          {versions.length < 2 ? null : (
            <div className={styles.compare} role="group" aria-label="Compare two versions">
              <label>
                compare{' '}
                <select value={from} onChange={(event) => setPair([Number(event.target.value), to])}>
                  {versions.map(({ number }) => (
                    <option key={number}>{number}</option>
                  ))}
                </select>
              </label>
              <label>
                with{' '}
                <select value={to} onChange={(event) => setPair([from, Number(event.target.value)])}>
                  {versions.map(({ number }) => (
                    <option key={number}>{number}</option>
                  ))}
                </select>
              </label>
              <button type="button" onClick={() => setPair([from, to])}>
                Compare
              </button>
            </div>
          )}
          {compared === null ? null : (
            <article className={styles.compared} aria-label={`Version ${from} with version ${to}`}>
              <h2>
                Version {compared.words.from.number} with version {compared.words.to.number}
              </h2>
              <h3>Plan</h3>
              {compared.before === null || compared.after === null ? (
                <p className={styles.soft}>
                  {compared.before === null && compared.after === null
                    ? 'Neither has a plan.'
                    : `Only version ${compared.before === null ? compared.words.to.number : compared.words.from.number} has a plan.`}
                </p>
              ) : (
                <TimelineChangesList
                  changes={compareTimelines(compared.before, compared.after)}
                  titleOf={(stint) => stint}
                />
              )}
              <h3>Text</h3>
              <LineChanges lines={compared.words.lines} />
            </article>
          )}
          <table>
            <caption className="out-of-sight">All versions, newest first</caption>
            <thead>
              <tr>
                <th scope="col">No.</th>
                <th scope="col">What for</th>
                <th scope="col">Who</th>
                <th scope="col">When (UTC)</th>
                <th scope="col">Reads as</th>
                <th scope="col">Plan</th>
                <th scope="col">
                  <span className="out-of-sight">Do</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {versions.map((version) => (
                <tr key={version.number} aria-current={version.number === saved?.number ? 'true' : undefined}>
                  <th scope="row">{version.number}</th>
                  <td>{version.message}</td>
                  <td>{version.author}</td>
                  <td>{formatUtc(version.atUtcMs)}</td>
                  <td>
                    {version.level === null
                      ? `${version.errors} ${version.errors === 1 ? 'error' : 'errors'}`
                      : `level ${version.level}`}
                  </td>
                  <td>{version.hasTimeline ? 'yes' : 'none'}</td>
                  <td>
                    <div className={styles.buttons}>
                      {version.parent === null ? null : (
                        <button type="button" onClick={() => setPair([version.parent ?? 1, version.number])}>
                          What changed
                        </button>
                      )}
                      {version.number === saved?.number ||
                      !isAllowed ||
                      campaignId === null ||
                      saved === null ? null : (
                        <button
                          type="button"
                          disabled={isUnsaved}
                          title={isUnsaved ? 'Save or undo what is in hand first' : undefined}
                          onClick={() =>
                            void api
                              .restore(campaignId, version.number, saved.number)
                              .then(() => openOnServer(campaignId))
                              .then(() => tell(`Version ${version.number} is back, as a new version.`))
                              .catch((cause: unknown) =>
                                tell(`Not brought back: ${cause instanceof Error ? cause.message : String(cause)}`),
                              )
                          }
                        >
                          Bring back
                        </button>
                      )}
                    </div>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
    </section>
  );
}
