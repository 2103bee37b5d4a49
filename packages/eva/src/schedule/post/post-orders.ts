/** Who comes before whom by the text: written order, lags after other work, joins, pins, gates. */
import { endOf, startOf } from '@handrail/solver/model/build-model';
import type { IntervalId, Point } from '@handrail/solver/model/model';
import type { Role, Stint, Task } from '../../campaign/campaign.ts';
import type { EvaDraft, StintDraft } from '../eva-draft.ts';
import { cellsDown, cellsUp } from '../grid.ts';
import { roleRange } from '../team-mode.ts';

export function postOrders(draft: EvaDraft): void {
  for (const task of draft.problem.tasks) {
    if (!draft.tasks.has(task.id)) continue;
    if (task.order === 'written') postWrittenOrder(draft, task);
    for (const stint of task.stints) postAfter(draft, stint);
    for (const join of task.joins) {
      const releases = draft.stints.get(join.releases);
      const waits = draft.stints.get(join.waits);
      if (releases === undefined || waits === undefined) continue;
      draft.before(endOf(releases.master), startOf(waits.master), 0, `join:${join.id}`);
    }
  }
  postPins(draft);
  postGates(draft);
}

/** Stints of the task that share a named body keep the order of the text, each body for the steps it takes part in. */
function postWrittenOrder(draft: EvaDraft, task: Task): void {
  const last = new Map<string, Point>();
  for (const stint of task.stints) {
    const found = draft.stints.get(stint.key);
    if (found === undefined) continue;
    for (const role of stint.roles) {
      const body = role.candidates[0];
      if (body === undefined || role.candidates.length !== 1) continue;
      const [start, end] = rolePoints(draft, found, role);
      const before = last.get(body);
      if (before !== undefined) draft.before(before, start, 0, `order:${task.id}`);
      last.set(body, end);
    }
  }
}

/** Start and end of a role. Where modes differ in length, of the whole stint. */
function rolePoints(draft: EvaDraft, found: StintDraft, role: Role): readonly [Point, Point] {
  const form = found.uniform ? draft.forms(found)[0] : undefined;
  if (form === undefined) return [startOf(found.master), endOf(found.master)];
  const [from, to] = roleRange(found.stint, role);
  return [draft.boundary(form, from), draft.boundary(form, to)];
}

function postAfter(draft: EvaDraft, stint: Stint): void {
  const later = draft.stints.get(stint.key);
  if (later === undefined) return;
  for (const { stint: key, leastS, mostS } of stint.after) {
    const earlier = draft.stints.get(key);
    if (earlier === undefined) continue;
    const tag = `after:${stint.key}`;
    draft.before(endOf(earlier.master), startOf(later.master), cellsUp(leastS), tag);
    if (mostS !== null) draft.before(startOf(later.master), endOf(earlier.master), -cellsDown(mostS), tag);
  }
}

/** What has begun is past every pin and gate. */
function hasBegun(draft: EvaDraft, stint: string): boolean {
  return draft.problem.past?.begun.some((planned) => planned.stint === stint) === true;
}

function postPins(draft: EvaDraft): void {
  for (const pin of draft.problem.pins) {
    if (pin.kind === 'start') {
      const stint = draft.stints.get(pin.stint);
      if (stint === undefined || hasBegun(draft, pin.stint)) continue;
      const cell = cellsDown(pin.petS);
      startAtMost(draft, stint.master, cell, `pin:start ${pin.stint}`);
      startAtLeast(draft, stint.master, cell, `pin:start ${pin.stint}`);
    } else if (pin.kind === 'order') {
      const first = draft.stints.get(pin.first);
      const then = draft.stints.get(pin.then);
      if (first === undefined || then === undefined || hasBegun(draft, pin.then)) continue;
      draft.before(endOf(first.master), startOf(then.master), 0, `pin:order ${pin.first} ${pin.then}`);
    }
  }
}

/** Work behind a gate starts no later than the gate may be called. */
function postGates(draft: EvaDraft): void {
  for (const gate of draft.problem.campaign.gates) {
    const stint = draft.stints.get(gate.before);
    if (stint !== undefined && gate.latestPetS !== null && !hasBegun(draft, gate.before)) {
      startAtMost(draft, stint.master, cellsDown(gate.latestPetS), `gate:${gate.id}`);
    }
  }
}

export function startAtMost(draft: EvaDraft, interval: IntervalId, cell: number, tag: string): void {
  bound(draft, interval, 1, cell, tag);
}

export function startAtLeast(draft: EvaDraft, interval: IntervalId, cell: number, tag: string): void {
  bound(draft, interval, -1, -cell, tag);
}

function bound(draft: EvaDraft, interval: IntervalId, coefficient: number, limit: number, tag: string): void {
  const { start, presence } = draft.builder.intervalAt(interval);
  draft.post({
    kind: 'linear',
    expression: { terms: [{ coefficient, variable: start }], constant: 0 },
    bound: limit,
    when: presence === null ? [] : [presence],
    tag,
  });
}
