import { Run } from '@handrail/solver/engine/run';
import { PARTS, type RunSettings } from '@handrail/solver/engine/run-settings';
import type { SolveResult } from '@handrail/solver/model/answer';
import type { Model } from '@handrail/solver/model/model';
import { describe, expect, it } from 'vitest';
import { enumerateSolutions } from '../../reference/solver-oracle/enumerate-solutions.ts';
import { randomModel } from '../../properties/solver-engine/random-model.ts';
import { randomRoute } from '../../properties/solver-engine/random-route.ts';

function run(model: Model, settings: RunSettings): SolveResult {
  const engine = new Run(model, { seed: 3, conflictBudget: 50_000 }, settings);
  for (const _ of engine.go());
  return engine.result();
}

describe('each part that only makes the search faster can be left out', () => {
  const models = [
    ...Array.from({ length: 80 }, (_, i) => randomModel(40_000 + i)),
    ...Array.from({ length: 12 }, (_, i) => randomRoute(100 + i)),
  ];
  const truths = models.map((model) => enumerateSolutions(model).levels);

  it.each(PARTS)('the optimum found %s is that of trying every assignment', (part) => {
    const found = models.map((model) => {
      const result = run(model, { [part]: true });
      return result.status === 'optimal' ? result.levels.map(({ value }) => value) : null;
    });
    expect(found).toEqual(truths);
  });
});
