import { formatDuration } from '@handrail/quantity/time';
import type { Clock, StateChange } from '../../../campaign/campaign.ts';
import type { Finding } from '../../../finding/finding.ts';
import type { ReplayContext } from '../replay-context.ts';
import { noticed } from '../replay-finding.ts';
import type { StateHistory } from './state-history.ts';

interface Change {
  readonly ms: number;
  readonly by: string;
}

/**
 * Clocks run between two changes of value, whoever makes them. Without a stop in the plan a clock runs to the horizon, which is
 * told by itself. A budget falls at its worst rate, one second per second, while it runs; `accumulate` adds the runs up.
 */
export function clocksHold(context: ReplayContext, history: StateHistory): Finding[] {
  return context.campaign.clocks.flatMap((clock) => replayClock(context, history, clock));
}

function replayClock(context: ReplayContext, history: StateHistory, clock: Clock): Finding[] {
  const starts = changes(history, clock.start);
  const stops = changes(history, clock.stop);
  const findings: Finding[] = [];
  let usedS = 0;
  let runningUntilMs = Number.NEGATIVE_INFINITY;
  for (const start of starts) {
    if (start.ms < runningUntilMs) continue;
    const stop = stops.find((one) => one.ms >= start.ms && one !== start);
    const tell = (rule: `replay/${string}`, title: string, why: string, mend: string): void => {
      findings.push(noticed(rule, { ...whereabouts(context, start), title, why, mend, span: clock.span }));
    };
    if (stop === undefined) {
      const endMs = Math.max(...context.flown.map(({ plan }) => plan.petZeroUtcMs + plan.bothInS * 1000));
      tell(
        'replay/clock-is-stopped',
        `${clock.title} is started and never stopped`,
        `started by ${start.by}; nothing in the plan makes ${clock.stop.variable} ${clock.stop.values.join(' or ')}: it runs ${formatDuration((endMs - start.ms) / 1000)} to the end of the plan and on`,
        `plan work that makes ${clock.stop.variable} ${clock.stop.values.join(' or ')}, or do not start it`,
      );
      break;
    }
    runningUntilMs = stop.ms;
    const ranS = (stop.ms - start.ms) / 1000;
    usedS = clock.onStop === 'accumulate' ? usedS + ranS : ranS;
    const sum = usedS === ranS ? '' : ` (${formatDuration(usedS)} with the runs before)`;
    const between = `${start.by} starts it, ${stop.by} stops it ${formatDuration(ranS)} later${sum}`;
    if (clock.sense === 'most' && usedS > clock.limitS) {
      tell(
        'replay/clock-does-not-run-out',
        `${clock.title} runs out`,
        `${between}; the limit is ${formatDuration(clock.limitS)} (over by ${formatDuration(usedS - clock.limitS)})`,
        'bring the stop nearer to the start',
      );
    }
    if (clock.sense === 'least' && ranS < clock.limitS) {
      tell(
        'replay/clock-runs-long-enough',
        `${clock.title} is stopped too soon`,
        `${between}; the least is ${formatDuration(clock.limitS)} (short by ${formatDuration(clock.limitS - ranS)})`,
        'wait before the stop',
      );
    }
  }
  return findings;
}

/** Instants at which the variable takes one of the values, having had another before. */
function changes(history: StateHistory, change: StateChange): Change[] {
  const found: Change[] = [];
  let value = history.initialOf(change.variable);
  for (const write of history.writes(change.variable)) {
    if (change.values.includes(write.value) && !change.values.includes(value))
      found.push({ ms: write.ms, by: write.by });
    value = write.value;
  }
  return found;
}

function whereabouts(
  context: ReplayContext,
  start: Change,
): { eva: string | null; stint: string | null; petS: number | null } {
  const placed = context.placedByStint.get(start.by);
  if (placed !== undefined) {
    return { eva: placed.eva, stint: placed.stint.key, petS: (start.ms - placed.petZeroUtcMs) / 1000 };
  }
  return { eva: null, stint: null, petS: null };
}
