import type { Block, Compilation } from '../engine/compilation.ts';
import type { Point, State, StateNeed } from '../model/model.ts';
import { forbidCycles } from './sequence.ts';

interface Holder extends Block {
  readonly interval: number;
  readonly presence: number;
}

/**
 * A variable that is written and needed. Order literals keep writes apart from each other and from foreign needs; each need
 * has a supporter, the initial value or a writer before it, and every write of an unwanted value comes before the supporter
 * or after the need (causal links; threats are clauses over order literals).
 * Inferences `stretch`, `order`, `support`, `threat`, `cycle`.
 */
export function postState(c: State, index: number, at: Compilation): void {
  const { kernel } = at;
  const writers: Holder[] = c.writers.map(({ from, to }) => holder(at, [from], to));
  const needs: Holder[] = c.needs.map((need) => holder(at, needBegins(c, need, at), need.to));
  for (const { from, to } of [...c.writers, ...c.needs]) {
    kernel.postArc(at.point(from), at.point(to), 0, at.presences([from.interval]), index, 'stretch');
  }
  const all = [...writers, ...needs];
  const n = all.length;
  const before = new Int32Array(n * n).fill(-1);
  writers.forEach((writer, w) => {
    for (let x = w + 1; x < n; x++) {
      const other = all[x] as Holder;
      if (x >= writers.length && other.interval === writer.interval) continue;
      const literal = at.orderLiteral(writer, other);
      before[w * n + x] = literal;
      before[x * n + w] = literal ^ 1;
      at.noteOrderUse(literal, writer.presence, other.presence);
      postOrder(writer, other, literal);
      postOrder(other, writer, literal ^ 1);
    }
  });
  function postOrder(a: Holder, b: Holder, literal: number): void {
    const conditions = [...new Set([literal, a.presence, b.presence])].filter((l) => l >= 0);
    for (const from of b.from) kernel.postArc(at.point(a.to), at.point(from), 0, conditions, index, 'order');
  }
  forbidCycles(before, all, index, at);

  c.needs.forEach((need, y) => {
    const x = writers.length + y;
    const own = (all[x] as Holder).interval;
    const absent = not((all[x] as Holder).presence);
    const threats: number[] = [];
    const supporters: number[] = [];
    c.writers.forEach((writer, w) => {
      if ((all[w] as Holder).interval === own) return;
      (need.allowed.includes(writer.value) ? supporters : threats).push(w);
    });
    const isServedAtFirst = need.allowed.includes(c.initial);
    if (isServedAtFirst && threats.length === 0) return;
    const choices: number[] = [];
    /** After the supporter (if a writer) and before the need no threat comes. */
    const guard = (support: number, supporter: number) => {
      for (const t of threats) {
        const clear = supporter < 0 ? [] : [before[t * n + supporter] as number];
        kernel.postClause(
          [support ^ 1, ...not((all[t] as Holder).presence), ...clear, before[x * n + t] as number],
          index,
        );
      }
    };
    if (isServedAtFirst) {
      const support = at.newSupport(index, y, -1);
      choices.push(support);
      guard(support, -1);
    }
    for (const w of supporters) {
      const support = at.newSupport(index, y, w);
      choices.push(support);
      kernel.postClause([support ^ 1, before[w * n + x] as number], index);
      const { presence } = all[w] as Holder;
      if (presence >= 0) kernel.postClause([support ^ 1, presence], index);
      guard(support, w);
    }
    kernel.postClause([...absent, ...choices], index);
  });
}

function not(presence: number): number[] {
  return presence < 0 ? [] : [presence ^ 1];
}

function holder(at: Compilation, from: readonly Point[], to: Point): Holder {
  const { interval } = to;
  return {
    from,
    to,
    isPossiblyEmpty: from.every((point) => at.leastLength(point, to) <= 0),
    interval,
    presence: at.interval(interval).presence,
  };
}

/** Where a need begins: at its own `from`, or where an own write does, those that are not known to come later. */
function needBegins(c: State, need: StateNeed, at: Compilation): Point[] {
  let begins = [need.from];
  for (const { from } of c.writers) {
    if (from.interval !== need.from.interval) continue;
    if (begins.some((point) => at.leastLength(point, from) >= 0)) continue;
    begins = [...begins.filter((point) => at.leastLength(from, point) < 0), from];
  }
  return begins;
}
