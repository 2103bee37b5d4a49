/**
 * Requests: one hold from the first to the last use in the EVA, verified before the first and cleared after the last. Where a
 * longest hold is stated and several tasks use the request, either one hold serves all, or each task has its own and between
 * two holds there is time to clear, set and verify again. Asking may begin before PET 0.
 */
import { endOf, not, startOf } from '@handrail/solver/model/build-model';
import type { IntervalId, Literal } from '@handrail/solver/model/model';
import type { Request, Stint } from '../../campaign/campaign.ts';
import type { EvaDraft } from '../eva-draft.ts';
import { effectsOf, type EvaProblem } from '../eva-problem.ts';
import { cellsDown, cellsUp } from '../grid.ts';
import { stepCount } from '../team-mode.ts';
import { windowCells } from './post-windows.ts';

interface Use {
  readonly task: string;
  readonly interval: IntervalId;
}

export function postRequests(draft: EvaDraft): void {
  for (const request of draft.problem.campaign.requests) {
    const uses = usesOf(draft, request.id);
    if (uses.length > 0) postRequest(draft, request, uses);
  }
}

/** Step ranges of a stint in which a request must be in force. */
export function requestRanges(problem: EvaProblem, stint: Stint, request: string): (readonly [number, number])[] {
  const effects = effectsOf(problem, stint);
  const ranges: (readonly [number, number])[] = [];
  if (stint.under.includes(request)) ranges.push([0, stepCount(stint)]);
  for (const control of effects?.controls ?? []) {
    if (control.request === request) ranges.push([control.fromStep, control.toStep]);
  }
  for (const need of effects?.needs ?? []) {
    const variable = problem.hardware.variables.get(need.variable);
    if (variable?.about !== 'request' || variable.of !== request || need.allowed.includes('clear')) continue;
    ranges.push(need.when === 'during' ? [need.fromStep, need.toStep] : [0, stepCount(stint)]);
  }
  return ranges;
}

function usesOf(draft: EvaDraft, request: string): Use[] {
  const uses = new Map<IntervalId, Use>();
  for (const stint of draft.stints.values()) {
    const ranges = requestRanges(draft.problem, stint.stint, request);
    if (ranges.length === 0) continue;
    const from = Math.min(...ranges.map((range) => range[0]));
    const to = Math.max(...ranges.map((range) => range[1]));
    for (const form of draft.forms(stint)) {
      const interval = draft.range(form, from, Math.max(to, from + 1));
      uses.set(interval, { task: stint.task.id, interval });
    }
  }
  return [...uses.values()];
}

function postRequest(draft: EvaDraft, request: Request, uses: readonly Use[]): void {
  const tag = `request:${request.id}`;
  const all = cover(draft, `request ${request.id}`, uses);
  const tasks = [...new Set(uses.map(({ task }) => task))];
  if (request.longestHoldS === null || tasks.length < 2) {
    limitHold(draft, request, all, [], tag);
    draft.requestCovers.push({ request: request.id, cover: all, inForce: [] });
    return;
  }
  const together = draft.builder.boolean(`request ${request.id} held once`);
  limitHold(draft, request, all, [together], tag);
  draft.requestCovers.push({ request: request.id, cover: all, inForce: [together] });
  const covers = tasks.map((task) =>
    cover(
      draft,
      `request ${request.id} ${task}`,
      uses.filter((use) => use.task === task),
    ),
  );
  const apart = not(together);
  for (const each of covers) {
    limitHold(draft, request, each, [apart], tag);
    draft.requestCovers.push({ request: request.id, cover: each, inForce: [apart] });
  }
  const again = cellsUp(request.clearS) + cellsUp(request.setLeadS) + cellsUp(request.verifyS);
  covers.forEach((a, i) => {
    for (const b of covers.slice(i + 1)) {
      const first = draft.builder.boolean(`request ${request.id} ${a} before ${b}`);
      draft.before(endOf(a), startOf(b), again, tag, [apart, first]);
      draft.before(endOf(b), startOf(a), again, tag, [apart, not(first)]);
    }
  });
}

function cover(draft: EvaDraft, name: string, uses: readonly Use[]): IntervalId {
  const [only] = uses;
  if (only !== undefined && uses.length === 1) return only.interval;
  const { builder } = draft;
  const id = builder.interval(name, { min: 1, max: builder.horizon }, { presence: builder.boolean(name) });
  builder.post({ kind: 'span', cover: id, members: uses.map(({ interval }) => interval), tag: null });
  return id;
}

/** The hold counts from the start of verifying to the end of clearing: the longer reading of "held". */
function limitHold(draft: EvaDraft, request: Request, id: IntervalId, when: readonly Literal[], tag: string): void {
  const verify = cellsUp(request.verifyS);
  const clear = cellsUp(request.clearS);
  if (request.longestHoldS !== null) {
    draft.before(endOf(id), startOf(id), verify + clear - cellsDown(request.longestHoldS), tag, when);
  }
  const set = draft.problem.campaign.windows.find((window) => window.id === request.window);
  if (set === undefined) return;
  draft.post({
    kind: 'windows',
    mode: 'inside',
    from: startOf(id),
    to: endOf(id),
    windows: windowCells(draft.problem, set, 'inside', { before: verify, after: clear }),
    when,
    tag,
  });
}
