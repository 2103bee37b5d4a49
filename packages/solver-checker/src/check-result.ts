import type { SolveResult } from '@handrail/solver/model/answer';
import type { Model } from '@handrail/solver/model/model';
import { checkSolution } from './check-solution.ts';
import { evaluateObjectives } from './evaluate-objectives.ts';
import type { Violation } from './violation.ts';

/**
 * Everything in an answer that does not hold together: the solution itself, the value claimed for each level, bounds that
 * lie above the value, levels called proved while bound and value differ, a status at odds with them. What no look at
 * the answer alone can tell, that a bound is right, is the matter of the proof.
 */
export function checkResult(model: Model, result: SolveResult): Violation[] {
  const { status, solution, levels } = result;
  const violations: Violation[] = [];
  const claim = (message: string) => violations.push({ kind: 'claim', constraint: null, tag: null, message });
  const wantsSolution = status === 'optimal' || status === 'feasible';
  if (wantsSolution !== (solution !== null))
    claim(`status ${status} ${solution === null ? 'without' : 'with'} a solution`);
  if (solution === null) return violations;
  violations.push(...checkSolution(model, solution));
  if (violations.some(({ kind }) => kind === 'shape')) return violations;
  const values = evaluateObjectives(model, solution);
  if (levels.length !== values.length) claim(`${levels.length} levels reported for ${values.length} objectives`);
  levels.forEach(({ objective, value, bound, proved }, level) => {
    if (value !== values[level]) claim(`${objective} is ${values[level]} in the solution, the answer says ${value}`);
    if (value !== null && bound > value) claim(`the bound ${bound} of ${objective} is above its value ${value}`);
    if (proved && bound !== value) claim(`${objective} is called proved with value ${value} and bound ${bound}`);
  });
  if (status === 'optimal' && levels.some(({ proved }) => !proved)) claim('called optimal with a level not proved');
  return violations;
}
