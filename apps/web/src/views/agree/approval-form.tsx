import { useState } from 'react';
import { documentStore } from '../../document/document-store.ts';
import { api } from '../../server-link/api.ts';
import { mayApprove, serverStore } from '../../server-link/server-store.ts';
import { tell } from '../../session/session-store.ts';
import { useServer } from '../shell/use-stores.ts';
import styles from './agree.module.css';

interface ApprovalFormProps {
  readonly number: number | null;
  readonly isUnsaved: boolean;
  readonly open: {
    readonly errors: number;
    readonly unknowns: number;
    readonly requests: number;
    readonly isFresh: boolean;
  };
}

/** The decision on the version that stands, with what is open said beside the button. */
export function ApprovalForm({ number, isUnsaved, open }: ApprovalFormProps) {
  const isAllowed = useServer(mayApprove);
  const [note, setNote] = useState('');
  if (!isAllowed) return <p className={styles.soft}>Decisions are made by approvers; you read here.</p>;
  const left = [
    open.errors === 0 ? '' : `${open.errors} ${open.errors === 1 ? 'error' : 'errors'}`,
    open.unknowns === 0 ? '' : `${open.unknowns} unknown`,
    open.requests === 0 ? '' : `${open.requests} ${open.requests === 1 ? 'request' : 'requests'} not agreed`,
  ].filter((words) => words !== '');
  const decide = (decision: 'agreed' | 'not agreed'): void => {
    const { campaignId } = documentStore.getState();
    if (campaignId === null || number === null) return;
    api
      .approve(campaignId, number, { decision, note: note.trim() })
      .then(() => {
        serverStore.setState((was) => ({ approvalsSeen: was.approvalsSeen + 1 }));
        setNote('');
        tell(`Version ${number}: ${decision}`);
      })
      .catch((cause: unknown) => tell(`Not recorded: ${cause instanceof Error ? cause.message : String(cause)}`));
  };
  // What is open does not forbid a decision; it needs words on it.
  const needsNote = left.length > 0 && note.trim() === '';
  return (
    <form className={styles.decide} onSubmit={(event) => event.preventDefault()}>
      <label>
        Note {left.length === 0 ? '' : `(needed: ${left.join(', ')} still open)`}
        <textarea rows={2} maxLength={2000} value={note} onChange={(event) => setNote(event.target.value)} />
      </label>
      <div className={styles.buttons}>
        <button
          type="button"
          disabled={isUnsaved || number === null || needsNote || !open.isFresh}
          onClick={() => decide('agreed')}
        >
          Agreed: version {number ?? '–'}
        </button>
        <button
          type="button"
          disabled={isUnsaved || number === null || note.trim() === ''}
          onClick={() => decide('not agreed')}
        >
          Not agreed (say why)
        </button>
      </div>
    </form>
  );
}
