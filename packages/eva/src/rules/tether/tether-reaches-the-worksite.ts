import { formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (who: string): string => `
limits { tether-swap "1 min" }
person EV3 role=outside suit-limit="7 h" anchor=porch-anchor tether="9 m"
task look rank=1 eva=day { stint see who=${who} at=tip { inspect tip } }
`;
const timeline = (who: string): string => `${OUT}${who} 0:10-0:18 porch > bay > tip
${who} 0:18-0:22 look/see
${who} 0:22-0:30 tip > bay > porch
EV2 0:30-0:35 in
EV1 0:35-0:40 in
hatch 0:40-0:45`;

export const tetherReachesTheWorksite = defineRule({
  title: 'The safety tether reaches every place that is visited',
  broken: 'The safety tether does not reach',
  severity: 'error',
  why: 'The reel path runs from the anchor through the fairleads to the person; where it is longer than the reel, the person cannot get there tethered.',
  source: 'common practice',
  *check(facts) {
    for (const { eva, courses, travelOf } of facts.evas) {
      for (const person of facts.outside) {
        if (person.tetherLengthM === null || person.startAnchor === null) continue;
        const travel = travelOf(person.id);
        const seen = new Set<string>();
        for (const stretch of courses.get(person.id) ?? []) {
          if (stretch.kind !== 'work' || stretch.on !== null || seen.has(stretch.to)) continue;
          seen.add(stretch.to);
          const tether = travel.tetherAt(stretch.to);
          const reelM = tether?.reelM ?? null;
          if (reelM !== null && reelM <= person.tetherLengthM) continue;
          const unmodelled = travel.defaults.length > 0 && reelM === null;
          yield {
            ...(unmodelled ? { severity: 'unknown' as const } : {}),
            where: {
              eva: eva.eva,
              person: person.id,
              stint: stretch.stint?.key ?? null,
              petS: stretch.startS,
              span: stretch.stint?.span ?? null,
            },
            why:
              reelM === null
                ? unmodelled
                  ? `tethers are not modelled: ${travel.defaults.map((entry) => entry.what).join('; ')}`
                  : `${stretch.to} cannot be reached on a reel of ${person.tetherLengthM} m at PET ${formatPet(stretch.startS)}`
                : `the reel path to ${stretch.to} is ${reelM} m, the reel of ${person.id} has ${person.tetherLengthM} m`,
            mend: 'put an anchor on the way and swap to it, or a longer reel',
          };
        }
      }
    }
  },
  examples: {
    violates: { campaign: campaign('EV3'), timeline: timeline('EV3') },
    satisfies: { campaign: campaign('EV1'), timeline: timeline('EV1') },
  },
});
