import { requireInRange } from '@handrail/quantity/in-range';

/** Turns to run a thread down (or out): engaged length over pitch. @source definition of pitch, [ISO68] */
export function runDownTurns(engagementM: number, pitchM: number): number {
  return (
    requireInRange('thread engagement', engagementM, { min: 0, max: 1, unit: 'm' }) /
    requireInRange('pitch', pitchM, { min: 0.0002, max: 0.01, unit: 'm' })
  );
}

/** How a powered tool runs a fastener. */
export interface ToolRun {
  /** Speed of the free run, revolutions per second. */
  readonly speedRevPerS: number;
  /** The last turns, driven slower; 0: none. */
  readonly slowTurns: number;
  readonly slowSpeedRevPerS: number;
  /** Setting the tool on, finding the head, reading it off. */
  readonly handlingS: number;
}

/** Seconds to drive `turns` with a tool. */
export function toolDriveS(turns: number, run: ToolRun): number {
  const total = requireInRange('turns', turns, { min: 0, max: 2000, unit: 'turns' });
  const speed = requireInRange('tool speed', run.speedRevPerS, { min: 0.01, max: 20, unit: 'rev/s' });
  const slow = Math.min(total, requireInRange('slow turns', run.slowTurns, { min: 0, max: 2000, unit: 'turns' }));
  const slowSpeed = requireInRange('slow tool speed', run.slowSpeedRevPerS, { min: 0.01, max: 20, unit: 'rev/s' });
  const handling = requireInRange('handling time', run.handlingS, { min: 0, max: 3600, unit: 's' });
  return (total - slow) / speed + slow / slowSpeed + handling;
}

/** How a person in gloves turns something by hand: spells of turning with rests between. All figures are the operator's. */
export interface HandTurning {
  readonly perTurnS: { readonly low: number; readonly likely: number; readonly high: number };
  /** Turns after which the hand rests. */
  readonly turnsPerSpell: number;
  readonly restS: number;
  /** Turns from which tired hands are worth a note on the card. */
  readonly noteFromTurns: number;
  readonly source: string;
}

export interface HandDrive {
  readonly lowS: number;
  readonly likelyS: number;
  readonly highS: number;
  readonly rests: number;
  /** A sentence for the card; null: short enough. */
  readonly note: string | null;
}

/**
 * Time to turn by hand, with rests after each full spell except the last, and a note where the count is long. Latches closed by hand with
 * well over a hundred turns occur: common practice.
 * @checked tests/reference/fastener/drive-time.test.ts
 */
export function handDrive(turns: number, hand: HandTurning): HandDrive {
  const total = requireInRange('turns by hand', turns, { min: 0, max: 2000, unit: 'turns' });
  const spell = requireInRange('turns per spell', hand.turnsPerSpell, { min: 1, max: 2000, unit: 'turns' });
  const rest = requireInRange('rest', hand.restS, { min: 0, max: 3600, unit: 's' });
  const noteFrom = requireInRange('note from turns', hand.noteFromTurns, { min: 1, max: 2000, unit: 'turns' });
  const rests = Math.max(0, Math.ceil(total / spell) - 1);
  const at = (perTurnS: number): number =>
    total * requireInRange('seconds per turn', perTurnS, { min: 0.1, max: 60, unit: 's' }) + rests * rest;
  return {
    lowS: at(hand.perTurnS.low),
    likelyS: at(hand.perTurnS.likely),
    highS: at(hand.perTurnS.high),
    rests,
    note:
      total < noteFrom
        ? null
        : `${Math.round(total)} turns by hand: hands and forearms tire; ${rests === 0 ? 'no rest is planned' : `rest ${rests} times`}, ` +
          'change hands, and offer the rest of it to the partner or a powered tool',
  };
}
