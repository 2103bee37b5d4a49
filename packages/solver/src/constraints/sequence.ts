import type { Block, Compilation } from '../engine/compilation.ts';
import { FORBIDDEN, type Sequence, type SequenceMember } from '../model/model.ts';
import { SequenceGapsPropagator } from '../propagators/sequence-gaps.ts';
import { TransitionTotalPropagator } from '../propagators/transition-total.ts';

/**
 * Members one after another. An order literal per pair with an arc for each value, of the least gap that any chain of
 * members between them allows; direct transitions that are longer than that, and their total, by propagators.
 * Inferences `order`, `first`, `last`, `cycle`, `direct`, `total`.
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
    if (isRefused) kernel.postClause(conditions.map((l) => l ^ 1), index);
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
  if (c.transitionTotal !== null) {
    const sure = (id: number | null) =>
      named.findIndex(({ interval }) => interval === id && at.interval(interval).presence < 0);
    new TransitionTotalPropagator(kernel, seq, at.term(c.transitionTotal), sure(c.first), sure(c.last), index);
  }
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
        if (circle.every((l) => l >= 0)) at.kernel.postClause(circle.map((l) => l ^ 1), index);
      }
    }
  }
}
