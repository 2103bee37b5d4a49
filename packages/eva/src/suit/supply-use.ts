import { requireInRange } from '@handrail/quantity/in-range';
import type { SourcedValue } from '@handrail/quantity/sourced-value';
import { bodyHeat } from './body-heat.ts';
import { type InspiredWarning, inspiredWarning } from './inspired-warning.ts';
import { oxygenMassKg } from './oxygen-bottle.ts';
import { stretchRates } from './stretch-rates.ts';
import type { SuitSpecification } from './suit-specification.ts';
import { byCase, providing, type SupplyCase, using } from './supply-case.ts';
import {
  type LimitingSupply,
  limitingSupply,
  petOfLevel,
  SUPPLY_NAMES,
  type SupplyCurve,
  type SupplyName,
  type SupplyPoint,
} from './supply-curve.ts';
import { coverSpan, type SuitPerson, type SupplySpan, type WorkStretch } from './work-stretch.ts';

export interface SupplyEnd {
  readonly used: number;
  readonly left: number;
  /** Left above the reserve; negative: too little. */
  readonly margin: number;
}

export interface HeatStorage {
  readonly limitJ: number;
  readonly peakJ: number;
  /** PET at which storage reaches the limit; null: it does not. */
  readonly limitAtS: number | null;
}

export interface SupplyUse {
  readonly person: string;
  readonly suit: string;
  readonly span: SupplySpan;
  readonly curves: Readonly<Record<SupplyName, SupplyCurve>>;
  /** At `span.endS`. */
  readonly end: Readonly<Record<SupplyName, Readonly<Record<SupplyCase, SupplyEnd>>>>;
  /** The first reserve to be reached, within the curves; null: none. */
  readonly limiting: Readonly<Record<SupplyCase, LimitingSupply | null>>;
  /** PET at which CO2 starts to pass the absorber, before it is spent; null: not within the curve. */
  readonly breakthroughAtS: Readonly<Record<SupplyCase, number | null>>;
  readonly inspired: readonly InspiredWarning[];
  readonly heatStorage: Readonly<Record<SupplyCase, HeatStorage>>;
}

/**
 * Supplies of one person over an excursion, from leaving vehicle supplies until back on them. Rates are constant in a stretch, so
 * the curves are exact broken lines; the only kink inside a stretch is where stored body heat has been worked off.
 *
 * Oxygen: metabolic use by the suit's stated energy relation, leakage, a purge at the start; gas law as the suit states. CO2: respiratory
 * quotient. Water: metabolic, electrical, absorber and leaked-in heat over the latent heat, capped at what the cooling can carry; the rest
 * is stored in the body. All metabolic energy is taken as heat. Battery: loads.
 * @param stretches any order, without overlap, within the span
 * @throws Fault `suit/unknown-effort`, `suit/unknown-load`, `suit/stretches-overlap`, `suit/stretch-outside-span`, `suit/gap-in-stretches`,
 *   `input/out-of-range`
 * @source [LUSK24] [WEIR49] [PERONNET91] energy; [SW85] oxygen; [RY89] water; [KIM20] CO2 breathed in
 * @checked tests/reference/suit/suit-day.test.ts, tests/properties/suit/supply-balance.test.ts
 */
export function supplyUse(
  suit: SuitSpecification,
  person: SuitPerson,
  stretches: readonly WorkStretch[],
  span: SupplySpan,
): SupplyUse {
  requireInRange('body mass', person.bodyMassKg, { min: 30, max: 200, unit: 'kg' });
  for (const factor of [person.effortFactor.low, person.effortFactor.likely, person.effortFactor.high]) {
    requireInRange('effort factor', factor, { min: 0.2, max: 5, unit: '1' });
  }
  const work = coverSpan(stretches, span);
  const starts = startAmounts(suit);
  const runs = byCase((supplyCase) => runCase(suit, person, work, supplyCase, span.startS, starts[supplyCase].start));
  const curve = (supply: SupplyName): SupplyCurve => ({
    supply,
    unit: supply === 'battery' ? 'J' : 'kg',
    traces: byCase((supplyCase) => ({
      start: starts[supplyCase].start[supply],
      reserve: starts[supplyCase].reserve[supply],
      points: runs[supplyCase].points[supply],
    })),
  });
  const curves: Record<SupplyName, SupplyCurve> = {
    oxygen: curve('oxygen'),
    'carbon-dioxide': curve('carbon-dioxide'),
    water: curve('water'),
    battery: curve('battery'),
  };
  const ordered = SUPPLY_NAMES.map((name) => curves[name]);
  const share = suit.constants.carbonDioxideBreakthroughShare;
  return {
    person: person.id,
    suit: suit.id,
    span,
    curves,
    end: Object.fromEntries(ordered.map((curve) => [curve.supply, endValues(curve, span.endS)])) as SupplyUse['end'],
    limiting: byCase((supplyCase) => limitingSupply(ordered, supplyCase)),
    breakthroughAtS: byCase((supplyCase) =>
      petOfLevel(
        curves['carbon-dioxide'],
        supplyCase,
        curves['carbon-dioxide'].traces[supplyCase].start * (1 - providing(share, supplyCase)),
      ),
    ),
    inspired: work
      .filter((stretch) => stretch.startS < span.endS)
      .map((stretch) => inspiredWarning(suit, person, stretch)),
    heatStorage: byCase((supplyCase) => runs[supplyCase].heatStorage),
  };
}

interface CaseRun {
  readonly points: Readonly<Record<SupplyName, readonly SupplyPoint[]>>;
  readonly heatStorage: HeatStorage;
}

/**
 * One case from start to end. Cooling has two worst ends: the strongest cooling uses most water, the weakest stores most heat; so the two
 * are followed apart.
 */
function runCase(
  suit: SuitSpecification,
  person: SuitPerson,
  work: readonly WorkStretch[],
  supplyCase: SupplyCase,
  startS: number,
  start: Readonly<Record<SupplyName, number>>,
): CaseRun {
  const c = suit.constants;
  const latentHeat = providing(c.waterLatentHeatJPerKg, supplyCase);
  const limitJ = providing(c.heatStorageLimitJPerKg, supplyCase) * person.bodyMassKg;
  const points: Record<SupplyName, SupplyPoint[]> = { oxygen: [], 'carbon-dioxide': [], water: [], battery: [] };
  const left = { ...start };
  const use = (supply: SupplyName, amount: number, atS: number): void => {
    left[supply] -= amount;
    points[supply].push({ atS, left: left[supply] });
  };
  for (const supply of SUPPLY_NAMES) use(supply, 0, startS);
  use('oxygen', using(c.oxygenPurgeKg, supplyCase), startS);
  let storedWithWaterJ = 0;
  let storedJ = 0;
  let peakJ = 0;
  let limitAtS: number | null = null;
  for (const stretch of work) {
    const { startS: fromS, endS: toS } = stretch;
    const rates = stretchRates(suit, person, stretch, supplyCase);
    use('oxygen', (rates.oxygenKgPerS.body + rates.oxygenKgPerS.leakage) * (toS - fromS), toS);
    use('carbon-dioxide', rates.carbonDioxideKgPerS * (toS - fromS), toS);
    use('battery', rates.batteryW * (toS - fromS), toS);
    for (const piece of bodyHeat(rates.heatW, using(c.heatRemovalMostW, supplyCase), fromS, toS, storedWithWaterJ)) {
      use('water', piece.removedJ / latentHeat, piece.endS);
      storedWithWaterJ = piece.storedJ;
    }
    for (const piece of bodyHeat(rates.heatW, providing(c.heatRemovalMostW, supplyCase), fromS, toS, storedJ)) {
      if (limitAtS === null && piece.storedJ >= limitJ) {
        limitAtS = piece.startS + ((limitJ - storedJ) / (piece.storedJ - storedJ)) * (piece.endS - piece.startS);
      }
      storedJ = piece.storedJ;
      peakJ = Math.max(peakJ, storedJ);
    }
  }
  return { points, heatStorage: { limitJ, peakJ, limitAtS } };
}

interface Amounts {
  readonly start: Readonly<Record<SupplyName, number>>;
  readonly reserve: Readonly<Record<SupplyName, number>>;
}

function startAmounts(suit: SuitSpecification): Record<SupplyCase, Amounts> {
  const c = suit.constants;
  return byCase((supplyCase) => {
    const provides = (value: SourcedValue) => providing(value, supplyCase);
    // Warm gas is less gas for the same gauge pressure, in the bottle and in its reserve alike.
    const oxygen = (pressure: number) =>
      oxygenMassKg(suit.gasLaw, pressure, using(c.oxygenTemperatureK, supplyCase), provides(c.oxygenVolumeM3));
    return {
      start: {
        oxygen: oxygen(provides(c.oxygenStartPressurePa)),
        'carbon-dioxide': provides(c.carbonDioxideCapacityKg),
        water: provides(c.waterStartKg),
        battery: provides(c.batteryStartJ) * provides(c.batteryUsableShare),
      },
      reserve: {
        oxygen: oxygen(using(c.oxygenReservePressurePa, supplyCase)),
        'carbon-dioxide': using(c.carbonDioxideReserveKg, supplyCase),
        water: using(c.waterReserveKg, supplyCase),
        battery: using(c.batteryReserveJ, supplyCase),
      },
    };
  });
}

function endValues(curve: SupplyCurve, endS: number): Record<SupplyCase, SupplyEnd> {
  return byCase((supplyCase) => {
    const { start, reserve, points } = curve.traces[supplyCase];
    const left = (points.findLast(({ atS }) => atS <= endS) as SupplyPoint).left;
    return { used: start - left, left, margin: left - reserve };
  });
}
