import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (second: string): string => `
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay }; stint again who=EV1 at=bay { inspect bay } }
gate look "Go to look" before="look/see" caller=IV on-no="come in" { condition "both well" }
gate light "Go in light" before="look/${second}" caller=IV on-no="wait" { condition "in sunlight" }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:18 look/see
EV1 0:18-0:22 look/again
EV1 0:22-0:26 bay > porch
EV2 0:26-0:31 in
EV1 0:31-0:36 in
hatch 0:36-0:41`;

export const stintHasOneGate = defineRule({
  title: 'A stint has one gate: one caller, one list of conditions, one branch on "no"',
  broken: 'Two gates open the same stint',
  severity: 'warning',
  why: 'With two gates in front of one piece of work, a "go" at one is taken for the other, and two branches on "no" contradict each other.',
  source: 'common practice',
  *check(facts) {
    for (const { eva } of facts.evas) {
      for (const planned of eva.stints) {
        const gates = facts.campaign.gates.filter((gate) => gate.before === planned.stint);
        if (gates.length < 2) continue;
        yield {
          where: { eva: eva.eva, stint: planned.stint, petS: planned.startS, span: gates[1]?.span ?? null },
          why: `${gates.map((gate) => `"${gate.title}" (on no: ${gate.onNo})`).join(' and ')} both stand before ${planned.stint}`,
          mend: 'put their conditions into one gate',
        };
      }
    }
  },
  examples: {
    violates: { campaign: campaign('see'), timeline },
    satisfies: { campaign: campaign('again'), timeline },
  },
});
