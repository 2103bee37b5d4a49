/**
 * What goes from hand to hand holds people to an order by itself: a foot restraint is free when the other has left it, a tool when
 * the other has done, a loose piece is there when the other has brought it. Only such links are drawn; that a piece is *taken
 * away* from under somebody, and every state of fixed hardware, is for calls to keep in order, and for the race check to see.
 */
import { bodyValue } from '../replay/states/state-history.ts';
import type { Placed } from '../replay/replay-context.ts';
import { roleSpanS } from '../replay/replay-context.ts';
import type { NetworkDraft } from './network-draft.ts';
import { stepStartEvent } from './stint-events.ts';

interface Use {
  readonly placed: Placed;
  readonly who: string;
  readonly fromS: number;
  readonly toS: number;
  readonly start: number;
  readonly end: number;
}

export function handOverLinks(draft: NetworkDraft): void {
  restraints(draft);
  tools(draft);
  items(draft);
}

function restraints(draft: NetworkDraft): void {
  const uses = new Map<string, Use[]>();
  for (const placed of draft.placed) {
    placed.stint.roles.forEach((role, index) => {
      const who = placed.planned.assigned[index];
      if (role.restraint === null || who === undefined) return;
      const [fromS, toS] = roleSpanS(placed, role);
      const whole = role.toStep <= role.fromStep || placed.stint.steps.length === 0;
      const start = whole ? draft.boundary(placed, 0) : stepStartEvent(draft, placed, role.fromStep);
      const end = draft.boundary(placed, whole ? placed.steps : role.toStep);
      push(uses, role.restraint, { placed, who, fromS, toS, start, end });
    });
  }
  const { restraintEgressS, restraintIngressS } = draft.campaign.limits;
  const changeS = Math.ceil((restraintEgressS ?? 0) + (restraintIngressS ?? 0));
  inTurn(draft, uses, 'restraint', changeS);
}

function tools(draft: NetworkDraft): void {
  const uses = new Map<string, Use[]>();
  for (const placed of draft.placed) {
    for (const { tool, steps } of placed.effects?.tools ?? []) {
      if (steps.length === 0) continue;
      const [first, last] = [Math.min(...steps), Math.max(...steps) + 1];
      push(uses, tool, {
        placed,
        who: placed.planned.assigned[0] ?? '',
        fromS: draft.plannedBoundaryS(placed, first),
        toS: draft.plannedBoundaryS(placed, last),
        start: stepStartEvent(draft, placed, first),
        end: draft.boundary(placed, last),
      });
    }
  }
  inTurn(draft, uses, 'tool', 0);
}

/** Uses by different hands, one after the other as planned. */
function inTurn(
  draft: NetworkDraft,
  uses: ReadonlyMap<string, Use[]>,
  kind: 'restraint' | 'tool',
  leastS: number,
): void {
  for (const [id, list] of uses) {
    list.sort((a, b) => a.fromS - b.fromS || a.toS - b.toS);
    list.forEach((next, at) => {
      const before = list[at - 1];
      if (before === undefined || before.placed === next.placed || before.toS > next.fromS) return;
      if (before.who === next.who) return;
      const title = draft.context.hardware.get(id)?.title ?? id;
      const reason = `${title} passes from ${before.who} to ${next.who}: "${before.placed.stint.title}", then "${next.placed.stint.title}"`;
      draft.order(before.end, next.start, kind, reason, next.placed.stint.span, leastS);
    });
  }
}

/** A stint that needs a loose piece where another brings it cannot start before it is there: the last who brought it. */
function items(draft: NetworkDraft): void {
  const brings = new Map<string, { placed: Placed; end: number; endS: number; value: string }[]>();
  for (const placed of draft.placed) {
    for (const leave of placed.effects?.leaves ?? []) {
      if (draft.context.model.variables.get(leave.variable)?.about !== 'holder') continue;
      const mark = leave.step < 0 ? 0 : Math.min(leave.step + 1, placed.steps);
      const value = bodyValue(draft.context, leave.value, placed.planned.assigned);
      push(brings, leave.variable, {
        placed,
        end: draft.boundary(placed, mark),
        endS: draft.plannedBoundaryS(placed, mark),
        value,
      });
    }
  }
  for (const placed of draft.placed) {
    for (const need of placed.effects?.needs ?? []) {
      if (draft.context.model.variables.get(need.variable)?.about !== 'holder' || need.when === 'end') continue;
      const step = need.when === 'during' ? need.fromStep : 0;
      const fromS = draft.plannedBoundaryS(placed, step);
      const [before, last] = lastTwo(
        (brings.get(need.variable) ?? []).filter((one) => one.placed !== placed && one.endS <= fromS),
      );
      const allowed = new Set(need.allowed.map((value) => bodyValue(draft.context, value, placed.planned.assigned)));
      if (last === undefined || !allowed.has(last.value)) continue;
      // Where it would do as well before it was brought there, nothing holds anybody back.
      if (allowed.has(before?.value ?? draft.valueAtStart(need.variable))) continue;
      const to = stepStartEvent(draft, placed, step);
      if (draft.isShared(last.end, to)) continue;
      const item = need.variable.slice(0, -'.holder'.length);
      const title = draft.context.hardware.get(item)?.title ?? item;
      const reason = `"${placed.stint.title}" takes ${title} where "${last.placed.stint.title}" leaves it`;
      draft.order(last.end, to, 'item', reason, placed.stint.span);
    }
  }
}

function push<T>(lists: Map<string, T[]>, key: string, one: T): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [one]);
  else list.push(one);
}

function lastTwo<T extends { readonly endS: number; readonly placed: Placed }>(
  brings: readonly T[],
): [T | undefined, T | undefined] {
  const sorted = brings.toSorted((a, b) => a.endS - b.endS);
  const last = sorted.at(-1);
  return [sorted.findLast((one) => one.placed !== last?.placed), last];
}
