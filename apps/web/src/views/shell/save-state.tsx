import { formatUtcClock } from '@handrail/quantity/time';
import { hasUnsaved } from '../../document/document-store.ts';
import styles from './shell.module.css';
import { useDocument, useServer } from './use-stores.ts';

/** Where the work is: a version, a draft that is put by, or being saved. */
export function SaveState() {
  const isUnsaved = useDocument(hasUnsaved);
  const number = useDocument((state) => state.saved?.number ?? null);
  const saving = useServer((state) => state.saving);
  const words = useServer((state) => state.savingWords);
  const draftAtMs = useServer((state) => state.draftAtMs);
  const version = number === null ? 'no version yet' : `version ${number}`;
  const said =
    saving === 'running'
      ? 'saving'
      : saving === 'failed'
        ? `not saved: ${words}`
        : isUnsaved
          ? `${version}, changed since${draftAtMs === null ? '' : `; put by ${formatUtcClock(draftAtMs)} UTC`}`
          : version;
  return (
    <span className={styles.saving} data-testid="save-state" data-unsaved={String(isUnsaved)}>
      {said}
    </span>
  );
}
