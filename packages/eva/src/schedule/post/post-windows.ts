/** Uses of windows: the stretch of the stint lies within one interval, or meets none; wishes are left to the findings. */
import { not } from '@handrail/solver/model/build-model';
import type { WindowSet, WindowUse } from '../../campaign/campaign.ts';
import type { EvaDraft, StintDraft, StintForm } from '../eva-draft.ts';
import { petCells, type EvaProblem } from '../eva-problem.ts';
import { stepCount } from '../team-mode.ts';

export function postWindows(draft: EvaDraft): void {
  for (const stint of draft.stints.values()) {
    for (const use of stint.stint.windowUses) {
      if (!use.prefers) for (const form of draft.forms(stint)) postUse(draft, stint, form, use);
    }
  }
}

function postUse(draft: EvaDraft, stint: StintDraft, form: StintForm, use: WindowUse): void {
  const { problem } = draft;
  const tag = `window:${use.window} ${stint.stint.key}`;
  const set = problem.campaign.windows.find(({ id }) => id === use.window);
  const windows = set === undefined ? [] : windowCells(problem, set, use.mode);
  const last = stepCount(stint.stint);
  const [fromStep, toStep] =
    use.part === 'whole' ? [0, last] : use.part === 'start' ? [0, 0] : [use.fromStep, use.toStep];
  if (use.mode === 'inside' && windows.length === 0) {
    draft.post({ kind: 'clause', literals: [not(stint.presence)], tag });
    return;
  }
  if (windows.length === 0) return;
  draft.post({
    kind: 'windows',
    mode: use.mode,
    from: draft.boundary(form, fromStep),
    to: draft.boundary(form, toStep),
    windows,
    when: [],
    tag,
  });
}

/**
 * Grid cells of the intervals that touch this EVA, with the pad taken off (inside) or added (outside), rounded the same way.
 * `margins`: cells taken off besides, before what happens inside begins and after it ends.
 */
export function windowCells(
  problem: EvaProblem,
  set: WindowSet,
  mode: 'inside' | 'outside',
  margins: { readonly before: number; readonly after: number } = { before: 0, after: 0 },
): [number, number][] {
  const padMs = set.padS * 1000 * (mode === 'inside' ? 1 : -1);
  const found: [number, number][] = [];
  for (const [fromMs, toMs] of set.intervals) {
    const from = petCells(problem, fromMs + padMs, mode === 'inside' ? 'up' : 'down') + margins.before;
    const to = petCells(problem, toMs - padMs, mode === 'inside' ? 'down' : 'up') - margins.after;
    const start = Math.max(0, from);
    const end = Math.min(problem.horizon + 1, to);
    if (start >= end) continue;
    const before = found.at(-1);
    if (before !== undefined && start <= before[1] && mode === 'outside') before[1] = Math.max(before[1], end);
    else found.push([start, end]);
  }
  return found;
}
