/** A waiver is a sentence of the text: which rule, for what, why, who says so, until when. */
import { insertNode } from '@handrail/eva/campaign/edit/edit-document';
import { writeName, writeQuoted } from '@handrail/eva/campaign/edit/write-value';
import type { Finding } from '@handrail/eva/finding/finding';
import { useState } from 'react';
import { change } from '../../document/document-store.ts';
import { editableText } from '../../document/editable-text.ts';
import { tell } from '../../session/session-store.ts';
import { TextField } from '../shell/text-field.tsx';
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
    const file = editableText();
    if (file === null || of === null) return;
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
      <TextField label="Why it may stand" words={reason} onWords={setReason} />
      <TextField label="Who says so" words={by} onWords={setBy} />
      <TextField label="Until (UTC)" words={until} onWords={setUntil} type="datetime-local" />
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
