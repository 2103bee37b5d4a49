/** The kit of all responses over one EVA: where each piece is when it may be needed, and when it is not at hand. */
import type { Campaign } from '../campaign/campaign.ts';
import { stintsByKey } from '../timeline/person-course.ts';
import type { Segment } from '../wayhome/segments.ts';
import type { WayHomeSurface } from '../wayhome/way-home-surface.ts';
import { allResponses, type AnyResponse } from './any-response.ts';
import { occasionsOf } from './concerned.ts';
import { type ResponseKit, responseKit } from './response-kit.ts';

export interface KitLine {
  readonly response: AnyResponse;
  /** Hardware id, or kind of tool, as the response names it. */
  readonly asked: string;
  /** Pieces that serve at one occasion or another, in order of the first use. */
  readonly pieces: readonly string[];
  /** Segments in which the trouble can come up. */
  readonly occasions: number;
  /** First occasion at which it lies neither with somebody outside nor where it is needed; null: none. */
  readonly notAtHand: KitOccasion | null;
  /** First occasion at which somebody else works with it and there is no other; null: none. */
  readonly inUse: KitOccasion | null;
  /** The longest way to it and back, seconds; null: somewhere it is out of reach. */
  readonly farthestS: number | null;
}
export interface KitOccasion {
  readonly segment: Segment;
  readonly kit: ResponseKit;
}

/** Responses with kit that can come up in this EVA, those of the campaign first. */
export function responseKitList(campaign: Campaign, surface: WayHomeSurface): readonly KitLine[] {
  const { progress, ground } = surface;
  const stints = stintsByKey(campaign);
  return allResponses(campaign).flatMap((response): KitLine[] => {
    if (response.kit.length === 0) return [];
    const occasions = occasionsOf(campaign, stints, response, progress.segments).map((segment) => {
      const now = progress.at(segment.startS);
      const finished = now.map(({ index }) => index);
      const { values } = progress.state(now, finished, segment.startS, 'alive', 'high');
      return { segment, kit: responseKit(ground, progress, response.kit, segment, now, values) };
    });
    if (occasions.length === 0) return [];
    return response.kit.map((asked, index) => {
      const all = occasions.map(({ segment, kit }) => ({ segment, kit: kit[index] as ResponseKit }));
      const fetches = all.map(({ kit }) => kit.fetchS);
      return {
        response,
        asked,
        pieces: [...new Set(all.flatMap(({ kit }) => kit.piece ?? []))],
        occasions: all.length,
        notAtHand: all.find(({ kit }) => !isAtHand(kit)) ?? null,
        inUse: all.find(({ kit }) => kit.inUseBy !== null) ?? null,
        farthestS: fetches.reduce((most, one) => (most === null || one === null ? null : Math.max(most, one)), 0),
      };
    });
  });
}

/** In somebody's hands outside, or where it is needed: what lies at another worksite is not there when it is. */
function isAtHand({ where, fetchS }: ResponseKit): boolean {
  return fetchS === 0 || (fetchS !== null && where?.startsWith('with ') === true);
}
