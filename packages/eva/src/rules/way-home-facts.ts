/** What the rules on ways home, gates and responses read: the surface of an EVA, made once, and the least margin of a mode. */
import { formatDuration, formatPet } from '@handrail/quantity/time';
import { leastMargin } from '../wayhome/least-margin.ts';
import type { Mode } from '../wayhome/way-home-state.ts';
import { type WayHomeSurface, wayHomeSurface } from '../wayhome/way-home-surface.ts';
import type { RuleMatch } from './define-rule.ts';
import type { EvaFacts, RuleFacts } from './rule-facts.ts';

export function wayHomeOf(facts: RuleFacts, { eva }: EvaFacts): WayHomeSurface {
  return wayHomeSurface(facts.campaign, facts.hardware, facts.library, facts.timeline, eva);
}

/** One match per EVA, at the least margin of this mode, where it is negative. */
export function* marginIsNegative(facts: RuleFacts, mode: Mode): Iterable<RuleMatch> {
  for (const evaFacts of facts.evas) {
    const surface = wayHomeOf(facts, evaFacts);
    const least = leastMargin(surface, mode);
    if (least === null || least.marginS >= 0 || surface.limit === null) continue;
    const worst = least.sample.worst[mode];
    const where = worst.pair.map((segment) => `${segment.person} ${segment.stint ?? `at ${segment.place}`}`).join(', ');
    yield {
      where: { eva: evaFacts.eva.eva, petS: least.sample.petS },
      why: `at PET ${formatPet(least.sample.endS)} with ${where} the way home takes ${worst.way?.words ?? formatDuration(worst.totalS ?? 0)} (90 %); the limit is PET ${formatPet(surface.limit.petS)} (${surface.limit.cause}), short by ${least.isWhole ? '' : 'at least '}${formatDuration(-least.marginS)}`,
      mend: 'turn back earlier, work nearer to the hatch late, or leave less open at once',
    };
  }
}
