import { generateCampaign } from './campaign-generator.ts';
import type { Instance } from './instances.ts';

/** `campaigns:SIZE`, `campaigns:SIZE:SEEDS` (how many, ten unless told), `campaigns:SIZE:SEEDS:named` with every role named. */
export function campaignInstances(request: string): Instance[] {
  const [, size, seeds = '10', roles = 'open'] = request.split(':');
  const stints = Number(size);
  const count = Number(seeds);
  if (
    !Number.isInteger(stints) ||
    stints < 6 ||
    !Number.isInteger(count) ||
    count < 1 ||
    !['open', 'named'].includes(roles)
  ) {
    throw new Error(`not a request for campaigns: ${request}; say campaigns:SIZE[:SEEDS[:named]] with SIZE at least 6`);
  }
  const named = roles === 'named';
  return Array.from({ length: count }, (_, i) => ({
    name: `campaign-${stints}-${i + 1}${named ? '-named' : ''}`,
    set: `campaigns of ${stints} stints, ${named ? 'roles named' : 'open roles'}`,
    sense: 1,
    bestKnown: null,
    load: () => generateCampaign({ stints, seed: i + 1, named }),
  }));
}
