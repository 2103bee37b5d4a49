import { postSum } from '../constraints/linear.ts';
import type { Objective, Solution } from '../model/model.ts';
import type { Compilation } from './compilation.ts';
import type { Term } from './kernel.ts';

/** Past this the engine's 32-bit bounds could not hold a sum. */
const LARGEST = 1 << 29;

/**
 * One term per level that is at least the level's expression: the variable itself where the expression is one variable, else
 * a fresh variable and a sum. Minimising the term minimises the expression.
 */
export function postObjectives(at: Compilation): Term[] {
  return at.model.objectives.map((objective, level) => {
    const terms = objective.minimise.terms.filter(({ coefficient }) => coefficient !== 0);
    const [only] = terms;
    if (objective.minimise.terms.length === 1 && only !== undefined && only.coefficient === 1) {
      const { variable, offset } = at.term(only.variable);
      return { variable, offset: offset + objective.minimise.constant };
    }
    let min = 0;
    let max = 0;
    for (const { coefficient, variable } of terms) {
      const { store } = at.kernel;
      const term = at.term(variable);
      const ends = [store.min(term.variable) + term.offset, store.max(term.variable) + term.offset].map(
        (x) => x * coefficient,
      );
      min += Math.min(...ends);
      max += Math.max(...ends);
    }
    if (Math.abs(min) > LARGEST || Math.abs(max) > LARGEST) {
      throw new RangeError(`objective ${objective.name}: its values ${min}..${max} go past ±${LARGEST}`);
    }
    const variable = at.kernel.newVariable(min, max);
    at.objectiveVariables.push({ variable, level });
    postSum(terms, 0, [], -1, 'objective', at, [{ coefficient: -1, engineVariable: variable }]);
    return { variable, offset: objective.minimise.constant };
  });
}

export function valueOf({ minimise }: Objective, solution: Solution): number {
  return minimise.terms.reduce(
    (sum, { coefficient, variable }) => sum + coefficient * (solution[variable] as number),
    minimise.constant,
  );
}
