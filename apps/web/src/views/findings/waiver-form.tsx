/** A waiver is a sentence of the text: which rule, for what, why, who says so, until when. */
import { insertNode } from '@handrail/eva/campaign/edit/edit-document';
import { writeName, writeQuoted } from '@handrail/eva/campaign/edit/write-value';
import { ProblemList } from '@handrail/eva/campaign/problem/problem';
import { parseFile } from '@handrail/eva/campaign/text/parse-file';
import type { Finding } from '@handrail/eva/finding/finding';
import { useState } from 'react';
import { change, documentStore } from '../../document/document-store.ts';
import { FILE_NAME } from '../../document/working-copy.ts';
import { tell } from '../../session/session-store.ts';
import { useServer } from '../shell/use-stores.ts';
import styles from './findings.module.css';

const WEEK_MS = 7 * 86_400_000;

export function WaiverForm({ finding, onDone }: { readonly finding: Finding; readonly onDone: () => void }) {
  const user = useServer((state) => state.session?.user?.name ?? '');
  const [reason, setReason] = useState('');
  const [by, setBy] = useState(user);
  const [until, setUntil] = useState(new Date(Date.now() + WEEK_MS).toISOString().slice(0, 16));
  const of = finding.where.stint ?? finding.where.eva ?? finding.where.person;
  const endMs = Date.parse(`${until}:00Z`);
  const isWhole = reason.trim() !== '' && by.trim() !== '' && endMs > Date.now() && of !== null;
  const write = (): void => {
    const file = parseFile(FILE_NAME, documentStore.getState().copy.text, new ProblemList());
    if (file.document === null || of === null) {
      tell('The text has a syntax error: mend it first');
      return;
    }
    const node = `waive ${writeQuoted(finding.rule)} of=${writeName(of)} reason=${writeQuoted(reason.trim())} by=${writeQuoted(by.trim())} until=${writeQuoted(new Date(endMs).toISOString().replace('.000', ''))}`;
    change('Write a waiver', { edits: [insertNode(file, node, 'end')] });
    tell(`Waived until ${until} UTC: ${finding.title}`);
    onDone();
  };
  return (
    <form
      className={styles.waiver}
      onSubmit={(event) => {
        event.preventDefault();
        if (isWhole) write();
      }}
    >
      <label>
        Why it may stand
        <input value={reason} onChange={(event) => setReason(event.target.value)} required />
      </label>
      <label>
        Who says so
        <input value={by} onChange={(event) => setBy(event.target.value)} required />
      </label>
      <label>
        Until (UTC)
        <input type="datetime-local" value={until} onChange={(event) => setUntil(event.target.value)} required />
      </label>
      <div className={styles.jumps}>
        <button type="submit" disabled={!isWhole}>
          Write the waiver for {of ?? 'nothing that can be named'}
        </button>
        <button type="button" onClick={onDone}>
          Leave it
        </button>
      </div>
    </form>
  );
}
