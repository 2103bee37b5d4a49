/** The campaign text, with what is wrong beside it. The editor is fetched when it is first asked for. */
import type { EditorView } from '@codemirror/view';
import { useEffect, useRef } from 'react';
import { look } from '../../session/session-store.ts';
import { useDerived, useDocument, useSession } from '../shell/use-stores.ts';
import { goToLine, makeEditor } from './make-editor.ts';
import styles from './text-view.module.css';

export default function TextView() {
  const place = useRef<HTMLDivElement>(null);
  const editor = useRef<EditorView>(null);
  const line = useSession((state) => state.line);
  const campaignId = useDocument((state) => state.campaignId);
  useEffect(() => {
    if (place.current === null) return undefined;
    const made = makeEditor(place.current);
    editor.current = made.view;
    const asked = line;
    if (asked === null) made.view.focus();
    return () => {
      editor.current = null;
      made.close();
    };
    // A line that is asked for later is gone to below; another campaign is another editor.
  }, [campaignId]);
  useEffect(() => {
    if (line !== null && editor.current !== null) goToLine(editor.current, line);
  }, [line, campaignId]);
  return (
    <div className={styles.view}>
      <div ref={place} className={styles.editor} data-testid="text-editor" />
      <Beside
        onGo={(to) => {
          look({ line: to });
          if (editor.current !== null) goToLine(editor.current, to);
        }}
      />
    </div>
  );
}

function Beside({ onGo }: { readonly onGo: (line: number) => void }) {
  const opening = useDerived((state) => state.opening);
  const findings = useDerived((state) => state.judged.value?.findings);
  const revision = useDocument((state) => state.revision);
  const problems = opening.value?.problems ?? [];
  const ofPlan = (findings ?? []).filter(
    ({ where, waiver, severity }) => where.span !== null && waiver === null && severity !== 'note',
  );
  const isStale = opening.revision !== revision;
  return (
    <section className={styles.beside} aria-label="What is wrong in the text" tabIndex={0}>
      <h2>
        {problems.length === 0
          ? 'The text reads without a problem'
          : `${problems.length} ${problems.length === 1 ? 'problem' : 'problems'} in the text`}
      </h2>
      <p className={styles.soft} role="status">
        {isStale ? 'being read again' : (opening.value?.levelSentence ?? '')}
      </p>
      <ul>
        {problems.map(({ code, span, what, severity }) => (
          <li key={`${code}${span.line}:${span.column}${what}`}>
            <button type="button" className={styles.row} data-severity={severity} onClick={() => onGo(span.line)}>
              <b>{span.line}</b>
              <span>
                {severity}: {what}
              </span>
            </button>
          </li>
        ))}
      </ul>
      {ofPlan.length === 0 ? null : <h2>Findings on the plan in hand</h2>}
      <ul>
        {ofPlan.map(({ rule, severity, title, where }, index) => (
          <li key={`${rule}${where.stint ?? ''}${index}`}>
            <button
              type="button"
              className={styles.row}
              data-severity={severity}
              onClick={() => onGo(where.span?.line ?? 1)}
            >
              <b>{where.span?.line}</b>
              <span>
                {severity}: {title}
              </span>
            </button>
          </li>
        ))}
      </ul>
      <details className={styles.soft}>
        <summary>How the text works</summary>
        <p>
          One sentence a line: a node, its values, its properties, inner nodes in braces. Ctrl+Space says what may come
          next. F8 goes to the next problem, Ctrl+F finds. Esc, then Tab leaves the editor.
        </p>
        <button type="button" onClick={() => look({ view: 'help', page: 'text' })}>
          Reference of all nodes
        </button>
      </details>
    </section>
  );
}
