import { Fault } from '@handrail/quantity/fault';
import { requireInRange } from '@handrail/quantity/in-range';
import type { SourcedValue } from '@handrail/quantity/sourced-value';
import { type EnergyEquivalent, RESPIRATORY_QUOTIENT_RANGE } from './gas-exchange.ts';
import { type InspiredCurve, inspiredRange } from './inspired-carbon-dioxide.ts';
import type { GasLaw } from './oxygen-bottle.ts';
import { SUIT_CONSTANTS, type SuitConstant } from './suit-constants.ts';

/** An electrical load. `always`: on from the start; else only in the stretches that name it. */
export interface SuitLoad {
  readonly powerW: SourcedValue;
  readonly always: boolean;
}

/** A second oxygen pack for coming home in trouble: its gas runs out at a set flow. */
export interface SecondaryOxygen {
  readonly volumeM3: SourcedValue;
  readonly startPressurePa: SourcedValue;
  readonly reservePressurePa: SourcedValue;
  readonly temperatureK: SourcedValue;
  readonly flowKgPerS: SourcedValue;
}

/**
 * Everything the supply engine knows of a suit. Nothing is built in: each constant is stated with its source by whoever owns the
 * suit, and may be edited. Made only by `completeSuit`.
 */
export interface SuitSpecification {
  readonly id: string;
  readonly gasLaw: GasLaw;
  readonly energyEquivalent: EnergyEquivalent;
  readonly constants: Readonly<Record<SuitConstant, SourcedValue>>;
  /** Metabolic rate in W by effort class ("low", "moderate", "high", or the operator's own names). */
  readonly effortsW: Readonly<Record<string, SourcedValue>>;
  readonly loads: Readonly<Record<string, SuitLoad>>;
  /** null: never measured, so nothing is claimed about CO2 breathed in. */
  readonly inspiredCurve: InspiredCurve | null;
  /** null: the suit has none. */
  readonly secondaryOxygen: SecondaryOxygen | null;
}

/** A specification as it may arrive from a file: anything may still be missing. */
export interface SuitDraft {
  readonly id: string;
  readonly gasLaw?: GasLaw | undefined;
  readonly energyEquivalent?: EnergyEquivalent | undefined;
  readonly constants?: Partial<Readonly<Record<SuitConstant, SourcedValue>>> | undefined;
  readonly effortsW?: Readonly<Record<string, SourcedValue>> | undefined;
  readonly loads?: Readonly<Record<string, SuitLoad>> | undefined;
  readonly inspiredCurve?: InspiredCurve | null | undefined;
  readonly secondaryOxygen?: SecondaryOxygen | null | undefined;
}

const EFFORT_RANGE = { min: 0, max: 1200, unit: 'W' } as const;
const SECONDARY_RANGES = {
  volumeM3: SUIT_CONSTANTS.oxygenVolumeM3,
  startPressurePa: SUIT_CONSTANTS.oxygenStartPressurePa,
  reservePressurePa: SUIT_CONSTANTS.oxygenReservePressurePa,
  temperatureK: SUIT_CONSTANTS.oxygenTemperatureK,
  flowKgPerS: { min: 1e-7, max: 0.01, unit: 'kg/s' },
} as const;

/**
 * Checks a draft and gives the specification. A suit with a gap is refused: a supply that is not stated is never filled in.
 * @throws Fault `suit/constant-missing` naming every missing field with its unit; `input/out-of-range`; `suit/reserve-above-start`;
 *   `input/source-missing` where a value has no source
 */
export function completeSuit(draft: SuitDraft): SuitSpecification {
  const { gasLaw, energyEquivalent } = draft;
  const constants = draft.constants ?? {};
  const missing: string[] = (Object.keys(SUIT_CONSTANTS) as SuitConstant[]).filter(
    (name) => constants[name] === undefined,
  );
  if (gasLaw === undefined) missing.push('gasLaw');
  if (energyEquivalent === undefined) missing.push('energyEquivalent');
  if (draft.effortsW === undefined || Object.keys(draft.effortsW).length === 0) missing.push('effortsW');
  if (draft.loads === undefined) missing.push('loads');
  if (draft.inspiredCurve === undefined) missing.push('inspiredCurve');
  if (draft.secondaryOxygen === undefined) missing.push('secondaryOxygen');
  if (missing.length > 0 || gasLaw === undefined || energyEquivalent === undefined) {
    throw new Fault('suit/constant-missing', `suit ${draft.id} does not state ${missing.map(described).join('; ')}`, {
      values: { suit: draft.id, missing },
      advice: `state ${missing.join(', ')} with a source; a suit's figures are never filled in`,
    });
  }
  const complete = constants as Readonly<Record<SuitConstant, SourcedValue>>;
  for (const name of Object.keys(SUIT_CONSTANTS) as SuitConstant[]) {
    requireSourced(draft.id, name, complete[name], SUIT_CONSTANTS[name]);
  }
  requireSourced(
    draft.id,
    'respiratoryQuotient',
    complete.respiratoryQuotient,
    RESPIRATORY_QUOTIENT_RANGE[energyEquivalent],
  );
  for (const [effort, value] of Object.entries(draft.effortsW ?? {})) {
    requireSourced(draft.id, `effort ${effort}`, value, EFFORT_RANGE);
  }
  for (const [load, { powerW }] of Object.entries(draft.loads ?? {})) {
    requireSourced(draft.id, `load ${load}`, powerW, { min: 0, max: 5000, unit: 'W' });
  }
  if (draft.inspiredCurve != null) inspiredRange(draft.inspiredCurve);
  if (draft.secondaryOxygen != null) {
    for (const name of Object.keys(SECONDARY_RANGES) as (keyof SecondaryOxygen)[]) {
      requireSourced(draft.id, `secondaryOxygen.${name}`, draft.secondaryOxygen[name], SECONDARY_RANGES[name]);
    }
    requireReserveBelow(
      draft.id,
      'secondary oxygen',
      draft.secondaryOxygen.reservePressurePa,
      draft.secondaryOxygen.startPressurePa,
      'Pa',
    );
  }
  requireReserveBelow(draft.id, 'oxygen', complete.oxygenReservePressurePa, complete.oxygenStartPressurePa, 'Pa');
  requireReserveBelow(draft.id, 'water', complete.waterReserveKg, complete.waterStartKg, 'kg');
  requireReserveBelow(draft.id, 'battery', complete.batteryReserveJ, complete.batteryStartJ, 'J');
  requireReserveBelow(
    draft.id,
    'CO2 absorber',
    complete.carbonDioxideReserveKg,
    complete.carbonDioxideCapacityKg,
    'kg',
  );
  return {
    id: draft.id,
    gasLaw,
    energyEquivalent,
    constants: complete,
    effortsW: draft.effortsW ?? {},
    loads: draft.loads ?? {},
    inspiredCurve: draft.inspiredCurve ?? null,
    secondaryOxygen: draft.secondaryOxygen ?? null,
  };
}

function described(name: string): string {
  const known = Object.hasOwn(SUIT_CONSTANTS, name) ? SUIT_CONSTANTS[name as SuitConstant] : undefined;
  return known === undefined ? name : `${name} (${known.unit === '1' ? '' : `${known.unit}, `}${known.about})`;
}

function requireSourced(
  suit: string,
  name: string,
  value: SourcedValue | undefined,
  range: { readonly min: number; readonly max: number; readonly unit: string },
): void {
  if (value === undefined) {
    throw new Fault('suit/constant-missing', `suit ${suit} does not state ${name} (${range.unit})`, {
      values: { suit, missing: [name] },
    });
  }
  for (const edge of [value.low, value.likely, value.high]) requireInRange(`suit ${suit}: ${name}`, edge, range);
  if (!(value.low <= value.likely && value.likely <= value.high)) {
    throw new Fault('input/band-out-of-order', `suit ${suit}: ${name} must be low ≤ likely ≤ high`, {
      values: { ...value },
    });
  }
  if (value.source.trim() === '') {
    throw new Fault('input/source-missing', `suit ${suit}: ${name} has no source`, { values: { suit, name } });
  }
}

function requireReserveBelow(
  suit: string,
  supply: string,
  reserve: SourcedValue,
  start: SourcedValue,
  unit: string,
): void {
  if (reserve.high < start.low) return;
  throw new Fault(
    'suit/reserve-above-start',
    `suit ${suit}: the ${supply} reserve (up to ${reserve.high} ${unit}) must lie below what it starts with (from ${start.low} ${unit})`,
    { values: { suit, supply, reserve: reserve.high, start: start.low } },
  );
}
