import { formatDuration, formatUtcClock } from '@handrail/quantity/time';
import type { WindowSet, WindowUse } from '../../../campaign/campaign.ts';
import type { Finding } from '../../../finding/finding.ts';
import { boundaryS, type Placed, type ReplayContext, utcMs } from '../replay-context.ts';
import { noticed, petSpan } from '../replay-finding.ts';

/** Instants further from 1970 have no calendar day. */
const LAST_DAY_MS = 8.64e15;

/** Inside: the part lies within one interval less its pad. Outside: it meets no interval with its pad. Wishes are notes. */
export function windowsHold(context: ReplayContext): Finding[] {
  const sets = new Map(context.campaign.windows.map((set) => [set.id, set]));
  return context.flown.flatMap(({ placed }) =>
    placed.flatMap((one) => one.stint.windowUses.flatMap((use) => replayUse(one, use, sets.get(use.window)))),
  );
}

function replayUse(placed: Placed, use: WindowUse, set: WindowSet | undefined): Finding[] {
  const { planned, stint } = placed;
  const [fromS, toS] =
    use.part === 'whole'
      ? [planned.startS, planned.endS]
      : use.part === 'start'
        ? [planned.startS, planned.startS]
        : [boundaryS(placed, use.fromStep), boundaryS(placed, use.toStep)];
  const fromMs = utcMs(placed, fromS);
  const toMs = utcMs(placed, toS);
  const padMs = (set?.padS ?? 0) * 1000;
  const intervals = set?.intervals ?? [];
  const holds =
    use.mode === 'inside'
      ? intervals.some(([a, b]) => a + padMs <= fromMs && toMs <= b - padMs && (fromMs < toMs || fromMs < b - padMs))
      : intervals.every(([a, b]) => Math.max(toMs, fromMs + 1) <= a - padMs || b + padMs <= fromMs);
  if (holds) return [];
  const near = intervals.filter(([a, b]) => b + padMs > fromMs - 5_400_000 && a - padMs < toMs + 5_400_000).slice(0, 3);
  const clockOf = ([a, b]: readonly [number, number]): string =>
    Math.max(Math.abs(a), Math.abs(b)) > LAST_DAY_MS
      ? 'no day that exists'
      : `${formatUtcClock(a)}–${formatUtcClock(b)} UTC`;
  const part = use.part === 'whole' ? 'all of it' : use.part === 'start' ? 'its start' : 'the steps concerned';
  return [
    noticed(use.mode === 'inside' ? 'replay/work-is-inside-its-window' : 'replay/work-is-outside-the-window', {
      severity: use.prefers ? 'note' : 'error',
      title: `"${stint.title}" is not ${use.mode} "${set?.title ?? use.window}"${use.prefers ? ', as it would rather be' : ''}`,
      why: `${part}, ${petSpan(fromS, toS)} (${clockOf([fromMs, toMs])}), should be ${use.mode}; near it: ${near.map(clockOf).join(', ') || 'no interval'}, pad ${formatDuration(padMs / 1000)}`,
      mend: use.prefers ? null : `move it ${use.mode === 'inside' ? 'into' : 'out of'} the window`,
      eva: placed.eva,
      stint: stint.key,
      petS: fromS,
      span: use.span,
    }),
  ];
}
