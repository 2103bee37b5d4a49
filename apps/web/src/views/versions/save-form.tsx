import { useEffect, useRef, useState } from 'react';
import { hasUnsaved } from '../../document/document-store.ts';
import { saveVersion } from '../../server-link/open-campaign.ts';
import { mayWrite } from '../../server-link/server-store.ts';
import { look } from '../../session/session-store.ts';
import { useDocument, useServer, useSession } from '../shell/use-stores.ts';
import styles from './versions.module.css';

/** A version has a message: one sentence on what it is for, which the others read. */
export function SaveForm() {
  const isUnsaved = useDocument(hasUnsaved);
  const isAllowed = useServer(mayWrite);
  const isSaving = useServer((state) => state.saving === 'running');
  const conflict = useServer((state) => state.conflict);
  const isAsked = useSession((state) => state.page === 'save');
  const past = useDocument((state) => state.past);
  const field = useRef<HTMLInputElement>(null);
  const [message, setMessage] = useState('');
  useEffect(() => {
    if (isAsked) field.current?.focus();
  }, [isAsked]);
  if (!isAllowed) return <p className={styles.soft}>You read here: versions are written by planners.</p>;
  if (!isUnsaved) return <p className={styles.soft}>Nothing has changed since this version.</p>;
  const steps = [...new Set(past.map(({ label }) => label))].slice(-4);
  return (
    <form
      className={styles.save}
      onSubmit={(event) => {
        event.preventDefault();
        if (message.trim() === '') {
          field.current?.focus();
          return;
        }
        void saveVersion(message.trim()).then((isSaved) => {
          if (!isSaved) return;
          setMessage('');
          look({ page: null });
        });
      }}
    >
      <label>
        What is this version for?
        <input
          ref={field}
          value={message}
          maxLength={500}
          required
          placeholder={steps.length === 0 ? '' : steps.join(', ')}
          onChange={(event) => setMessage(event.target.value)}
        />
      </label>
      <button type="submit" disabled={isSaving || conflict !== null} className={styles.first}>
        Save as a version
      </button>
      {conflict === null ? null : <p>Choose between both below first.</p>}
    </form>
  );
}
