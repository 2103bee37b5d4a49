import { look } from '../../session/session-store.ts';
import styles from './shell.module.css';
import { useServer, useSession } from './use-stores.ts';

/** Two bars at most: somebody saved another version while there are changes here; the server is away. */
export function ConflictBar() {
  const conflict = useServer((state) => state.conflict);
  const isReached = useServer((state) => state.isReached);
  const view = useSession((state) => state.view);
  return (
    <div className={styles.bars}>
      {isReached ? null : (
        <p className={styles.away} role="status" data-testid="away">
          <b>The server is away.</b> Work on: every change is kept in this browser, and is saved when the server is
          back.
        </p>
      )}
      {conflict === null ? null : (
        <p className={styles.conflict} role="status" data-testid="conflict">
          <b>
            {conflict.author} saved version {conflict.number}
          </b>{' '}
          ({conflict.message}) while you have changes of your own. Nothing is written over.{' '}
          {view === 'versions' ? null : (
            <button type="button" onClick={() => look({ view: 'versions', page: null })}>
              See both
            </button>
          )}
        </p>
      )}
    </div>
  );
}
