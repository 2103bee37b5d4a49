import { nitrogenBreathedPa } from './breathed-gas.ts';
import { type PrebreatheStage, requireStages } from './prebreathe-protocol.ts';
import {
  type Compartment,
  NOT_MEDICAL_ADVICE,
  requireTissueModel,
  stageRatePerS,
  type TissueModel,
} from './tissue-model.ts';
import { tissueNitrogenPa, timeToTensionS } from './tissue-nitrogen.ts';

/** Tensions at the end of a stage, one per compartment. */
export interface StageEnd {
  readonly stage: string;
  readonly endS: number;
  readonly tissuePa: readonly number[];
  /** Greatest tissue nitrogen over suit pressure. */
  readonly ratio: number;
}

export interface PrebreatheResult {
  readonly ends: readonly StageEnd[];
  readonly tissuePa: readonly number[];
  readonly ratio: number;
  /** Id of the compartment with the greatest ratio. */
  readonly leading: string;
  readonly limit: number;
  /** limit − ratio, neither rounded; negative: above the limit. */
  readonly margin: number;
  readonly holds: boolean;
  /** More oxygen needed at rest after the last stage, s; 0: none; null: never reached that way. */
  readonly stillNeededS: number | null;
  /** Sentences that must stand beside the figures. */
  readonly notes: readonly string[];
}

/** One choice of the uncertain figures. */
export interface TissueFigures {
  readonly halfTimesS: readonly number[];
  readonly startNitrogenPa: readonly number[];
  readonly ratioLimit: number;
}

export function likelyFigures(model: TissueModel): TissueFigures {
  return {
    halfTimesS: model.compartments.map(({ halfTimeS }) => halfTimeS.likely),
    startNitrogenPa: model.compartments.map(({ startNitrogenPa }) => startNitrogenPa.likely),
    ratioLimit: model.ratioLimit.likely,
  };
}

/**
 * Tissue nitrogen through the stages, and the ratio at suit pressure against the operator's limit.
 *
 * Method: one exponential per compartment, linear pressure ramps solved exactly. It says nothing of bubbles or of risk; published
 * protocols are not all below a published limit, and both figures are shown as they are.
 * @param figures the model's likely ones unless a sensitivity asks otherwise
 * @throws Fault `input/out-of-range`, `prebreathe/no-stages`, `prebreathe/pressure-jumps`, `prebreathe/no-compartments`
 * @source [E14] Eq. 2, 3; [SCHREINER]
 * @checked tests/reference/prebreathe/published-ratios.test.ts
 */
export function runPrebreathe(
  stages: readonly PrebreatheStage[],
  model: TissueModel,
  figures: TissueFigures = likelyFigures(model),
): PrebreatheResult {
  requireStages(stages);
  requireTissueModel(model);
  const exerciseRate = model.exerciseRatePerSPerVo2?.likely ?? null;
  let tissuePa = [...figures.startNitrogenPa];
  let atS = 0;
  const ratioOf = (tensions: readonly number[]): number => Math.max(...tensions) / model.suitPressurePa;
  const ends: StageEnd[] = [];
  for (const stage of stages) {
    const from = nitrogenBreathedPa(stage.startPressurePa, stage.oxygenFraction, model.vapourPa);
    const to = nitrogenBreathedPa(stage.endPressurePa, stage.oxygenFraction, model.vapourPa);
    if (stage.durationS > 0) {
      tissuePa = tissuePa.map((tension, i) =>
        tissueNitrogenPa(
          tension,
          from,
          (to - from) / stage.durationS,
          stage.durationS,
          stageRatePerS(figures.halfTimesS[i] as number, stage.exerciseVo2, exerciseRate),
        ),
      );
    }
    atS += stage.durationS;
    ends.push({ stage: stage.title, endS: atS, tissuePa, ratio: ratioOf(tissuePa) });
  }
  const ratio = ratioOf(tissuePa);
  const leading = model.compartments[tissuePa.indexOf(Math.max(...tissuePa))] as Compartment;
  return {
    ends,
    tissuePa,
    ratio,
    leading: leading.id,
    limit: figures.ratioLimit,
    margin: figures.ratioLimit - ratio,
    holds: compared(ratio, model.comparedDecimals) <= figures.ratioLimit,
    stillNeededS: oxygenStillNeededS(tissuePa, model, figures),
    notes: notesFor(stages, model),
  };
}

/**
 * Pure oxygen at rest that brings every compartment to the limit, s: the slowest of them counts. 0: all are there. null: never.
 */
export function oxygenStillNeededS(
  tissuePa: readonly number[],
  model: TissueModel,
  figures: TissueFigures = likelyFigures(model),
): number | null {
  let longest = 0;
  for (let i = 0; i < tissuePa.length; i++) {
    const ratePerS = stageRatePerS(figures.halfTimesS[i] as number, null, null);
    const needed = timeToTensionS(tissuePa[i] as number, 0, figures.ratioLimit * model.suitPressurePa, ratePerS);
    if (needed === null) return null;
    longest = Math.max(longest, needed);
  }
  return longest;
}

function compared(ratio: number, decimals: number | null): number {
  return decimals === null ? ratio : Number(ratio.toFixed(decimals));
}

function notesFor(stages: readonly PrebreatheStage[], model: TissueModel): readonly string[] {
  const notes = [NOT_MEDICAL_ADVICE, `Limit from ${model.ratioLimit.source}.`];
  if (model.exerciseRatePerSPerVo2 === null && stages.some(({ exerciseVo2 }) => exerciseVo2 !== null)) {
    notes.push('Exercise is counted as rest: the model states no exercise rate.');
  }
  if (model.comparedDecimals !== null) notes.push(`The ratio is compared at ${model.comparedDecimals} decimals.`);
  notes.push(
    model.vapourPa === 0
      ? 'Dry convention: no water vapour is taken off the nitrogen breathed.'
      : `Water vapour of ${Math.round(model.vapourPa)} Pa is taken off the nitrogen breathed.`,
  );
  return notes;
}
