import { Fault } from '@handrail/quantity/fault';
import type { Hardware, Step, Stint } from '../campaign/campaign.ts';
import type { KindsLibrary } from '../kinds/kinds-library.ts';
import { stepVerbs } from '../kinds/step-verbs.ts';
import type { EvaTimeline } from '../timeline/timeline.ts';
import type { WorkStretch } from './work-stretch.ts';

/** Effort classes for what the kinds library does not say. All stated by the operator; each must be a class of the suit. */
export interface EffortChoice {
  readonly moving: string;
  readonly passing: string;
  /** For steps that somebody else of the stint does. */
  readonly helping: string;
  /** For steps whose verb the library does not know. */
  readonly unknown: string;
  /** The library's three classes in the suit's own names. */
  readonly classes: Readonly<Record<'low' | 'moderate' | 'high', string>>;
}

const HEAVIER = ['low', 'moderate', 'high'] as const;

/**
 * A person's work stretches in one EVA, for `supplyUse`: hatch passages, moves, and stints step by step. A step with several pieces takes
 * the heaviest effort of its verbs for all of it. Neighbours of equal effort are joined; gaps are left as gaps.
 * @param stints all stints of the campaign by key
 * @returns in order of time, without overlap; empty: the person does nothing in this EVA
 * @throws Fault `suit/stint-unknown` where the timeline names a stint that the campaign does not have; `suit/person-in-two-places`
 * @checked tests/reference/suit/work-from-timeline.test.ts
 */
export function workFromTimeline(
  eva: EvaTimeline,
  stints: ReadonlyMap<string, Stint>,
  hardware: ReadonlyMap<string, Hardware>,
  library: KindsLibrary,
  person: string,
  choice: EffortChoice,
): readonly WorkStretch[] {
  const pieces: WorkStretch[] = [];
  for (const { person: who, startS, endS } of eva.passages) {
    if (who === person) pieces.push({ startS, endS, effort: choice.passing });
  }
  for (const { who, startS, endS } of eva.moves) {
    if (who === person) pieces.push({ startS, endS, effort: choice.moving });
  }
  for (const planned of eva.stints) {
    const stint = stints.get(planned.stint);
    if (stint === undefined) {
      throw new Fault('suit/stint-unknown', `the timeline has the stint ${planned.stint}, the campaign has not`, {
        values: { stint: planned.stint },
      });
    }
    stint.roles.forEach((role, index) => {
      if (planned.assigned[index] !== person) return;
      for (let step = role.fromStep; step < role.toStep; step++) {
        const sentence = stint.steps[step];
        const startS = step === 0 ? planned.startS : planned.stepEndsS[step - 1];
        const endS = planned.stepEndsS[step];
        if (sentence === undefined || startS === undefined || endS === undefined) continue;
        const effort = sentence.by === role.name ? effortOf(sentence, hardware, library, choice) : choice.helping;
        pieces.push({ startS, endS, effort });
      }
    });
  }
  return joined(pieces, person);
}

function effortOf(
  step: Step,
  hardware: ReadonlyMap<string, Hardware>,
  library: KindsLibrary,
  choice: EffortChoice,
): string {
  const { known, unknown } = stepVerbs(step, hardware, library);
  const heaviest = HEAVIER.findLast((effort) => known.some(({ verb }) => verb.effort === effort));
  return heaviest === undefined || unknown.length > 0 ? choice.unknown : choice.classes[heaviest];
}

function joined(pieces: readonly WorkStretch[], person: string): readonly WorkStretch[] {
  const work: WorkStretch[] = [];
  const lasting = pieces.filter(({ startS, endS }) => endS > startS).sort((a, b) => a.startS - b.startS);
  for (const piece of lasting) {
    const last = work.at(-1);
    if (last !== undefined && piece.startS < last.endS) {
      throw new Fault('suit/person-in-two-places', `${person} has two things to do from ${piece.startS} s`, {
        values: { person, atS: piece.startS },
        advice: 'check the timeline first; supplies are reckoned for a timeline that can be flown',
      });
    }
    if (last !== undefined && last.endS === piece.startS && last.effort === piece.effort) {
      work[work.length - 1] = { ...last, endS: piece.endS };
    } else work.push(piece);
  }
  return work;
}
