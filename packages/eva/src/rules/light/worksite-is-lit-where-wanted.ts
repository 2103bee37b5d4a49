import { formatDuration, formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { exampleOrbit, OUT } from '../example-opening.ts';

const campaign = `
${exampleOrbit(240)}window bay-lit "Bay in sunlight" computed=lit place=bay pad="20 s"
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay; prefer bay-lit part=whole } }
`;
const timeline = (work: string): string => `${OUT}EV1 0:10-0:14 porch > bay
EV1 ${work} look/see
EV1 2:10-2:14 bay > porch
EV2 2:14-2:19 in
EV1 2:19-2:24 in
hatch 2:24-2:29`;

export const worksiteIsLitWhereWanted = defineRule({
  title: 'Work that is better done in sunlight has it',
  broken: 'Work that is better done in sunlight has less of it than wanted',
  severity: 'warning',
  why: 'Helmet lights reach an arm; for an inspection, a picture or a find, the Sun on the surface itself is wanted. Light at the worksite is not the same as day: the vehicle stands in its own light.',
  source: 'common practice',
  *check(facts) {
    for (const { eva } of facts.evas) {
      for (const planned of eva.stints) {
        const stint = facts.stints.get(planned.stint);
        for (const use of stint?.windowUses ?? []) {
          const window = facts.campaign.windows.find((candidate) => candidate.id === use.window);
          if (!use.prefers || use.mode !== 'inside' || window?.computed?.what !== 'lit' || !window.computed.filled)
            continue;
          const fromStep = use.part === 'steps' ? use.fromStep : 0;
          const startS = fromStep <= 0 ? planned.startS : (planned.stepEndsS[fromStep - 1] ?? planned.startS);
          const endS =
            use.part === 'start'
              ? startS + 1
              : use.part === 'steps'
                ? (planned.stepEndsS[use.toStep - 1] ?? planned.endS)
                : planned.endS;
          const lit = window.intervals.map(
            ([from, to]) =>
              [(from - eva.petZeroUtcMs) / 1000 + window.padS, (to - eva.petZeroUtcMs) / 1000 - window.padS] as const,
          );
          const litS = lit.reduce(
            (sum, [from, to]) => sum + Math.max(0, Math.min(endS, to) - Math.max(startS, from)),
            0,
          );
          if (litS >= endS - startS - 1) continue;
          const next = lit.find(([from, to]) => from >= startS && to - from >= endS - startS);
          yield {
            where: {
              eva: eva.eva,
              person: planned.assigned[0] ?? null,
              stint: planned.stint,
              petS: startS,
              span: use.span,
            },
            why: `PET ${formatPet(startS)} to ${formatPet(endS)} has ${formatDuration(litS)} of ${window.title}, its pad of ${formatDuration(window.padS)} taken off`,
            ...(next === undefined
              ? {}
              : {
                  mend: `PET ${formatPet(Math.ceil(next[0] / 60) * 60)} to ${formatPet(Math.floor(next[1] / 60) * 60)} is lit and long enough`,
                }),
          };
        }
      }
    }
  },
  examples: {
    violates: { campaign, timeline: timeline('0:30-0:50') },
    satisfies: { campaign, timeline: timeline('1:20-1:40') },
  },
});
