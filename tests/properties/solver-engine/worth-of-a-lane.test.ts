import { checkProof } from '@handrail/solver-checker/check-proof';
import { Run } from '@handrail/solver/engine/run';
import type { RunSettings } from '@handrail/solver/engine/run-settings';
import type { Model } from '@handrail/solver/model/model';
import { KeptLines } from '@handrail/solver/proof/kept-lines';
import { describe, expect, it } from 'vitest';
import { randomRound } from './random-round.ts';

function prove(model: Model, settings: RunSettings = {}): { readonly values: unknown; readonly lines: string[] } {
  const proof = new KeptLines();
  const run = new Run(model, { seed: 1, proof }, settings);
  for (const _ of run.go());
  const { levels, status } = run.result();
  return { values: status === 'optimal' ? levels.map(({ value }) => value) : status, lines: [...proof] };
}

const SEEDS = Array.from({ length: 40 }, (_, seed) => seed);

describe('what a round through places is worth', () => {
  it('is at most what going every round finds, and that is found, with a proof that the checker accepts', () => {
    let spoke = 0;
    for (const seed of SEEDS) {
      const { model, best } = randomRound(seed);
      const { values, lines } = prove(model, { checksReasons: true });
      expect({ seed, values }).toEqual({ seed, values: [0 - best[0], best[1]] });
      expect({ seed, refusal: checkProof(model, lines).refusal }).toEqual({ seed, refusal: null });
      if (lines.some((line) => line.includes(' worth/'))) spoke++;
    }
    // The bound that this is about has to have had its say.
    expect(spoke).toBeGreaterThan(SEEDS.length / 2);
  });

  it('comes out the same without the bound on it', () => {
    for (const seed of SEEDS.slice(0, 10)) {
      const { model, best } = randomRound(seed);
      expect({ seed, values: prove(model, { withoutRouteWorths: true }).values }).toEqual({
        seed,
        values: [0 - best[0], best[1]],
      });
    }
  });

  it('is not believed to be less than that, whatever the walks are said to remember', () => {
    let tried = 0;
    for (const seed of SEEDS) {
      const { model, best } = randomRound(seed);
      const { lines } = prove(model);
      const at = lines.findIndex((line) => / worth\/.* -> \d+>=-?\d+$/.test(line));
      if (at < 0) continue;
      tried++;
      const line = lines[at] as string;
      const wrong = line.replace(/>=-?\d+$/, `>=${1 - best[0]}`);
      const { refusal } = checkProof(model, lines.with(at, wrong));
      expect({ seed, line: refusal?.line }).toEqual({ seed, line: at + 1 });
    }
    expect(tried).toBeGreaterThan(10);
  });
});
