/** Windows stand in UTC: the plan fixes one interval for each use, or one stretch between two that it must avoid. */
import { formatDuration, formatUtcClock } from '@handrail/quantity/time';
import type { Placed } from '../replay/replay-context.ts';
import type { NetworkDraft } from './network-draft.ts';
import { stepStartEvent } from './stint-events.ts';

export function windowLinks(draft: NetworkDraft): void {
  for (const placed of draft.placed) {
    for (const use of placed.stint.windowUses) if (!use.prefers) drawUse(draft, placed, use);
  }
}

function drawUse(draft: NetworkDraft, placed: Placed, use: Placed['stint']['windowUses'][number]): void {
  const set = draft.campaign.windows.find(({ id }) => id === use.window);
  if (set === undefined) return;
  const zeroMs = draft.plan.petZeroUtcMs;
  const [firstStep, lastStep] =
    use.part === 'steps' ? [use.fromStep, use.toStep] : [0, use.part === 'start' ? 0 : placed.steps];
  const from = stepStartEvent(draft, placed, firstStep);
  const to = use.part === 'start' ? from : draft.boundary(placed, lastStep);
  const fromMs = zeroMs + draft.plannedBoundaryS(placed, firstStep) * 1000;
  const toMs = use.part === 'start' ? fromMs : zeroMs + draft.plannedBoundaryS(placed, lastStep) * 1000;
  const padMs = set.padS * 1000;
  const least = (ms: number): number => Math.ceil((ms - zeroMs) / 1000);
  const most = (ms: number): number => Math.floor((ms - zeroMs) / 1000);
  if (use.mode === 'inside') {
    const interval = set.intervals.find(([a, b]) => a + padMs <= fromMs && toMs <= b - padMs);
    if (interval === undefined) return;
    const [a, b] = interval;
    const reason = `"${placed.stint.title}" inside "${set.title}", ${formatUtcClock(a)}–${formatUtcClock(b)} UTC less ${formatDuration(set.padS)} at each end`;
    draft.link(draft.egressUtc, from, least(a + padMs), null, 'window', reason, use.span);
    draft.link(draft.egressUtc, to, null, most(b - padMs), 'window', reason, use.span);
    return;
  }
  const before = set.intervals.findLast(([, b]) => b + padMs <= fromMs);
  const after = set.intervals.find(([a]) => a - padMs >= toMs);
  const words = (interval: readonly [number, number]): string =>
    `"${placed.stint.title}" outside "${set.title}", ${formatUtcClock(interval[0])}–${formatUtcClock(interval[1])} UTC and ${formatDuration(set.padS)} at each end`;
  if (before !== undefined) {
    draft.link(draft.egressUtc, from, least(before[1] + padMs), null, 'window', words(before), use.span);
  }
  if (after !== undefined) {
    draft.link(draft.egressUtc, to, null, most(after[0] - padMs), 'window', words(after), use.span);
  }
}
