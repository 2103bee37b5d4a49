import { formatDuration } from '@handrail/quantity/time';
import type { Campaign } from '../campaign/campaign.ts';
import { type TravelOptions, type TravelTable, travelTable } from './travel-table.ts';

export interface HomeFigure {
  readonly place: string;
  /** Unladen at this pace; null: no way to the hatch in this state. */
  readonly seconds: number | null;
  /** The sum that can be redone by hand: "to spine-1 2 min + to porch 3 min = 5 min". */
  readonly words: string;
  readonly path: readonly string[] | null;
}

/** From every place to the hatch: the figure and its sum in words. Empty at level 0, where there is no hatch. */
export function minutesHome(
  campaign: Campaign,
  pace = 1,
  options: TravelOptions = {},
  table: TravelTable = travelTable(campaign, options),
): readonly HomeFigure[] {
  const { hatch, places } = campaign.vehicle;
  if (hatch === null) return [];
  return places.map(({ id }) => {
    const route = table.routeBetween(id, hatch, null);
    if (route === null) return { place: id, seconds: null, words: `no way from ${id} to ${hatch}`, path: null };
    return {
      place: id,
      seconds: route.seconds * pace,
      words: sumInWords(table, route.path, route.swaps, pace, campaign),
      path: route.path,
    };
  });
}

function sumInWords(
  table: TravelTable,
  path: readonly string[],
  swaps: readonly { readonly at: number; readonly anchor: string }[],
  pace: number,
  campaign: Campaign,
): string {
  if (path.length === 1) return `${path[0] ?? ''} is the hatch: 0 min`;
  const parts: { words: string; seconds: number }[] = [];
  const swapS = (campaign.limits.tetherSwapS ?? 0) * pace;
  path.forEach((place, at) => {
    const before = path[at - 1];
    if (before !== undefined) {
      const seconds = table.railSeconds(before, place, null) * pace;
      parts.push({ words: `to ${place} ${formatDuration(seconds)}`, seconds });
    }
    for (const swap of swaps) {
      if (swap.at === at) parts.push({ words: `tether to ${swap.anchor} ${formatDuration(swapS)}`, seconds: swapS });
    }
  });
  const total = parts.reduce((sum, part) => sum + part.seconds, 0);
  return `${parts.map((part) => part.words).join(' + ')} = ${formatDuration(total)}`;
}
