/** The Fulmar campaign as planned with a small budget: what its plan bears, and that each claim can be checked by execution. */
import { prove } from '@handrail/eva/proof/claim/prove';
import type { NetworkOptions } from '@handrail/eva/proof/network/network-draft';
import type { TemporalNetwork } from '@handrail/eva/proof/network/temporal-network';
import { checkControllability } from '@handrail/eva/proof/control/check-controllability';
import { networkStnu } from '@handrail/eva/proof/control/network-stnu';
import { runStrategy } from '@handrail/eva/proof/control/run-strategy';
import { spokenHolds } from '@handrail/eva/proof/control/spoken-holds';
import { flexiblePlan } from '@handrail/eva/proof/network/flexible-plan';
import { describe, expect, it } from 'vitest';
import { plannedFulmar } from '../../support/planned-fulmar.ts';
import { randomFrom } from '../../properties/proof/random-networks.ts';

const { campaign, hardware, timeline } = plannedFulmar();
const stamp = prove(campaign, hardware, timeline, { moveSpread: [0.9, 1.2] });

const draw = (eva: string, options: NetworkOptions): TemporalNetwork => {
  const network = flexiblePlan(campaign, hardware, timeline, eva, { moveSpread: [0.9, 1.2], ...options });
  if (network === null) throw new Error(`no network of ${eva}`);
  return network;
};

describe('the Fulmar plan', () => {
  it('is proved EVA by EVA, with every pair of a change and a need looked at', () => {
    expect(stamp.evas.map(({ eva }) => eva)).toEqual(['mast', 'pump', 'harvest']);
    for (const { pairs, events } of stamp.evas) {
      expect(pairs).toBeGreaterThan(50);
      expect(events).toBeGreaterThan(100);
    }
  });

  it('is free of races with the holds that are proposed', () => {
    for (const { eva, proposedHolds } of stamp.evas) {
      const again = prove(campaign, hardware, timeline, { holds: proposedHolds, mostScale: 0.1 });
      expect(again.evas.find((one) => one.eva === eva)?.raceFree, eva).toBe(true);
    }
  });

  it('says of each conflict a sum that can be done again by hand', () => {
    const conflicts = stamp.evas.flatMap(({ conflict }) => (conflict === null ? [] : [conflict]));
    for (const { chain, shortS, limits } of conflicts) {
      expect(chain.reduce((sum, { seconds }) => sum + seconds, 0)).toBe(-shortS);
      expect(limits.length).toBeGreaterThan(0);
    }
    // All at their 90th percentile at once is more than these three plans bear.
    expect(stamp.evas.filter(({ controllable }) => !controllable).length).toBe(conflicts.length);
  });

  it('keeps all its links in 60 executions of each EVA at the spread that it is said to bear, by spoken holds alone', () => {
    const random = randomFrom(5);
    let tried = 0;
    for (const { eva, scale, proposedHolds } of stamp.evas) {
      if (scale === null) continue;
      const network = draw(eva, { spreadScale: scale, holds: proposedHolds });
      const stnu = networkStnu(network);
      const decided = checkControllability(stnu);
      if (!decided.controllable) throw new Error(`${eva} is not controllable at ${scale}`);
      expect(
        checkControllability(networkStnu(draw(eva, { spreadScale: scale + 0.02, holds: proposedHolds }))).controllable,
      ).toBe(false);
      const holds = spokenHolds(network, decided.strategy, 0, 30).map(({ wait }) => wait);
      for (let run = 0; run < 60; run++) {
        const lengths = stnu.contingents.map(({ leastS, mostS }) =>
          random(3) === 0 ? mostS : leastS + random(mostS - leastS + 1),
        );
        const execution = runStrategy(stnu, holds, lengths);
        expect(execution.ok ? '' : `${eva}: ${execution.words}`).toBe('');
        tried++;
      }
    }
    expect(tried).toBeGreaterThanOrEqual(60);
  });
});
