/** A number that can say where it comes from: by a click, by Enter, or by the key of "why" wherever the focus is. */
import type { ReactNode } from 'react';
import { look } from '../../session/session-store.ts';
import styles from './why.module.css';

interface WhyProps {
  /** What the number is: "way home of EV1 at 2:10". */
  readonly of: string;
  /** The sum, line by line, so that it can be redone by hand. */
  readonly sum: readonly string[];
  /** Line of the text that it comes from; absent: from several. */
  readonly line?: number | undefined;
  readonly children: ReactNode;
}

export function Why({ of, sum, line, children }: WhyProps) {
  return (
    <button
      type="button"
      className={styles.number}
      data-why=""
      title={`Why: ${of} (Y)`}
      onClick={() => look({ why: { of, sum, line: line ?? null } })}
    >
      {children}
    </button>
  );
}
