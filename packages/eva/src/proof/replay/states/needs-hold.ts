import { formatPet } from '@handrail/quantity/time';
import type { Finding } from '../../../finding/finding.ts';
import type { Need } from '../../../hardware/effects.ts';
import { boundaryS, type Placed, type ReplayContext, utcMs } from '../replay-context.ts';
import { noticed, oneOf } from '../replay-finding.ts';
import { bodyValue, type SeenValue, type StateHistory } from './state-history.ts';

const RULES = {
  start: 'replay/need-holds-at-the-start',
  during: 'replay/need-holds-throughout',
  end: 'replay/need-holds-at-the-end',
} as const;

/** Each stint finds every value that it needs, when it needs it. `unknown` satisfies nothing. */
export function needsHold(context: ReplayContext, history: StateHistory): Finding[] {
  const findings: Finding[] = [];
  for (const { placed } of context.flown) {
    for (const one of placed) {
      for (const need of one.effects?.needs ?? []) {
        const allowed = need.allowed.map((value) => bodyValue(context, value, one.planned.assigned));
        const wrong = seen(history, one, need).find(({ value }) => value === 'unknown' || !allowed.includes(value));
        if (wrong !== undefined) findings.push(unmet(context, one, need, allowed, wrong));
      }
    }
  }
  return findings;
}

function seen(history: StateHistory, placed: Placed, need: Need): readonly SeenValue[] {
  const { key } = placed.stint;
  const { startS, endS } = placed.planned;
  if (need.when === 'start') return [history.before(need.variable, utcMs(placed, startS), key)];
  if (need.when === 'end') return [history.atEnd(need.variable, utcMs(placed, endS), key)];
  const fromMs = utcMs(placed, boundaryS(placed, need.fromStep));
  const toMs = utcMs(placed, boundaryS(placed, Math.max(need.toStep, need.fromStep + 1)));
  return history.during(need.variable, fromMs, toMs, key);
}

function unmet(
  context: ReplayContext,
  placed: Placed,
  need: Need,
  allowed: readonly string[],
  wrong: SeenValue,
): Finding {
  const { stint, planned } = placed;
  const title = context.model.variables.get(need.variable)?.title ?? need.variable;
  const atMs = Math.max(wrong.fromMs, utcMs(placed, need.when === 'end' ? planned.endS : planned.startS));
  const petS = (atMs - placed.petZeroUtcMs) / 1000;
  const cause = wrong.by === null ? 'as stated at the start of the campaign' : `left so by ${wrong.by}`;
  const isHeld = wrong.value === 'in work';
  return noticed(RULES[need.when], {
    severity: 'error',
    title: `"${stint.title}" does not find ${title} as it needs it`,
    why:
      wrong.value === 'unknown'
        ? `${need.origin.words} needs ${need.variable} ${oneOf(allowed)}; at PET ${formatPet(petS)} nothing says how it stands`
        : `${need.origin.words} needs ${need.variable} ${oneOf(allowed)}; at PET ${formatPet(petS)} it is ${wrong.value} (${isHeld ? `${wrong.by ?? 'somebody'} is working on it` : cause})`,
    mend:
      wrong.value === 'unknown'
        ? `state how ${need.variable} stands, or plan work that leaves it ${oneOf(allowed)} first`
        : `do first what leaves ${need.variable} ${oneOf(allowed)}`,
    eva: placed.eva,
    stint: stint.key,
    step: need.when === 'during' ? need.fromStep : need.origin.step,
    petS,
    span: need.origin.span,
  });
}
