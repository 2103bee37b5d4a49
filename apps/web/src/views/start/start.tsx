/** Which campaign? Those that are there, and the ways to begin one. */
import { CAUTION } from '@handrail/eva/brief/brief-input';
import { formatUtc } from '@handrail/quantity/time';
import type { CampaignHead } from '@handrail/wire/api/api-types';
import { useEffect, useState } from 'react';
import { api } from '../../server-link/api.ts';
import { openOnServer } from '../../server-link/open-campaign.ts';
import { mayWrite } from '../../server-link/server-store.ts';
import { allPutBy } from '../../server-link/shelf.ts';
import { leave } from '../../server-link/start-session.ts';
import { linkOf } from '../../session/deep-link.ts';
import { look, sessionStore, tell } from '../../session/session-store.ts';
import { useServer } from '../shell/use-stores.ts';
import { Begin } from './begin.tsx';
import styles from './start.module.css';

interface Row {
  readonly id: string;
  readonly title: string;
  readonly head: CampaignHead['head'] | null;
}

export default function Start() {
  const session = useServer((state) => state.session);
  const isAllowed = useServer(mayWrite);
  const [rows, setRows] = useState<readonly Row[] | null>(null);
  const [fault, setFault] = useState('');
  useEffect(() => {
    api.campaigns().then(setRows, (cause: unknown) => {
      setFault(cause instanceof Error ? cause.message : String(cause));
      // Without the server: what this browser has put by.
      void allPutBy().then((kept) =>
        setRows(kept.map(({ campaignId, title }) => ({ id: campaignId, title, head: null }))),
      );
    });
  }, []);
  return (
    <main className={styles.start}>
      <header className={styles.head}>
        <h1>Handrail</h1>
        <p>Plan, prove, brief and run a campaign of spacewalks.</p>
        <span className={styles.push} />
        {session?.mode === 'accounts' ? (
          <p>
            {session.user?.name}{' '}
            <button type="button" onClick={() => void leave()}>
              Sign out
            </button>
          </p>
        ) : null}
      </header>
      <section aria-label="Campaigns" className={styles.card}>
        <h2>Campaigns</h2>
        {fault === '' ? null : (
          <p role="status">
            {fault}. {rows !== null && rows.length > 0 ? 'This is what the browser has kept.' : ''}
          </p>
        )}
        {rows === null ? <p role="status">Asking …</p> : null}
        {rows?.length === 0 && fault === '' ? (
          <p className={styles.soft}>
            None yet. {isAllowed ? 'Begin one below: a pasted list is enough for a timeline.' : 'A planner begins one.'}
          </p>
        ) : null}
        <ul className={styles.rows}>
          {rows?.map(({ id, title, head }) => (
            <li key={id}>
              <a
                href={`/campaigns/${encodeURIComponent(id)}`}
                onClick={(event) => {
                  if (event.ctrlKey || event.metaKey) return;
                  event.preventDefault();
                  void openCampaignAt(id);
                }}
              >
                <b>{title}</b>
                <span>
                  {head === null
                    ? 'kept in this browser'
                    : `version ${head.number} by ${head.author}, ${formatUtc(head.atUtcMs)}: ${head.message}`}
                </span>
                <span>
                  {head === null
                    ? ''
                    : `${head.level === null ? `${head.errors} ${head.errors === 1 ? 'error' : 'errors'} in the text` : `level ${head.level}`}, ${head.hasTimeline ? 'planned' : 'no plan yet'}`}
                </span>
              </a>
            </li>
          ))}
        </ul>
      </section>
      {isAllowed ? <Begin onMade={(id) => void openCampaignAt(id)} /> : null}
      <p className={styles.caution}>
        {CAUTION} <span>{session?.program}</span>
      </p>
    </main>
  );
}

async function openCampaignAt(id: string): Promise<void> {
  try {
    look({ view: 'plan', evaId: null, minuteS: 0, selection: null, line: null, page: null });
    await openOnServer(id);
    history.pushState(null, '', linkOf(id, sessionStore.getState()));
  } catch (cause) {
    tell(`Not opened: ${cause instanceof Error ? cause.message : String(cause)}`);
  }
}
