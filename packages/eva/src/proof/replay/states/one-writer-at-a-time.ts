import type { Finding } from '../../../finding/finding.ts';
import type { ReplayContext } from '../replay-context.ts';
import { noticed, petSpan } from '../replay-finding.ts';
import type { StateHistory } from './state-history.ts';

/** From its first to its last change of a piece a stint has it alone: nobody else and no outside event changes it meanwhile. */
export function oneWriterAtATime(context: ReplayContext, history: StateHistory): Finding[] {
  const findings: Finding[] = [];
  for (const variable of history.variables()) {
    const holds = history.holds(variable);
    holds.forEach((first, at) => {
      for (const second of holds.slice(at + 1)) {
        if (second.fromMs >= first.toMs && !(second.fromMs === first.fromMs && second.toMs === first.toMs)) continue;
        if (second.toMs <= first.fromMs && second.fromMs < first.fromMs) continue;
        if (first.by === second.by) continue;
        findings.push(clash(context, variable, first.by, second.by, second.fromMs, first.toMs));
      }
      for (const write of history.writes(variable)) {
        if (!write.by.startsWith('event ') || write.ms <= first.fromMs || write.ms >= first.toMs) continue;
        findings.push(clash(context, variable, first.by, write.by, write.ms, first.toMs));
      }
    });
  }
  return findings;
}

function clash(
  context: ReplayContext,
  variable: string,
  first: string,
  second: string,
  fromMs: number,
  toMs: number,
): Finding {
  const placed = context.placedByStint.get(second) ?? context.placedByStint.get(first);
  const zero = placed?.petZeroUtcMs ?? 0;
  const fromS = (fromMs - zero) / 1000;
  return noticed('replay/one-writer-at-a-time', {
    title: `${first} and ${second} change ${context.model.variables.get(variable)?.title ?? variable} at the same time`,
    why: `${petSpan(fromS, Math.max(fromS, (toMs - zero) / 1000))} both have ${variable} in work`,
    mend: `let one end before the other starts`,
    eva: placed?.eva ?? null,
    stint: placed?.stint.key ?? null,
    petS: fromS,
    span: placed?.stint.span ?? null,
  });
}
