import type { Campaign, Eva } from '../campaign/campaign.ts';

/**
 * The wall that a window binds: where nobody may be outside in it, both are in before its next interval begins, however late PET 0
 * still comes within its slip.
 * @param petZeroUtcMs PET 0 as planned; absent: as the EVA states
 * @returns whole seconds, rounded to the safe side; 0 where the interval may have begun at PET 0; null: no such window, or none comes
 */
export function indoorsWall(
  campaign: Pick<Campaign, 'windows'>,
  eva: Pick<Eva, 'indoors' | 'egressUtcMs' | 'slipS'>,
  petZeroUtcMs: number = eva.egressUtcMs,
): { readonly petS: number; readonly cause: string } | null {
  const set = campaign.windows.find(({ id }) => id === eva.indoors);
  if (set === undefined) return null;
  const padMs = set.padS * 1000;
  const next = set.intervals.find(([, endMs]) => endMs + padMs > petZeroUtcMs);
  if (next === undefined) return null;
  const latestZeroMs = Math.max(petZeroUtcMs, eva.egressUtcMs + eva.slipS * 1000);
  const petS = Math.max(0, Math.floor((next[0] - padMs - latestZeroMs) / 1000));
  return { petS, cause: `"${set.title}", in which nobody is outside` };
}
