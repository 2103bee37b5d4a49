import type { PrebreatheStage } from './prebreathe-protocol.ts';
import { likelyFigures, runPrebreathe, type TissueFigures } from './run-prebreathe.ts';
import type { TissueModel } from './tissue-model.ts';

export type SensitiveFigure = 'half-time' | 'start-nitrogen' | 'limit';

export interface SensitivityRow {
  readonly figure: SensitiveFigure;
  readonly end: 'low' | 'high';
  readonly ratio: number;
  readonly margin: number;
  readonly stillNeededS: number | null;
}

/**
 * What the answer would be at the low and the high end of one figure at a time, all compartments together, the rest at their likely
 * values. A figure without a spread gives two equal rows, which says that its spread was not stated, not that there is none.
 */
export function prebreatheSensitivity(
  stages: readonly PrebreatheStage[],
  model: TissueModel,
): readonly SensitivityRow[] {
  const likely = likelyFigures(model);
  const changes: readonly (readonly [SensitiveFigure, (end: 'low' | 'high') => Partial<TissueFigures>])[] = [
    ['half-time', (end) => ({ halfTimesS: model.compartments.map(({ halfTimeS }) => halfTimeS[end]) })],
    ['start-nitrogen', (end) => ({ startNitrogenPa: model.compartments.map((c) => c.startNitrogenPa[end]) })],
    ['limit', (end) => ({ ratioLimit: model.ratioLimit[end] })],
  ];
  return changes.flatMap(([figure, change]) =>
    (['low', 'high'] as const).map((end) => {
      const { ratio, margin, stillNeededS } = runPrebreathe(stages, model, { ...likely, ...change(end) });
      return { figure, end, ratio, margin, stillNeededS };
    }),
  );
}
