import { requireInRange } from '@handrail/quantity/in-range';
import type { Advice } from './drive-advice.ts';
import type { DriveWindow } from './drive-window.ts';

export type ReleaseVerdict = 'released' | 'not-yet-free' | 'will-not-break-away' | 'binding';

export interface ReleaseReading {
  readonly turns: number;
  /** Greatest torque while it broke away; null: not logged. */
  readonly breakawayNm: number | null;
  /** Torque still felt over the last turns; null: it ran free. */
  readonly runningNm: number | null;
}

export interface ReleaseJudgement {
  readonly verdict: ReleaseVerdict;
  readonly why: string;
  readonly tryNext: readonly Advice[];
}

const LADDERS: Readonly<Record<ReleaseVerdict, readonly Advice[]>> = {
  released: [],
  'not-yet-free': [
    { say: 'Drive on in the same direction and count from here', asks: false },
    { say: 'Take load off the box while turning', asks: false },
  ],
  'will-not-break-away': [
    { say: 'Check direction, socket and torque setting', asks: false },
    { say: 'Hold the torque for a few seconds, let go, try again', asks: false },
    { say: 'Tighten a touch within the drive window, then loosen', asks: true },
    { say: 'Take load off the box, loosen the neighbours by a turn, try again', asks: false },
    { say: 'Raise the torque one agreed step, with a manual wrench if the tool ends there', asks: true },
  ],
  binding: [
    { say: 'Stop: run it back in by a turn or two, then out again slowly', asks: false },
    { say: 'Look for debris or a bent thread; wipe, and work it in and out', asks: false },
    { say: 'Report it: go on only with an agreed torque', asks: true },
  ],
};

/**
 * Judges a logged release. `most` torque is what may be put on it while loosening.
 * released: as many turns as the thread engages at least, and no torque left.
 * @throws Fault `input/out-of-range`
 */
export function judgeRelease(window: DriveWindow, mostNm: number, reading: ReleaseReading): ReleaseJudgement {
  const counted = requireInRange('turns logged', reading.turns, { min: 0, max: 5000, unit: 'turns' });
  const most = requireInRange('most torque for loosening', mostNm, { min: 0, max: 5000, unit: 'N·m' });
  for (const [name, torque] of [
    ['breakaway torque', reading.breakawayNm],
    ['running torque', reading.runningNm],
  ] as const) {
    if (torque !== null) requireInRange(name, torque, { min: 0, max: 5000, unit: 'N·m' });
  }
  const moved = counted > 0;
  const verdict: ReleaseVerdict = !moved
    ? 'will-not-break-away'
    : (reading.runningNm ?? 0) >= most
      ? 'binding'
      : counted < window.turns.low || (reading.runningNm ?? 0) > 0
        ? 'not-yet-free'
        : 'released';
  const why =
    `${Math.round(counted * 10) / 10} turns logged, at least ${Math.round(window.turns.low * 10) / 10} free it; ` +
    (reading.runningNm === null
      ? 'it ran free at the end'
      : `${Math.round(reading.runningNm * 10) / 10} N·m still felt, ${Math.round(most * 10) / 10} N·m is the most allowed`);
  return { verdict, why, tryNext: LADDERS[verdict] };
}
