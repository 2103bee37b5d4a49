/** One response at every occasion of an EVA: where in the plan the trouble costs most. */
import type { Campaign } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import type { KindsLibrary } from '../kinds/kinds-library.ts';
import { stintsByKey } from '../timeline/person-course.ts';
import type { EvaTimeline, Timeline } from '../timeline/timeline.ts';
import { wayHomeSurface } from '../wayhome/way-home-surface.ts';
import type { AnyResponse } from './any-response.ts';
import { occasionsOf } from './concerned.ts';
import { isBroken, type WhatIf, whatIf } from './what-if.ts';

export interface Occasion {
  readonly found: WhatIf;
  readonly broken: boolean;
}

/**
 * At the start of every segment in which it can come up, for whoever it is worse, in order of time; trouble with a hatch also at the start
 * of closing the vehicle's own. Within a segment it costs the same but for the way home, which an earlier or later minute of it may change.
 *
 * @param who whose trouble alone; null: anybody's
 */
export function whatIfThroughout(
  campaign: Campaign,
  hardware: HardwareModel,
  library: KindsLibrary,
  timeline: Timeline,
  eva: EvaTimeline,
  response: AnyResponse,
  who: string | null = null,
): readonly Occasion[] {
  const { segments } = wayHomeSurface(campaign, hardware, library, timeline, eva).progress;
  const occasions = occasionsOf(campaign, stintsByKey(campaign), response, segments);
  const closing = eva.passages.filter((one) => one.kind === 'close-hatch').map((one) => one.startS);
  const instants = new Set([
    ...occasions.filter((one) => who === null || one.person === who).map((one) => one.startS),
    ...(response.kinds.includes('hatch') ? closing : []),
  ]);
  return [...instants]
    .sort((a, b) => a - b)
    .map((petS) => whatIf(campaign, hardware, library, timeline, eva, response, petS, who))
    .filter((found) => found.notHere === null)
    .map((found) => ({ found, broken: isBroken(found) }));
}
