import { formatDuration, formatPet } from '@handrail/quantity/time';
import { gateCalls } from '../../gate/propose-gates.ts';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';
import { wayHomeOf } from '../way-home-facts.ts';

const campaign = (gate: string): string => `
hardware fin kind=deployable at=bay state=folded { state lock unlocked }
task unfold rank=1 eva=day { stint half who=EV1 at=bay { inspect fin; safe-stop #false; inspect fin; report } }
${gate}`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:30 unfold/half
EV1 0:30-0:34 bay > porch
EV2 0:34-0:39 in
EV1 0:39-0:44 in
hatch 0:44-0:49
wall 6:00 longest EVA`;

export const gateStandsBeforeACommittedStretch = defineRule({
  title: 'Somebody calls go or no-go before each stretch from which no safe stop is in reach',
  broken: 'No gate stands before a stretch without a safe stop',
  severity: 'note',
  why: 'Past its entry there is no stopping for some time. Whether to go in is decided before, aloud, with what must be true and what happens on "no".',
  source: 'common practice',
  *check(facts) {
    for (const evaFacts of facts.evas) {
      const surface = wayHomeOf(facts, evaFacts);
      for (const call of gateCalls(facts.campaign, evaFacts.eva, surface)) {
        if (!call.proposed || call.stretch === null) continue;
        const { stretch } = call;
        yield {
          where: {
            eva: evaFacts.eva.eva,
            person: stretch.person,
            stint: call.before,
            petS: call.petS,
            span: facts.stints.get(call.before)?.span ?? null,
          },
          why: `${stretch.person}, PET ${formatPet(stretch.startS)} to ${formatPet(stretch.endS)} (${formatDuration(stretch.endS - stretch.startS)}): ${stretch.why.join('; ')}`,
          mend: `write gate ID before="${call.before}" caller=${call.caller}${call.latestPetS === null ? '' : ` latest="${formatPet(Math.floor(call.latestPetS / 60) * 60)}"`} on-no="…" { condition "…" }`,
        };
      }
    }
  },
  examples: {
    violates: { campaign: campaign(''), timeline },
    satisfies: {
      campaign: campaign(
        'gate unfold-fin "Go" before="unfold/half" caller=IV on-no="leave it folded" { condition "both well" }\n',
      ),
      timeline,
    },
  },
});
