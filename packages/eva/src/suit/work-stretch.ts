import { Fault } from '@handrail/quantity/fault';
import { requireInRange } from '@handrail/quantity/in-range';
import type { SourcedValue } from '@handrail/quantity/sourced-value';

/** A stretch of work at one effort. Half-open [startS, endS), PET seconds. */
export interface WorkStretch {
  readonly startS: number;
  readonly endS: number;
  /** Effort class, a name in the suit's `effortsW`. */
  readonly effort: string;
  /** Names of the loads switched on here, beside those that are always on. Default: none. */
  readonly loads?: readonly string[];
}

export interface SuitPerson {
  readonly id: string;
  readonly bodyMassKg: number;
  /** Multiplies every metabolic rate: this person's own use against the classes, e.g. from earlier excursions. */
  readonly effortFactor: SourcedValue;
}

export interface SupplySpan {
  /** PET at which the suit leaves vehicle supplies: everything starts to fall here. */
  readonly startS: number;
  /** PET at which the person is back on vehicle supplies: end values are taken here. */
  readonly endS: number;
  /** Effort in the gaps between stretches; null: gaps are refused. */
  readonly idleEffort: string | null;
  /** The curves go on beyond `endS` for this long, so that a limit that lies after the planned end is found too. */
  readonly beyondS: number;
  /** Effort assumed there. */
  readonly beyondEffort: string;
}

/**
 * The whole span as stretches in order: what was given, gaps filled with the idle effort, and the time beyond the end.
 * @throws Fault `suit/stretch-outside-span`, `suit/stretches-overlap`, `suit/gap-in-stretches`, `input/out-of-range`
 */
export function coverSpan(stretches: readonly WorkStretch[], span: SupplySpan): readonly WorkStretch[] {
  const day = { min: -7 * 86_400, max: 7 * 86_400, unit: 's' };
  requireInRange('start of suit supplies', span.startS, day);
  requireInRange('end of suit supplies', span.endS, { min: span.startS, max: day.max, unit: 's' });
  requireInRange('time beyond the end', span.beyondS, { min: 0, max: 2 * 86_400, unit: 's' });
  const sorted = [...stretches].sort((a, b) => a.startS - b.startS);
  const covered: WorkStretch[] = [];
  let atS = span.startS;
  const fillTo = (untilS: number): void => {
    if (untilS <= atS) return;
    if (span.idleEffort === null) {
      throw new Fault('suit/gap-in-stretches', `nobody says what is done from ${atS} to ${untilS} s`, {
        values: { fromS: atS, toS: untilS },
        advice: 'give an effort for that time, or an idleEffort for all gaps',
      });
    }
    covered.push({ startS: atS, endS: untilS, effort: span.idleEffort });
  };
  for (const stretch of sorted) {
    if (!(stretch.startS >= span.startS && stretch.endS <= span.endS && stretch.endS > stretch.startS)) {
      throw new Fault(
        'suit/stretch-outside-span',
        `the stretch ${stretch.startS} to ${stretch.endS} s must last and lie within ${span.startS} to ${span.endS} s`,
        { values: { ...stretch, spanStartS: span.startS, spanEndS: span.endS } },
      );
    }
    if (stretch.startS < atS) {
      throw new Fault(
        'suit/stretches-overlap',
        `a stretch starts at ${stretch.startS} s, before the last has ended at ${atS} s`,
        {
          values: { startS: stretch.startS, lastEndS: atS },
        },
      );
    }
    fillTo(stretch.startS);
    covered.push(stretch);
    atS = stretch.endS;
  }
  fillTo(span.endS);
  if (span.beyondS > 0) {
    covered.push({ startS: span.endS, endS: span.endS + span.beyondS, effort: span.beyondEffort });
  }
  return covered;
}
