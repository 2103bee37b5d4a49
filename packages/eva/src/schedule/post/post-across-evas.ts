/**
 * Orders that reach across EVAs: where the first of two was flown before, the lag runs from then; where it could still fly
 * later, the second does not fly without it, so that the order cannot be turned round.
 */
import { not } from '@handrail/solver/model/build-model';
import type { Stint } from '../../campaign/campaign.ts';
import type { EvaDraft } from '../eva-draft.ts';
import { cellsDown, cellsUp } from '../grid.ts';
import { startAtLeast, startAtMost } from './post-orders.ts';

interface Order {
  readonly first: string;
  readonly second: string;
  readonly leastS: number;
  readonly mostS: number | null;
  readonly tag: string;
}

export function postAcrossEvas(draft: EvaDraft): void {
  const { campaign, flown, mayFlyLater } = draft.problem;
  const taskOf = new Map(campaign.tasks.flatMap((task) => task.stints.map(({ key }) => [key, task.id] as const)));
  for (const order of ordersOf(draft)) {
    const later = draft.stints.get(order.second);
    if (later === undefined) continue;
    const endMs = flown.get(order.first);
    if (endMs !== undefined) postFlown(draft, order, endMs);
    else if (mayFlyLater.has(taskOf.get(order.first) ?? '')) {
      const first = draft.stints.get(order.first);
      const literals = first === undefined ? [not(later.presence)] : [not(later.presence), first.presence];
      draft.post({ kind: 'clause', literals, tag: order.tag });
    }
  }
}

function* ordersOf({ problem }: EvaDraft): Generator<Order> {
  for (const task of problem.tasks) {
    for (const stint of task.stints) yield* lagsOf(stint);
    for (const { id, releases, waits } of task.joins) {
      yield { first: releases, second: waits, leastS: 0, mostS: null, tag: `join:${id}` };
    }
  }
  for (const pin of problem.pins) {
    if (pin.kind !== 'order') continue;
    yield { first: pin.first, second: pin.then, leastS: 0, mostS: null, tag: `pin:order ${pin.first} ${pin.then}` };
  }
}

function* lagsOf(stint: Stint): Generator<Order> {
  for (const { stint: first, leastS, mostS } of stint.after) {
    yield { first, second: stint.key, leastS, mostS, tag: `after:${stint.key}` };
  }
}

function postFlown(draft: EvaDraft, { second, leastS, mostS, tag }: Order, endMs: number): void {
  const later = draft.stints.get(second);
  if (later === undefined) return;
  const endS = (endMs - draft.problem.eva.egressUtcMs) / 1000;
  const earliest = cellsUp(endS + leastS);
  if (earliest > 0) startAtLeast(draft, later.master, earliest, tag);
  if (mostS === null) return;
  const latest = cellsDown(endS + mostS);
  if (latest < 0) draft.post({ kind: 'clause', literals: [not(later.presence)], tag });
  else startAtMost(draft, later.master, latest, tag);
}
