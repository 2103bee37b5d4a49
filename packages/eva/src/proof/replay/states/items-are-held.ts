import type { Finding } from '../../../finding/finding.ts';
import type { ReplayContext } from '../replay-context.ts';
import { noticed } from '../replay-finding.ts';
import type { StateHistory } from './state-history.ts';

/** A loose piece is held by something at every instant, and what holds it exists and is not held by the piece itself. */
export function itemsAreHeld(context: ReplayContext, history: StateHistory): Finding[] {
  const findings: Finding[] = [];
  for (const variable of context.model.variables.values()) {
    if (variable.about !== 'holder') continue;
    const states = [
      { value: variable.initial, ms: Number.NEGATIVE_INFINITY, by: 'the start of the campaign' },
      ...history.writes(variable.id),
    ];
    for (const { value, ms, by } of states) {
      const problem = wrongHolder(context, value) ?? loop(context, history, variable.of, ms);
      if (problem === null) continue;
      const placed = context.placedByStint.get(by);
      findings.push(
        noticed('replay/loose-pieces-are-held', {
          // Nobody has said where it is at the start: that is a gap in the text. Let go by planned work: a piece adrift.
          severity: ms === Number.NEGATIVE_INFINITY ? 'unknown' : 'error',
          title: `Nothing holds ${context.hardware.get(variable.of)?.title ?? variable.of}`,
          why: `after ${by} ${problem}`,
          mend: 'say what holds it: every loose piece is tethered or stowed at all times',
          eva: placed?.eva ?? null,
          stint: placed?.stint.key ?? null,
          petS: placed === undefined ? null : (ms - placed.petZeroUtcMs) / 1000,
          span: placed?.stint.span ?? context.hardware.get(variable.of)?.span ?? null,
        }),
      );
    }
  }
  return findings;
}

function wrongHolder(context: ReplayContext, value: string): string | null {
  const colon = value.indexOf(':');
  const kind = value.slice(0, colon);
  const id = value.slice(colon + 1);
  const exists =
    (kind === 'place' && (context.places.has(id) || id === context.hatch)) ||
    (kind === 'hardware' && context.hardware.has(id)) ||
    (kind === 'person' && context.people.has(id)) ||
    (kind === 'arm' && context.arms.has(id));
  if (exists) return null;
  return value === 'unknown' ? 'nobody knows where it is' : `it is said to be with ${value}, which does not exist`;
}

function loop(context: ReplayContext, history: StateHistory, item: string, ms: number): string | null {
  let at = item;
  for (let depth = 0; depth <= context.hardware.size; depth++) {
    const holder =
      history.writes(`${at}.holder`).findLast((write) => write.ms <= ms)?.value ?? history.initialOf(`${at}.holder`);
    if (!holder.startsWith('hardware:')) return null;
    at = holder.slice('hardware:'.length);
    if (at === item) return 'it is inside itself, by way of what it holds';
  }
  return 'it is inside itself, by way of what it holds';
}
