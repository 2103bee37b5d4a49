import { checkSolution } from '@handrail/solver-checker/check-solution';
import { Run } from '@handrail/solver/engine/run';
import { solve } from '@handrail/solver/engine/solve';
import { ModelBuilder, endOf, startOf } from '@handrail/solver/model/build-model';
import type { Model } from '@handrail/solver/model/model';
import { describe, expect, it } from 'vitest';
import { Dice } from './random-model.ts';

/** Tasks with arcs forward, two resources and a finish: what schedule generation applies to. */
function randomProject(seed: number): Model {
  const dice = new Dice(seed);
  const b = new ModelBuilder(`project ${seed}`, 60);
  const tasks = Array.from({ length: dice.between(5, 9) }, (_, i) =>
    b.interval(`task ${i}`, dice.between(0, 4), { startMin: dice.chance(20) ? dice.between(1, 4) : 0 }),
  );
  const finish = b.interval('finish', 0);
  tasks.forEach((task, i) => {
    b.post({ kind: 'precedence', tag: null, from: endOf(task), to: startOf(finish), lag: 0, when: [] });
    for (const later of tasks.slice(i + 1)) {
      if (!dice.chance(20)) continue;
      b.post({
        kind: 'precedence',
        tag: null,
        from: startOf(task),
        to: startOf(later),
        lag: dice.between(-2, 5),
        when: [],
      });
    }
  });
  for (let resource = 0; resource < 2; resource++) {
    const members = tasks.map((interval) => ({ interval, demand: dice.between(0, 3) }));
    b.post({ kind: 'cumulative', tag: null, capacity: dice.between(3, 5), members });
  }
  b.minimise('finish', { terms: [{ coefficient: 1, variable: b.intervalAt(finish).end }], constant: 0 });
  return b.build();
}

describe('projects', () => {
  it('come out the same with generated schedules as by search alone, and every plan on the way is one', () => {
    for (let seed = 0; seed < 150; seed++) {
      const model = randomProject(seed);
      const steps = solve(model, { seed, conflictBudget: 50_000 });
      let step = steps.next();
      for (; !step.done; step = steps.next()) {
        if (step.value.kind === 'incumbent') expect(checkSolution(model, step.value.solution)).toEqual([]);
      }
      const alone = new Run(model, { seed: 1, conflictBudget: 50_000 }, { withoutGenerator: true });
      for (const _ of alone.go());
      const reached = step.value.levels.map(({ value, proved }) => [value, proved]);
      expect({ seed, reached }).toEqual({
        seed,
        reached: alone.result().levels.map(({ value, proved }) => [value, proved]),
      });
      expect(step.value.status).toBe('optimal');
    }
  });
});
