import { formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import type { EvaFacts, RuleFacts } from '../rule-facts.ts';
import { OUT } from '../example-opening.ts';

const campaign = `
hardware fin-one kind=deployable at=tip state=folded controls=fin-off { state lock locked }
hardware fin-two kind=deployable at=side state=folded controls=fin-off { state lock locked }
request fin-off owner=power inhibits=2 lead="1 min" verify="1 min" clear="1 min" longest="2 h" status=agreed
task unfold rank=1 eva=day {
    stint one who=EV1 at=tip { unlock fin-one; safe-stop #false; inspect fin-one; safe-stop #false; lock fin-one }
    stint two who=EV2 at=side { unlock fin-two; safe-stop #false; inspect fin-two; safe-stop #false; lock fin-two }
}
`;
const timeline = (second: string, back: string): string => `${OUT}request fin-off 0:10 0:13 0:15-0:50 0:51
EV1 0:10-0:18 porch > bay > tip
EV2 0:10-0:15 porch > side
EV1 0:18-0:30 unfold/one
EV2 ${second} unfold/two
EV1 0:30-0:38 tip > bay > porch
EV2 ${back} side > porch
EV2 0:55-1:00 in
EV1 1:00-1:05 in
hatch 1:05-1:10`;

/** Stretches of a stint, in seconds of PET, within which the text says that no step ends in a safe stop. */
function committed(
  facts: RuleFacts,
  { eva }: EvaFacts,
  person: string,
): readonly { from: number; to: number; stint: string }[] {
  const found: { from: number; to: number; stint: string }[] = [];
  for (const planned of eva.stints) {
    const stint = facts.stints.get(planned.stint);
    if (stint === undefined || !planned.assigned.includes(person)) continue;
    stint.steps.forEach((step, index) => {
      if (step.safeStop !== false) return;
      const from = planned.stepEndsS[index - 1] ?? planned.startS;
      const to = planned.stepEndsS[index + 1] ?? planned.endS;
      found.push({ from, to, stint: planned.stint });
    });
  }
  return found;
}

export const bothAreNotCommittedAtOnce = defineRule({
  title: 'The two are never both where no safe stop is in reach',
  broken: 'Both are past a safe stop at once',
  severity: 'error',
  why: 'If something happens to one, the other must be free to leave their own work at once.',
  source: 'common practice',
  *check(facts) {
    for (const eva of facts.evas) {
      const [first, second] = facts.outside;
      if (first === undefined || second === undefined) continue;
      for (const one of committed(facts, eva, first.id)) {
        const clash = committed(facts, eva, second.id).find(
          (two) => two.stint !== one.stint && two.from < one.to && one.from < two.to,
        );
        if (clash === undefined) continue;
        yield {
          where: {
            eva: eva.eva.eva,
            person: first.id,
            stint: one.stint,
            petS: Math.max(one.from, clash.from),
            span: facts.stints.get(one.stint)?.span ?? null,
          },
          why: `${first.id} in ${one.stint} and ${second.id} in ${clash.stint} are both past a safe stop from PET ${formatPet(Math.max(one.from, clash.from))} to ${formatPet(Math.min(one.to, clash.to))}`,
          mend: `let ${clash.stint} begin after ${one.stint} has reached a safe stop`,
        };
        break;
      }
    }
  },
  examples: {
    violates: { campaign, timeline: timeline('0:18-0:30', '0:30-0:35') },
    satisfies: { campaign, timeline: timeline('0:38-0:50', '0:50-0:55') },
  },
});
