import { formatDuration } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (limit: string): string => `
limits { home-within "${limit}" }
task look rank=1 eva=day { stint see who=EV1 at=tip { inspect tip } }
`;
const timeline = `${OUT}EV1 0:10-0:18 porch > bay > tip
EV1 0:18-0:22 look/see
EV1 0:22-0:30 tip > bay > porch
EV2 0:30-0:35 in
EV1 0:35-0:40 in
hatch 0:40-0:45`;

export const homeIsWithinTheLimit = defineRule({
  title: "The hatch is within the operator's limit from every place that is visited",
  broken: 'The hatch is too far away',
  severity: 'error',
  why: "The limit is what the suit's own reserve covers on the way back. Travel hand over hand from the farthest place must fit in it.",
  source: 'common practice',
  *check(facts) {
    const limitS = facts.campaign.limits.homeWithinS;
    for (const { eva, courses, travelOf } of facts.evas) {
      for (const person of facts.outside) {
        const visited = new Map<string, { petS: number; stint: string | null }>();
        for (const stretch of courses.get(person.id) ?? []) {
          if (stretch.kind === 'work' && stretch.on === null && !visited.has(stretch.to))
            visited.set(stretch.to, { petS: stretch.startS, stint: stretch.stint?.key ?? null });
        }
        if (visited.size > 0 && limitS === null) {
          yield {
            severity: 'unknown',
            where: { eva: eva.eva, person: person.id },
            why: 'the operator\'s limit is not stated (limits { home-within "…" })',
          };
          continue;
        }
        for (const [place, { petS, stint }] of visited) {
          const homeS = travelOf(person.id).homeSeconds(place, person.pace);
          if (homeS !== null && limitS !== null && homeS <= limitS) continue;
          yield {
            where: {
              eva: eva.eva,
              person: person.id,
              stint,
              petS,
              span: facts.campaign.vehicle.places.find((candidate) => candidate.id === place)?.span ?? null,
            },
            why:
              homeS === null
                ? `there is no way from ${place} to the hatch`
                : `from ${place} to the hatch takes ${formatDuration(homeS)}; the limit is ${formatDuration(limitS ?? 0)} (over by ${formatDuration(homeS - (limitS ?? 0))})`,
            mend: 'another route, another place to work from, or a waiver of the operator',
          };
        }
      }
    }
  },
  examples: {
    violates: { campaign: campaign('6 min'), timeline },
    satisfies: { campaign: campaign('30 min'), timeline },
  },
});
