import type { IntervalId, Model, Precedence } from '../model/model.ts';

/** Beyond, the table of pairs costs more than it saves. */
const MOST_INTERVALS = 500;

/** Which intervals come after which in every solution, by chains of lags that always hold. */
export interface Following {
  comesBefore(i: IntervalId, j: IntervalId): boolean;
}

/**
 * Chains of unconditional precedences "ends before the other begins" between intervals that are always there: with one of them
 * missing a chain would say nothing. null: the model has none, or too many intervals.
 */
export function followingOf(model: Model): Following | null {
  const n = model.intervals.length;
  if (n > MOST_INTERVALS) return null;
  const next: number[][] = Array.from({ length: n }, () => []);
  let arcs = 0;
  for (const c of model.constraints) {
    if (c.kind !== 'precedence' || !ordersWhole(c, model)) continue;
    next[c.from.interval]?.push(c.to.interval);
    arcs++;
  }
  if (arcs === 0) return null;
  const after = new Uint8Array(n * n);
  const stack: number[] = [];
  for (let i = 0; i < n; i++) {
    stack.push(i);
    for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
      for (const j of next[at] as number[]) {
        if (after[i * n + j] === 1) continue;
        after[i * n + j] = 1;
        stack.push(j);
      }
    }
  }
  return { comesBefore: (i, j) => after[i * n + j] === 1 };
}

/** Whether the one interval, whole, comes before the other, both always there. */
function ordersWhole({ from, to, lag, when }: Precedence, { intervals }: Model): boolean {
  const first = intervals[from.interval];
  if (when.length > 0 || first?.presence !== null || intervals[to.interval]?.presence !== null) return false;
  if (to.of !== 'start') return false;
  const fromEnd = from.of === 'end' ? 0 : typeof first.duration === 'number' ? first.duration : null;
  return fromEnd !== null && lag + from.offset - to.offset >= fromEnd;
}
