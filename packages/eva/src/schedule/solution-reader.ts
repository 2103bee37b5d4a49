import type { IntervalId, Literal, Solution } from '@handrail/solver/model/model';
import type { StintDraft } from './eva-draft.ts';
import type { EvaModel } from './eva-model.ts';
import { secondsOf } from './grid.ts';
import type { TeamMode } from './team-mode.ts';

/** A solution read through the intervals of its model; times in seconds of PET. */
export class SolutionReader {
  private readonly evaModel: EvaModel;
  private readonly solution: Solution;

  constructor(evaModel: EvaModel, solution: Solution) {
    this.evaModel = evaModel;
    this.solution = solution;
  }

  holds(literal: Literal): boolean {
    return this.solution[literal.variable] === literal.holds;
  }

  isPresent(interval: IntervalId): boolean {
    const { presence } = this.evaModel.draft.builder.intervalAt(interval);
    return presence === null || this.holds(presence);
  }

  startS(interval: IntervalId): number {
    return secondsOf(this.solution[this.evaModel.draft.builder.intervalAt(interval).start] as number);
  }

  endS(interval: IntervalId): number {
    return secondsOf(this.solution[this.evaModel.draft.builder.intervalAt(interval).end] as number);
  }

  modeOf(stint: StintDraft): TeamMode | null {
    return stint.modes.find(({ interval }) => this.isPresent(interval))?.mode ?? null;
  }
}
