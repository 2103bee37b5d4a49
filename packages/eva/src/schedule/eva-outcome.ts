/** What planning one EVA of the campaign came to. */
import type { ProblemInput } from './eva-problem.ts';
import type { EvaPlan } from './plan-eva.ts';

export interface EvaOutcome {
  readonly eva: string;
  readonly input: ProblemInput;
  readonly plan: EvaPlan;
}
