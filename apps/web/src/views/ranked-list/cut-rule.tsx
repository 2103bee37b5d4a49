/**
 * The line below which everything is left out: drawn up and down with the pointer, or with the arrow keys while it has the
 * focus. It moves in the list at once; the text is changed when it is let go.
 */
import type { Campaign, Task } from '@handrail/eva/campaign/campaign';
import { useRef, useState } from 'react';
import { moveCut } from './move-cut.ts';
import styles from './ranked-list.module.css';

interface CutRuleProps {
  readonly campaign: Campaign;
  readonly tasks: readonly Task[];
  /** Index of the first task below it. */
  readonly at: number;
  /** Where it would stand if let go now. */
  readonly onHover: (at: number | null) => void;
}

export function CutRule({ campaign, tasks, at, onHover }: CutRuleProps) {
  const rule = useRef<HTMLDivElement>(null);
  const over = useRef<number | null>(null);
  const [isHeld, setHeld] = useState(false);
  const go = (to: number): void => {
    const bound = Math.min(tasks.length, Math.max(0, to));
    if (bound !== at) moveCut(campaign, tasks, bound);
  };
  const below = tasks.length - at;
  return (
    <div
      ref={rule}
      role="slider"
      tabIndex={0}
      className={styles.cut}
      data-held={String(isHeld)}
      data-testid="cut-rule"
      aria-orientation="vertical"
      aria-label="Cut rule"
      aria-valuemin={0}
      aria-valuemax={tasks.length}
      aria-valuenow={at}
      aria-valuetext={below === 0 ? 'below the last: nothing is cut' : `above ${tasks[at]?.title ?? ''}: ${below} cut`}
      onKeyDown={(event) => {
        const to = { ArrowUp: at - 1, ArrowDown: at + 1, Home: 0, End: tasks.length, PageUp: at - 5, PageDown: at + 5 }[
          event.key
        ];
        if (to === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
        event.preventDefault();
        event.stopPropagation();
        go(to);
        // The rule is drawn in another place of the list: the focus goes along.
        requestAnimationFrame(() => document.querySelector<HTMLElement>('[data-testid="cut-rule"]')?.focus());
      }}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        setHeld(true);
      }}
      onPointerMove={(event) => {
        if (!isHeld) return;
        over.current = indexUnder(rule.current, event.clientY);
        onHover(over.current);
      }}
      onPointerUp={() => {
        setHeld(false);
        onHover(null);
        if (over.current !== null) go(over.current);
        over.current = null;
      }}
      onPointerCancel={() => {
        setHeld(false);
        onHover(null);
        over.current = null;
      }}
    >
      <span>{below === 0 ? 'cut rule: nothing is cut' : `cut rule: ${below} below`}</span>
      <span aria-hidden="true" className={styles.grip}>
        ↕
      </span>
    </div>
  );
}

/** How many rows have their middle above this height. */
function indexUnder(rule: HTMLElement | null, y: number): number {
  const rows = rule?.closest('section')?.querySelectorAll('[data-task]') ?? [];
  return [...rows].filter((row) => {
    const box = row.getBoundingClientRect();
    return box.top + box.height / 2 < y;
  }).length;
}
