import type { Block, Compilation } from '../engine/compilation.ts';
import type { Term } from '../engine/kernel.ts';
import { NO_OWNER } from '../engine/store.ts';
import { FORBIDDEN, type Sequence, type SequenceMember } from '../model/model.ts';
import { LinearPropagator } from '../propagators/linear.ts';
import { type OrderedMembers, SequenceGapsPropagator } from '../propagators/sequence-gaps.ts';
import { EnergyPropagator } from '../propagators/energy.ts';
import { RouteBoundPropagator } from '../propagators/route-bound.ts';
import { TransitionTotalPropagator } from '../propagators/transition-total.ts';

/**
 * Members one after another. An order literal per pair with an arc for each value, of the least gap that any chain of
 * members between them allows; direct transitions that are longer than that, and their total, by propagators.
 * Inferences `order`, `first`, `last`, `cycle`, `direct`, `total`, `load`, `route`, `energy`.
 */
export function postSequence(c: Sequence, index: number, at: Compilation): void {
  const { kernel } = at;
  const named = uniqueMembers(c, index, at);
  const n = named.length;
  const members = named.map((m) => at.interval(m.interval));
  const direct = new Int32Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      if (i === j) continue;
      const a = named[i] as SequenceMember;
      const b = named[j] as SequenceMember;
      direct[i * n + j] = Math.min(FORBIDDEN, c.transitions[a.endType * c.types + b.startType] as number);
    }
  }
  const least = leastGaps(
    direct,
    members.map(({ minDuration }) => minDuration),
  );
  const blocks = named.map(({ interval }) =>
    at.block({ interval, of: 'start', offset: 0 }, { interval, of: 'end', offset: 0 }),
  );
  const before = new Int32Array(n * n).fill(-1);
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      const literal = at.orderLiteral(blocks[i] as Block, blocks[j] as Block);
      before[i * n + j] = literal;
      before[j * n + i] = literal ^ 1;
      at.noteOrderUse(literal, members[i]?.presence as number, members[j]?.presence as number);
      postPair(i, j, literal);
      postPair(j, i, literal ^ 1);
    }
  }
  function postPair(i: number, j: number, literal: number): void {
    const a = members[i] as (typeof members)[number];
    const b = members[j] as (typeof members)[number];
    const conditions = [literal, a.presence, b.presence].filter((l) => l >= 0);
    const gap = least[i * n + j] as number;
    const isRefused = gap >= FORBIDDEN || isLastOf(i) || isFirstOf(j);
    if (isRefused)
      kernel.postClause(
        conditions.map((l) => l ^ 1),
        index,
      );
    else kernel.postArc(a.end, b.start, gap, conditions, index, 'order');
  }
  function isFirstOf(i: number): boolean {
    return (named[i] as SequenceMember).interval === c.first;
  }
  function isLastOf(i: number): boolean {
    return (named[i] as SequenceMember).interval === c.last;
  }
  forbidCycles(before, blocks, index, at);
  const seq = { members, before, direct, least };
  new SequenceGapsPropagator(kernel, seq, index);
  const sure = (id: number | null) =>
    named.findIndex(({ interval }) => interval === id && at.interval(interval).presence < 0);
  const first = sure(c.first);
  const last = sure(c.last);
  const isTimed = direct.some((gap) => gap > 0 && gap < FORBIDDEN);
  let total = c.transitionTotal === null ? null : at.term(c.transitionTotal);
  if (total === null && isTimed && n > 3 && first >= 0 && last >= 0)
    total = { variable: at.newTotal(index), offset: 0 };
  if (total !== null) new TransitionTotalPropagator(kernel, seq, total, first, last, index);
  if (total !== null && n > 3 && first >= 0 && last >= 0) {
    new RouteBoundPropagator(kernel, seq, total, first, last, index, () => at.isLogged);
  }
  if (n > 2 && at.looksAtEnergy) {
    new EnergyPropagator(
      kernel,
      members.map((member) => ({ ...member, demand: 1 })),
      1,
      index,
      () => at.isLogged,
    );
  }
  if (n > 3 && first >= 0 && last >= 0) postLoad(seq, first, last, total, index, at);
}

/** From the end of the first member to the start of the last there is room for all that comes between and for the ways. */
function postLoad(
  seq: OrderedMembers,
  first: number,
  last: number,
  total: Term | null,
  index: number,
  at: Compilation,
): void {
  const sides: number[] = [];
  const coefficients: number[] = [];
  let bound = 0;
  const add = (side: number, coefficient: number) => {
    sides.push(side);
    coefficients.push(coefficient);
  };
  seq.members.forEach(({ start, end, presence, minDuration }, i) => {
    if (i === first) {
      add(2 * end.variable, 1);
      bound -= end.offset;
    } else if (i === last) {
      add(2 * start.variable + 1, 1);
      bound += start.offset;
    } else if (minDuration > 0) {
      if (presence < 0) bound -= minDuration;
      else {
        // A literal that is "v is 0" counts as 1 - v.
        add(presence, minDuration);
        if ((presence & 1) === 1) bound -= minDuration;
      }
    }
  });
  if (total !== null) {
    add(2 * total.variable, 1);
    bound -= total.offset;
  }
  if (new Set(sides.map((side) => side >> 1)).size < sides.length) return;
  new LinearPropagator(at.kernel, sides, coefficients, bound, [], NO_OWNER, index, 'load');
}

/** An interval named twice would have to come before itself, so that it can not be present. */
function uniqueMembers(c: Sequence, index: number, at: Compilation): SequenceMember[] {
  const seen = new Map<number, SequenceMember>();
  for (const member of c.members) {
    if (!seen.has(member.interval)) seen.set(member.interval, member);
    else {
      const { presence, start, end } = at.interval(member.interval);
      at.kernel.postArc(end, start, 0, presence < 0 ? [] : [presence], index, 'order');
    }
  }
  return [...seen.values()];
}

/** Shortest way between the end of one member and the start of another through any members. */
function leastGaps(direct: Int32Array, durations: readonly number[]): Int32Array {
  const n = durations.length;
  const least = Int32Array.from(direct);
  for (let k = 0; k < n; k++) {
    for (let i = 0; i < n; i++) {
      const first = least[i * n + k] as number;
      if (i === k || first >= FORBIDDEN) continue;
      for (let j = 0; j < n; j++) {
        if (j === i || j === k || (least[k * n + j] as number) >= FORBIDDEN) continue;
        const way = first + (durations[k] as number) + (least[k * n + j] as number);
        if (way < (least[i * n + j] as number)) least[i * n + j] = way;
      }
    }
  }
  return least;
}

/** Stretches without length may fall on one instant, where bounds do not keep their order literals from going in a circle. */
export function forbidCycles(before: Int32Array, blocks: readonly Block[], index: number, at: Compilation): void {
  const n = blocks.length;
  const empty = blocks.flatMap(({ isPossiblyEmpty }, i) => (isPossiblyEmpty ? [i] : []));
  for (const i of empty) {
    for (const j of empty) {
      for (const k of empty) {
        if (i >= j || i >= k || j === k) continue;
        const circle = [before[i * n + j], before[j * n + k], before[k * n + i]] as number[];
        if (circle.every((l) => l >= 0))
          at.kernel.postClause(
            circle.map((l) => l ^ 1),
            index,
          );
      }
    }
  }
}
