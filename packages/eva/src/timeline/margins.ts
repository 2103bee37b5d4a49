/** How much time stands between the plan and each limit that it must keep, least first. Only limits that are stated count. */
import { formatDuration, formatPet } from '@handrail/quantity/time';
import type { Campaign } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import type { SuppliesReading } from '../suit/eva-supplies.ts';
import { supplyWords } from '../suit/supply-words.ts';
import { clockRuns } from './clock-runs.ts';
import { personCourse } from './person-course.ts';
import { stateWrites } from './state-writes.ts';
import type { EvaTimeline } from './timeline.ts';

export interface Margin {
  /** "both in 0:24 before the wall". */
  readonly words: string;
  readonly marginS: number;
  readonly petS: number | null;
}

export function margins(
  campaign: Campaign,
  hardware: HardwareModel,
  eva: EvaTimeline,
  homeSeconds: (place: string, pace: number) => number | null,
  supplies: readonly SuppliesReading[] = [],
): readonly Margin[] {
  const found: Margin[] = [];
  if (eva.wall !== null) {
    const marginS = eva.wall.petS - eva.bothInS;
    found.push({
      words: `both in at ${formatPet(eva.bothInS)}, the wall is ${formatPet(eva.wall.petS)}`,
      marginS,
      petS: eva.bothInS,
    });
  }
  for (const run of clockRuns(campaign, hardware, eva, stateWrites(campaign, hardware, eva))) {
    const lengthS = (run.stopS ?? eva.bothInS) - run.startS;
    const marginS = run.clock.sense === 'most' ? run.clock.limitS - lengthS : lengthS - run.clock.limitS;
    found.push({
      words: `${run.clock.title} runs ${formatDuration(lengthS)}, the limit is ${run.clock.sense === 'most' ? 'at most' : 'at least'} ${formatDuration(run.clock.limitS)}`,
      marginS,
      petS: run.startS,
    });
  }
  for (const hold of eva.holds) {
    const request = campaign.requests.find((candidate) => candidate.id === hold.request);
    if (request === undefined || request.longestHoldS === null) continue;
    const lengthS = hold.clearedS - hold.verifiedS;
    found.push({
      words: `${request.title} is held ${formatDuration(lengthS)}, at most ${formatDuration(request.longestHoldS)}`,
      marginS: request.longestHoldS - lengthS,
      petS: hold.verifiedS,
    });
  }
  const homeWithinS = campaign.limits.homeWithinS;
  if (homeWithinS !== null) {
    let farthest: { homeS: number; place: string; petS: number; person: string } | null = null;
    for (const person of campaign.people.filter((candidate) => candidate.role === 'outside')) {
      for (const stretch of personCourse(campaign, eva, person.id)) {
        const homeS = homeSeconds(stretch.to, person.pace);
        if (homeS !== null && (farthest === null || homeS > farthest.homeS)) {
          farthest = { homeS, place: stretch.to, petS: stretch.endS, person: person.id };
        }
      }
    }
    if (farthest !== null) {
      found.push({
        words: `${farthest.person} at ${farthest.place} is ${formatDuration(farthest.homeS)} from the hatch, at most ${formatDuration(homeWithinS)}`,
        marginS: homeWithinS - farthest.homeS,
        petS: farthest.petS,
      });
    }
  }
  for (const reading of supplies) {
    const worst = reading.known ? reading.use.limiting.worst : null;
    if (worst === null) continue;
    const petS = Math.floor(worst.petS);
    found.push({
      words: `${supplyWords(worst.supply)} of ${reading.person} reaches its reserve at ${formatPet(petS)} in the worst case, both in at ${formatPet(eva.bothInS)}`,
      marginS: petS - eva.bothInS,
      petS,
    });
  }
  return found.sort((a, b) => a.marginS - b.marginS);
}
