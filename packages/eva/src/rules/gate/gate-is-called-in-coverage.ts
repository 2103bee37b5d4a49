import { formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (gap: string): string => `
window gap pad="20 s" shown-as=gap source="example" { ${gap} }
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay } }
gate look "Go to look" before="look/see" caller=IV on-no="come in" { condition "both well" }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:15-0:22 look/see
EV1 0:22-0:26 bay > porch
EV2 0:26-0:31 in
EV1 0:31-0:36 in
hatch 0:36-0:41`;

export const gateIsCalledInCoverage = defineRule({
  title: 'A gate is called where there is coverage',
  broken: 'A gate is to be called in a coverage gap',
  severity: 'warning',
  why: 'Conditions are polled with those who watch the vehicle. In a gap the crew waits in front of the work, or goes on without an answer.',
  source: 'common practice',
  *check(facts) {
    const gaps = facts.campaign.windows.filter((window) => window.shownAs === 'gap');
    for (const { eva } of facts.evas) {
      for (const gate of facts.campaign.gates) {
        const startS = eva.stints.find((planned) => planned.stint === gate.before)?.startS;
        if (startS === undefined) continue;
        for (const window of gaps) {
          const gap = window.intervals
            .map(
              ([from, to]) =>
                [pet(from, eva.petZeroUtcMs) - window.padS, pet(to, eva.petZeroUtcMs) + window.padS] as const,
            )
            .find(([from, to]) => from < startS && startS < to);
          if (gap === undefined) continue;
          yield {
            where: { eva: eva.eva, stint: gate.before, petS: startS, span: gate.span },
            why: `"${gate.title}" is called at PET ${formatPet(startS)}, in ${window.title} from PET ${formatPet(Math.round(gap[0]))} to ${formatPet(Math.round(gap[1]))}`,
            mend: `call it by PET ${formatPet(Math.floor(gap[0] / 60) * 60)}, or start after PET ${formatPet(Math.ceil(gap[1] / 60) * 60)}`,
          };
        }
      }
    }
  },
  examples: {
    violates: { campaign: campaign('interval "2031-05-01T10:13:00Z" "2031-05-01T10:20:00Z"'), timeline },
    satisfies: { campaign: campaign('interval "2031-05-01T10:16:00Z" "2031-05-01T10:20:00Z"'), timeline },
  },
});

function pet(utcMs: number, zeroMs: number): number {
  return (utcMs - zeroMs) / 1000;
}
