/**
 * Stints that wait for each other in a circle, through `after` and joins. Pins are left out: they are tried by hand, and the
 * planner tells which of them collide.
 */
import type { Task } from '../campaign.ts';
import type { Span } from '../span.ts';
import type { ReadContext } from './read-context.ts';

interface Tie {
  readonly to: string;
  readonly span: Span;
}

export function reportOrderCircles(tasks: readonly Task[], context: ReadContext): void {
  const ties = new Map<string, Tie[]>();
  const tie = (from: string, to: string, span: Span): void => {
    const list = ties.get(from);
    if (list === undefined) ties.set(from, [{ to, span }]);
    else list.push({ to, span });
  };
  for (const task of tasks) {
    for (const stint of task.stints) for (const after of stint.after) tie(after.stint, stint.key, after.span);
    for (const join of task.joins) if (join.releases !== join.waits) tie(join.releases, join.waits, join.span);
  }
  // Depth first, without recursion: a tie back to a stint that is still open closes a circle.
  const state = new Map<string, 'open' | 'done'>();
  for (const start of ties.keys()) {
    if (state.has(start)) continue;
    const way: { readonly stint: string; next: number }[] = [{ stint: start, next: 0 }];
    state.set(start, 'open');
    while (way.length > 0) {
      const last = way.at(-1) as { readonly stint: string; next: number };
      const one = ties.get(last.stint)?.[last.next++];
      if (one === undefined) {
        state.set(last.stint, 'done');
        way.pop();
      } else if (state.get(one.to) === 'open') {
        const circle = way.slice(way.findIndex((step) => step.stint === one.to)).map((step) => step.stint);
        const shown = circle.length > 6 ? [...circle.slice(0, 5), '…'] : circle;
        context.problems.add(
          'circle',
          one.span,
          circle.length === 1
            ? `"${one.to}" waits for itself`
            : `these stints wait for each other: ${[...shown, circle[0]].join(', then ')}`,
          { expected: 'an order that begins somewhere' },
        );
      } else if (!state.has(one.to)) {
        state.set(one.to, 'open');
        way.push({ stint: one.to, next: 0 });
      }
    }
  }
}
