import { Fault } from '@handrail/quantity/fault';
import { requireInRange } from '@handrail/quantity/in-range';

/**
 * What a stage is, for counting: `oxygen` counts as pre-breathe; `break` is time off oxygen inside a pre-breathe and must be paid back;
 * `hold` is time at a staged pressure or in cabin air, which neither counts nor interrupts.
 */
export type StageRole = 'oxygen' | 'break' | 'hold';

export interface PrebreatheStage {
  readonly title: string;
  readonly role: StageRole;
  /** Absolute; the change within a stage is linear. */
  readonly startPressurePa: number;
  readonly endPressurePa: number;
  readonly oxygenFraction: number;
  readonly durationS: number;
  /** Oxygen uptake while exercising, mL/kg/min; null: at rest. */
  readonly exerciseVo2: number | null;
}

/** A stage as a published outline gives it: `null` is what the source leaves to the operator. */
export interface OutlineStage extends Omit<PrebreatheStage, 'durationS' | 'exerciseVo2'> {
  readonly durationS: number | null;
  /** `by-the-person`: the source states it against the person's own peak. */
  readonly exerciseVo2: number | null | 'by-the-person';
}

/**
 * The stages of an outline, with every gap filled by the operator.
 * @param fills by stage title: minutes the source does not give, oxygen uptake it states only against the person's peak
 * @throws Fault `prebreathe/stage-incomplete` naming the stages that still lack a figure
 */
export function completeProtocol(
  outline: readonly OutlineStage[],
  fills: Readonly<Record<string, { readonly durationS?: number; readonly exerciseVo2?: number }>>,
): readonly PrebreatheStage[] {
  const lacking: string[] = [];
  const stages = outline.map((stage): PrebreatheStage => {
    const fill = Object.hasOwn(fills, stage.title) ? fills[stage.title] : undefined;
    const durationS = stage.durationS ?? fill?.durationS;
    const exerciseVo2 = stage.exerciseVo2 === 'by-the-person' ? fill?.exerciseVo2 : stage.exerciseVo2;
    if (durationS === undefined) lacking.push(`${stage.title}: minutes`);
    if (exerciseVo2 === undefined) lacking.push(`${stage.title}: oxygen uptake`);
    return { ...stage, durationS: durationS ?? 0, exerciseVo2: exerciseVo2 ?? null };
  });
  if (lacking.length > 0) {
    throw new Fault('prebreathe/stage-incomplete', `the protocol leaves to the operator: ${lacking.join('; ')}`, {
      values: { lacking },
      advice: 'give these figures; they are never filled in',
    });
  }
  return requireStages(stages);
}

/**
 * The same stages if they can be computed with.
 * @throws Fault `input/out-of-range`, `prebreathe/no-stages`, `prebreathe/pressure-jumps`
 */
export function requireStages(stages: readonly PrebreatheStage[]): readonly PrebreatheStage[] {
  if (stages.length === 0) throw new Fault('prebreathe/no-stages', 'a pre-breathe needs at least one stage');
  for (let i = 0; i < stages.length; i++) {
    const stage = stages[i] as PrebreatheStage;
    const named = (what: string) => `${stage.title}: ${what}`;
    requireInRange(named('start pressure'), stage.startPressurePa, { min: 10_000, max: 150_000, unit: 'Pa' });
    requireInRange(named('end pressure'), stage.endPressurePa, { min: 10_000, max: 150_000, unit: 'Pa' });
    requireInRange(named('oxygen fraction'), stage.oxygenFraction, { min: 0.1, max: 1, unit: '1' });
    requireInRange(named('time'), stage.durationS, { min: 0, max: 7 * 86_400, unit: 's' });
    if (stage.exerciseVo2 !== null) {
      requireInRange(named('oxygen uptake'), stage.exerciseVo2, { min: 0, max: 80, unit: 'mL/kg/min' });
    }
    const before = stages[i - 1];
    if (before !== undefined && Math.abs(before.endPressurePa - stage.startPressurePa) > 1) {
      throw new Fault(
        'prebreathe/pressure-jumps',
        `${stage.title} starts at ${stage.startPressurePa} Pa, but ${before.title} ends at ${before.endPressurePa} Pa`,
        { values: { stage: stage.title, fromPa: before.endPressurePa, toPa: stage.startPressurePa } },
      );
    }
  }
  return stages;
}
