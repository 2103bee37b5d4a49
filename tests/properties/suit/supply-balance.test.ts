import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { between, exactly, type SourcedValue } from '@handrail/quantity/sourced-value';
import { gasExchange } from '@handrail/eva/suit/gas-exchange';
import { SUIT_CONSTANTS, type SuitConstant } from '@handrail/eva/suit/suit-constants';
import { oxygenMassKg, oxygenPressurePa } from '@handrail/eva/suit/oxygen-bottle';
import { completeSuit, type SuitSpecification } from '@handrail/eva/suit/suit-specification';
import { SUPPLY_CASES } from '@handrail/eva/suit/supply-case';
import { amountLeft, petOfLimit, SUPPLY_NAMES } from '@handrail/eva/suit/supply-curve';
import { supplySums } from '@handrail/eva/suit/supply-sum';
import { type SupplyUse, supplyUse } from '@handrail/eva/suit/supply-use';
import type { WorkStretch } from '@handrail/eva/suit/work-stretch';
import { INVENTED_PERSON, INVENTED_SUIT } from '../../reference/suit/invented-suit.ts';

const spread = (value: number, share: number) => between(value * (1 - share), value, value * (1 + share), 'drawn');

/** A suit with leakage, purge, surroundings and spreads, as drawn. */
const drawnSuit = fc
  .record({
    leak: fc.double({ min: 0, max: 1e-5, noNaN: true }),
    purge: fc.double({ min: 0, max: 0.1, noNaN: true }),
    surroundings: fc.double({ min: -150, max: 150, noNaN: true }),
    absorberHeat: fc.double({ min: 0, max: 2.1e6, noNaN: true }),
    removal: fc.double({ min: 200, max: 900, noNaN: true }),
    share: fc.double({ min: 0, max: 0.15, noNaN: true }),
    law: fc.constantFrom('ideal' as const, 'real' as const),
  })
  .map((drawn) =>
    completeSuit({
      ...INVENTED_SUIT,
      gasLaw: drawn.law,
      constants: {
        ...INVENTED_SUIT.constants,
        oxygenLeakageKgPerS: exactly(drawn.leak, 'drawn'),
        oxygenPurgeKg: exactly(drawn.purge, 'drawn'),
        heatFromSurroundingsW: exactly(drawn.surroundings, 'drawn'),
        absorberHeatJPerKg: exactly(drawn.absorberHeat, 'drawn'),
        heatRemovalMostW: exactly(drawn.removal, 'drawn'),
        oxygenStartPressurePa: spread(6.2e6, drawn.share),
        waterStartKg: spread(4.2, drawn.share),
        respiratoryQuotient: between(0.8, 0.85, 0.95, 'drawn'),
      },
      effortsW: { low: spread(150, drawn.share), moderate: spread(300, drawn.share), high: spread(550, drawn.share) },
    }),
  );

const drawnStretches = fc
  .array(
    fc.record({
      gapS: fc.integer({ min: 0, max: 1200 }),
      lastsS: fc.integer({ min: 10, max: 5400 }),
      effort: fc.constantFrom('low', 'moderate', 'high'),
      loads: fc.subarray(['lamps']),
    }),
    { maxLength: 12 },
  )
  .map((parts) => {
    let atS = 0;
    return parts.map(({ gapS, lastsS, effort, loads }): WorkStretch => {
      const startS = atS + gapS;
      atS = startS + lastsS;
      return { startS, endS: atS, effort, loads };
    });
  });

const use = (suit: ReturnType<typeof completeSuit>, stretches: readonly WorkStretch[], factor = 1): SupplyUse =>
  supplyUse(suit, { ...INVENTED_PERSON, effortFactor: exactly(factor, 'drawn') }, stretches, {
    startS: 0,
    endS: (stretches.at(-1)?.endS ?? 0) + 600,
    idleEffort: 'low',
    beyondS: 7200,
    beyondEffort: 'moderate',
  });

describe('supplies', () => {
  it('balance: what is used is what the stretches take one by one, in every case', () => {
    fc.assert(
      fc.property(drawnSuit, drawnStretches, (suit, stretches) => {
        const whole = use(suit, stretches);
        // Second way: a plain sum of the metabolic energy of all stretches, gas by gas.
        const endS = whole.span.endS;
        let energyJ = 0;
        let busyS = 0;
        for (const { startS, endS: stopS, effort } of stretches) {
          energyJ += (suit.effortsW[effort]?.likely ?? 0) * (stopS - startS);
          busyS += stopS - startS;
        }
        energyJ += (suit.effortsW['low']?.likely ?? 0) * (endS - busyS);
        const perJ = gasExchange(1000, 0.85, 'lusk-1924');
        const c = suit.constants;
        const oxygen =
          energyJ * (perJ.oxygenKgPerS / 1000) + c.oxygenLeakageKgPerS.likely * endS + c.oxygenPurgeKg.likely;
        const lampS = stretches.reduce((sum, s) => sum + (s.loads?.length === 1 ? s.endS - s.startS : 0), 0);
        const batteryJ = 40 * endS + 20 * lampS;
        const co2 = energyJ * (perJ.carbonDioxideKgPerS / 1000);
        expect(whole.end.oxygen.likely.used).toBeCloseTo(oxygen, 9);
        expect(whole.end['carbon-dioxide'].likely.used).toBeCloseTo(co2, 9);
        expect(whole.end.battery.likely.used / batteryJ).toBeCloseTo(1, 9);
        // Heat made never exceeds water carried off plus heat stored; it is equal where the surroundings take none away.
        const heatJ = energyJ + batteryJ + co2 * c.absorberHeatJPerKg.likely + c.heatFromSurroundingsW.likely * endS;
        const carriedJ = whole.end.water.likely.used * c.waterLatentHeatJPerKg.likely;
        expect(carriedJ).toBeLessThanOrEqual(
          Math.max(heatJ, 0) + 1e-3 + Math.max(0, -c.heatFromSurroundingsW.likely) * endS,
        );
        expect(carriedJ + whole.heatStorage.likely.peakJ).toBeGreaterThanOrEqual(heatJ - 1e-3);
      }),
      { numRuns: 200 },
    );
  });

  it('of twice the effort: twice the CO2, twice the oxygen beyond leakage and purge, the same battery', () => {
    fc.assert(
      fc.property(drawnSuit, drawnStretches, (suit, stretches) => {
        const once = use(suit, stretches, 1).end;
        const twice = use(suit, stretches, 2).end;
        for (const supplyCase of SUPPLY_CASES) {
          const fixed =
            suit.constants.oxygenPurgeKg.likely +
            suit.constants.oxygenLeakageKgPerS.likely * ((stretches.at(-1)?.endS ?? 0) + 600);
          expect(twice['carbon-dioxide'][supplyCase].used).toBeCloseTo(2 * once['carbon-dioxide'][supplyCase].used, 9);
          expect(twice.oxygen[supplyCase].used - fixed).toBeCloseTo(2 * (once.oxygen[supplyCase].used - fixed), 9);
          expect(twice.battery[supplyCase].used).toBeCloseTo(once.battery[supplyCase].used, 4);
          expect(twice.water[supplyCase].used).toBeGreaterThanOrEqual(once.water[supplyCase].used - 1e-12);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('never rise, hold no NaN, and leave least in the worst case', () => {
    fc.assert(
      fc.property(drawnSuit, drawnStretches, (suit, stretches) => {
        const { curves, end, span } = use(suit, stretches);
        for (const name of SUPPLY_NAMES) {
          for (const supplyCase of SUPPLY_CASES) {
            const { points } = curves[name].traces[supplyCase];
            for (let i = 0; i < points.length; i++) {
              expect(Number.isFinite(points[i]?.left)).toBe(true);
              expect(points[i]?.left ?? 0).toBeLessThanOrEqual(
                (points[i - 1]?.left ?? Number.POSITIVE_INFINITY) + 1e-12,
              );
            }
            const petS = petOfLimit(curves[name], supplyCase);
            if (petS !== null && petS > 0 && petS <= span.endS + 7200) {
              expect(amountLeft(curves[name], supplyCase, petS)).toBeCloseTo(
                curves[name].traces[supplyCase].reserve,
                4,
              );
            }
          }
          expect(end[name].worst.left).toBeLessThanOrEqual(end[name].likely.left + 1e-9);
          expect(end[name].likely.left).toBeLessThanOrEqual(end[name].best.left + 1e-9);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('add up line by line to what was used, in every case', () => {
    fc.assert(
      fc.property(drawnSuit, drawnStretches, fc.constantFrom(...SUPPLY_CASES), (suit, stretches, supplyCase) => {
        const { end, span } = use(suit, stretches);
        const sums = supplySums(suit, INVENTED_PERSON, stretches, span, supplyCase, end.water[supplyCase].used);
        for (const name of SUPPLY_NAMES) {
          const total = sums[name].reduce((sum, { amount }) => sum + amount, 0);
          expect(Math.abs(total - end[name][supplyCase].used)).toBeLessThan(name === 'battery' ? 1e-6 : 1e-8);
        }
        const last = sums.water.find(({ what }) => what === 'heat not carried off');
        // Even the lightest work makes more heat here than the surroundings take, so the line can only be heat still stored.
        expect(last?.amount ?? 0).toBeLessThanOrEqual(1e-9);
      }),
      { numRuns: 150 },
    );
  });

  it('lie between worst and best for every suit and person that the bands allow', () => {
    // Every constant of the suit gets a band of ±8 % (kept in its range); then one member of all bands is drawn and run by itself.
    const names = Object.keys(INVENTED_SUIT.constants ?? {}) as SuitConstant[];
    const wide = (value: number, range: { readonly min: number; readonly max: number }) =>
      between(Math.max(range.min, value * 0.92), value, Math.min(range.max, value * 1.08), 'drawn');
    const member = (value: SourcedValue, at: number) => exactly(value.low + at * (value.high - value.low), 'drawn');
    const base = completeSuit({
      ...INVENTED_SUIT,
      constants: {
        ...INVENTED_SUIT.constants,
        oxygenLeakageKgPerS: exactly(2e-6, 'drawn'),
        oxygenPurgeKg: exactly(0.03, 'drawn'),
        absorberHeatJPerKg: exactly(1.5e6, 'drawn'),
        heatFromSurroundingsW: between(-40, 10, 60, 'drawn'),
        heatRemovalMostW: between(350, 450, 550, 'drawn'),
      },
      effortsW: { low: exactly(150, 'drawn'), moderate: exactly(300, 'drawn'), high: exactly(550, 'drawn') },
    });
    const banded = completeSuit({
      ...base,
      constants: Object.fromEntries(
        names.map((name) => {
          const value = base.constants[name];
          if (value.low !== value.high) return [name, value];
          const range = name === 'respiratoryQuotient' ? { min: 0.75, max: 0.98 } : SUIT_CONSTANTS[name];
          return [name, wide(value.likely, range)];
        }),
      ) as SuitSpecification['constants'],
      effortsW: Object.fromEntries(
        Object.entries(base.effortsW).map(([name, value]) => [name, wide(value.likely, { min: 0, max: 1200 })]),
      ),
      loads: {
        fan: { powerW: wide(40, { min: 0, max: 100 }), always: true },
        lamps: { powerW: wide(20, { min: 0, max: 100 }), always: false },
      },
    });
    const factor = between(0.9, 1, 1.2, 'drawn');
    const shares = fc.array(fc.constantFrom(0, 1, 0.5, 0.3, 0.8), {
      minLength: names.length + 6,
      maxLength: names.length + 6,
    });
    fc.assert(
      fc.property(drawnStretches, shares, (stretches, drawn) => {
        const at = (index: number) => drawn[index] ?? 0;
        const one = completeSuit({
          ...banded,
          constants: Object.fromEntries(
            names.map((name, i) => [name, member(banded.constants[name], at(i))]),
          ) as SuitSpecification['constants'],
          effortsW: Object.fromEntries(
            Object.entries(banded.effortsW).map(([name, value], i) => [name, member(value, at(names.length + i))]),
          ),
          loads: {
            fan: { powerW: member(banded.loads['fan']?.powerW ?? factor, at(names.length + 3)), always: true },
            lamps: { powerW: member(banded.loads['lamps']?.powerW ?? factor, at(names.length + 4)), always: false },
          },
        });
        const span = {
          startS: 0,
          endS: (stretches.at(-1)?.endS ?? 0) + 600,
          idleEffort: 'low',
          beyondS: 7200,
          beyondEffort: 'moderate',
        };
        const whole = supplyUse(banded, { ...INVENTED_PERSON, effortFactor: factor }, stretches, span);
        const alone = supplyUse(
          one,
          { ...INVENTED_PERSON, effortFactor: member(factor, at(names.length + 5)) },
          stretches,
          span,
        );
        const never = Number.POSITIVE_INFINITY;
        for (const name of SUPPLY_NAMES) {
          const { worst, best } = whole.end[name];
          // Battery in J: compare relative to what is there.
          const hair = 1e-9 * Math.abs(whole.curves[name].traces.best.start);
          expect(alone.end[name].likely.margin).toBeGreaterThanOrEqual(worst.margin - hair);
          expect(alone.end[name].likely.margin).toBeLessThanOrEqual(best.margin + hair);
          const petS = petOfLimit(alone.curves[name], 'likely') ?? never;
          expect(petS).toBeGreaterThanOrEqual((petOfLimit(whole.curves[name], 'worst') ?? never) - 1e-6);
          expect(petS).toBeLessThanOrEqual((petOfLimit(whole.curves[name], 'best') ?? never) + 1e-6);
        }
        expect(alone.heatStorage.likely.peakJ).toBeLessThanOrEqual(whole.heatStorage.worst.peakJ + 1e-3);
        expect(alone.heatStorage.likely.peakJ).toBeGreaterThanOrEqual(whole.heatStorage.best.peakJ - 1e-3);
        expect(alone.heatStorage.likely.limitAtS ?? never).toBeGreaterThanOrEqual(
          (whole.heatStorage.worst.limitAtS ?? never) - 1e-6,
        );
      }),
      { numRuns: 200 },
    );
  });

  it('refuse stretches that overlap, unknown efforts and loads, and gaps nobody speaks for', () => {
    const suit = completeSuit(INVENTED_SUIT);
    const span = { startS: 0, endS: 100, idleEffort: 'steady', beyondS: 0, beyondEffort: 'steady' };
    const one: WorkStretch = { startS: 0, endS: 60, effort: 'steady' };
    const run = (stretches: readonly WorkStretch[], idleEffort: string | null = 'steady') =>
      supplyUse(suit, INVENTED_PERSON, stretches, { ...span, idleEffort });
    expect(() => run([one, { startS: 50, endS: 90, effort: 'steady' }])).toThrow('before the last has ended at 60 s');
    expect(() => run([{ ...one, effort: 'sprint' }])).toThrow('has no effort called sprint');
    expect(() => run([{ ...one, loads: ['heater'] }])).toThrow('has no load called heater');
    expect(() => run([one], null)).toThrow('nobody says what is done from 60 to 100 s');
    expect(() => run([{ ...one, endS: 101 }])).toThrow('must last and lie within 0 to 100 s');
  });
});

describe('the oxygen bottle', () => {
  it('holds more at more pressure and less when warm, and gives its pressure back, over the whole range', () => {
    const pressure = fc.double({ min: 1e3, max: 7.9e7, noNaN: true });
    const temperature = fc.double({ min: 200, max: 319, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom('ideal' as const, 'real' as const),
        pressure,
        temperature,
        (law, pressurePa, temperatureK) => {
          const mass = oxygenMassKg(law, pressurePa, temperatureK, 0.01);
          expect(mass).toBeGreaterThan(0);
          expect(oxygenMassKg(law, pressurePa * 1.01, temperatureK, 0.01)).toBeGreaterThan(mass);
          expect(oxygenMassKg(law, pressurePa, temperatureK + 1, 0.01)).toBeLessThan(mass);
          // The fit's gas constant is 1.5e-5 off today's; at 80 MPa a hair of density is several of pressure.
          expect(Math.abs(oxygenPressurePa(law, mass, temperatureK, 0.01) / pressurePa - 1)).toBeLessThan(2e-4);
        },
      ),
      { numRuns: 300 },
    );
    expect(() => oxygenMassKg('real', 6e6, 20, 0.01)).toThrow('oxygen temperature must be 200 to 320 K, got 20 K');
    expect(() => oxygenMassKg('ideal', Number.NaN, 293, 0.01)).toThrow('oxygen pressure must be 0 to 80000000 Pa');
  });
});
