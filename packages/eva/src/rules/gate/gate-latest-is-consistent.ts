import { formatPet } from '@handrail/quantity/time';
import { latestEntry } from '../../gate/propose-gates.ts';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';
import { wayHomeOf } from '../way-home-facts.ts';

const campaign = (latest: string): string => `
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay } }
gate look "Go to look" before="look/see" caller=IV latest="${latest}" on-no="come in" { condition "both well" }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:22 look/see
EV1 0:22-0:26 bay > porch
EV2 0:26-0:31 in
EV1 0:31-0:36 in
hatch 0:36-0:41
wall 6:00 longest EVA`;

export const gateLatestIsConsistent = defineRule({
  title: 'The latest "go" of a gate is after the planned start and before the last moment to start',
  broken: 'The latest "go" of a gate does not fit',
  severity: 'warning',
  why: 'A "go" that the plan itself comes too late for is never given; a "go" after the last moment to start leads past the wall.',
  source: 'common practice',
  *check(facts) {
    for (const evaFacts of facts.evas) {
      for (const gate of facts.campaign.gates) {
        const planned = evaFacts.eva.stints.find((stint) => stint.stint === gate.before);
        if (planned === undefined || gate.latestPetS === null) continue;
        const where = { eva: evaFacts.eva.eva, stint: gate.before, petS: planned.startS, span: gate.span };
        if (planned.startS > gate.latestPetS) {
          yield {
            where,
            why: `"${gate.title}" may be called until PET ${formatPet(gate.latestPetS)}, and "${gate.before}" is planned for PET ${formatPet(planned.startS)}`,
            mend: 'plan it earlier, or agree a later "go"',
          };
          continue;
        }
        const surface = wayHomeOf(facts, evaFacts);
        const stretch = surface.committed.find((one) => one.entry === gate.before);
        const lastS =
          surface.lastMoments.find((moment) => moment.stint === gate.before)?.terminate.atMostS ??
          (stretch === undefined ? null : latestEntry(surface, stretch));
        if (lastS === null || gate.latestPetS <= lastS) continue;
        yield {
          where,
          why: `"${gate.title}" may be called until PET ${formatPet(gate.latestPetS)}; the last moment to start with a way home before the limit is PET ${formatPet(Math.floor(lastS))}`,
          mend: `write latest="${formatPet(Math.floor(lastS / 60) * 60)}" or earlier`,
        };
      }
    }
  },
  examples: {
    violates: { campaign: campaign('5:55'), timeline },
    satisfies: { campaign: campaign('3:00'), timeline },
  },
});
