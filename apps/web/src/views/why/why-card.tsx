/** The sum behind a number, beside the work and in nobody's way. It stays until it is closed or another is asked for. */
import { useEffect, useRef } from 'react';
import { look } from '../../session/session-store.ts';
import { useSession } from '../shell/use-stores.ts';
import styles from './why.module.css';

export function WhyCard() {
  const why = useSession((state) => state.why);
  const card = useRef<HTMLElement>(null);
  const from = useRef<Element | null>(null);
  useEffect(() => {
    if (why === null) {
      if (from.current instanceof HTMLElement) from.current.focus();
      from.current = null;
      return;
    }
    if (from.current === null) from.current = document.activeElement;
    card.current?.focus();
  }, [why]);
  if (why === null) return null;
  return (
    <aside
      ref={card}
      className={styles.card}
      tabIndex={-1}
      aria-label={`Why: ${why.of}`}
      data-testid="why"
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        look({ why: null });
      }}
    >
      <h2>{why.of}</h2>
      <ol>
        {why.sum.map((words, index) => (
          <li key={`${index}${words}`}>{words}</li>
        ))}
      </ol>
      <div className={styles.buttons}>
        {why.line === null ? null : (
          <button type="button" onClick={() => look({ view: 'text', line: why.line, why: null })}>
            line {why.line} of the text
          </button>
        )}
        <button type="button" onClick={() => look({ why: null })}>
          Close
        </button>
      </div>
    </aside>
  );
}
