import { describe, expect, it } from 'vitest';
import { exactly } from '@handrail/quantity/sourced-value';
import { metabolicEnvelope } from '@handrail/eva/suit/metabolic-envelope';
import { completeSuit } from '@handrail/eva/suit/suit-specification';
import { amountLeft, curveFromReading, petOfLimit, SUPPLY_NAMES } from '@handrail/eva/suit/supply-curve';
import { supplySums } from '@handrail/eva/suit/supply-sum';
import { supplyUse } from '@handrail/eva/suit/supply-use';
import { BTU_PER_H_IN_W, INVENTED_PERSON, INVENTED_SUIT } from './invented-suit.ts';

const H = 3600;
const LB = 0.453_592_37;
const day = (hours: number, btuPerH: number, rq = 0.85) => {
  const suit = completeSuit({
    ...INVENTED_SUIT,
    constants: { ...INVENTED_SUIT.constants, respiratoryQuotient: exactly(rq, 'published example') },
    effortsW: { steady: exactly(btuPerH * BTU_PER_H_IN_W, 'published example') },
  });
  return supplyUse(suit, INVENTED_PERSON, [{ startS: 0, endS: hours * H, effort: 'steady' }], {
    startS: 0,
    endS: hours * H,
    idleEffort: null,
    beyondS: 6 * H,
    beyondEffort: 'steady',
  });
};

describe('a day in the suit', () => {
  it('is 293.07 W for 1000 BTU/h', () => {
    expect(1000 * BTU_PER_H_IN_W).toBeCloseTo(293.07, 2); // W [SUIT-CO2-17]
  });

  // Accuracy 0.5 %: the published lines take 22.4 L/mol.
  it.each([
    [7, 1000, 0.85, 1.143, 1.337], // h, BTU/h, RQ, lb O2, lb CO2 [LUSK24] on the envelope of [MISHAP13]
    [8, 850, 0.85, 1.111, 1.298], // h, BTU/h, RQ, lb O2, lb CO2 [LUSK24] on the envelope of [MISHAP13]
    [7, 1000, 0.9, 1.129, 1.397], // h, BTU/h, RQ, lb O2, lb CO2 [LUSK24] on the envelope of [MISHAP13]
    [8, 850, 0.9, 1.097, 1.358], // h, BTU/h, RQ, lb O2, lb CO2 [LUSK24] on the envelope of [MISHAP13]
  ])(
    'of %f h at %f BTU/h and a quotient of %f uses %f lb of oxygen and gives off %f lb of CO2',
    (hours, btuPerH, rq, o2, co2) => {
      const { end } = day(hours, btuPerH, rq);
      expect(Math.abs(end.oxygen.likely.used / (o2 * LB) - 1)).toBeLessThan(0.005);
      expect(Math.abs(end['carbon-dioxide'].likely.used / (co2 * LB) - 1)).toBeLessThan(0.005);
    },
  );

  it('of 7 h at 293 W uses 0.519 kg of oxygen and 0.606 kg of CO2 capacity', () => {
    const { end } = day(7, 1000);
    expect(Math.abs(end.oxygen.likely.used / 0.519 - 1)).toBeLessThan(0.005); // kg [LUSK24] [MISHAP13]
    expect(Math.abs(end['carbon-dioxide'].likely.used / 0.606 - 1)).toBeLessThan(0.005); // kg [LUSK24] [MISHAP13]
    expect(end.oxygen.likely.used / LB).toBeLessThan(1.217); // lb, plausibility: usable primary oxygen [SUIT-DATA] MEMORY
    expect(end['carbon-dioxide'].likely.used / LB).toBeLessThan(1.48); // lb, plausibility: canister [SUIT-DATA] MEMORY
  });

  it('of 7 h at 293 W needs 2.95 kg of water for the body alone', () => {
    const { end } = day(7, 1000);
    const loads = 40 * 7 * H; // J from the fan, which is always on
    const bodyOnlyKg = end.water.likely.used - loads / 2.5e6;
    expect(Math.abs(bodyOnlyKg / 2.953 - 1)).toBeLessThan(0.005); // kg, 7 h of 421.9 g/h [IAPWS-LV]
    expect(end.battery.likely.used).toBeCloseTo(40 * 7 * H, 6);
  });

  it('reaches each reserve where the straight line says, and the earliest of them is the limiting supply', () => {
    const use = day(7, 1000);
    // Second method: usable amount over the hourly rate of the published lines (0.606 kg over 7 h, 333.07 W of heat).
    const absorberS = (0.65 / 0.606) * 7 * H;
    const waterS = (3.9 * 2.5e6) / (293.07 + 40);
    const batteryS = 1.5e6 / 40;
    expect(Math.abs((petOfLimit(use.curves['carbon-dioxide'], 'likely') ?? 0) / absorberS - 1)).toBeLessThan(0.005);
    expect(Math.abs((petOfLimit(use.curves.water, 'likely') ?? 0) / waterS - 1)).toBeLessThan(0.005);
    expect(Math.abs((petOfLimit(use.curves.battery, 'likely') ?? 0) / batteryS - 1)).toBeLessThan(1e-9);
    expect(use.limiting.likely?.supply).toBe('carbon-dioxide');
    expect(Math.abs((use.breakthroughAtS.likely ?? 0) / ((0.63 / 0.606) * 7 * H) - 1)).toBeLessThan(0.005);
  });

  it('goes on from a reading, as planned or as used so far', () => {
    const { curves } = day(7, 1000);
    const planned = amountLeft(curves.oxygen, 'likely', 2 * H);
    const start = curves.oxygen.traces.likely.start;
    const read = start - 1.25 * (start - planned); // a quarter more was used than planned
    const asPlanned = curveFromReading(curves.oxygen, { supply: 'oxygen', atS: 2 * H, left: read }, 'as-planned');
    const asUsed = curveFromReading(curves.oxygen, { supply: 'oxygen', atS: 2 * H, left: read }, 'as-used');
    const perHour = (start - planned) / 2;
    expect(amountLeft(asPlanned, 'likely', 6 * H)).toBeCloseTo(read - 4 * perHour, 9);
    expect(amountLeft(asUsed, 'likely', 6 * H)).toBeCloseTo(read - 4 * 1.25 * perHour, 9);
  });
});

describe('the sums', () => {
  it('of a day can be done again by hand', () => {
    const suit = completeSuit({
      ...INVENTED_SUIT,
      constants: {
        ...INVENTED_SUIT.constants,
        oxygenLeakageKgPerS: exactly(2e-6, 'drawn for tests'),
        oxygenPurgeKg: exactly(0.03, 'drawn for tests'),
        absorberHeatJPerKg: exactly(2e6, 'drawn for tests'),
        heatFromSurroundingsW: exactly(-20, 'drawn for tests'),
      },
    });
    const stretches = [{ startS: 0, endS: 7 * H, effort: 'steady', loads: ['lamps'] }];
    const span = { startS: 0, endS: 7 * H, idleEffort: null, beyondS: H, beyondEffort: 'steady' };
    const { end } = supplyUse(suit, INVENTED_PERSON, stretches, span);
    const sums = supplySums(suit, INVENTED_PERSON, stretches, span, 'likely', end.water.likely.used);
    const amounts = (lines: readonly { readonly amount: number }[]) => lines.map(({ amount }) => amount);
    // kg: 0.519 by the published line [LUSK24] [MISHAP13]; 2e-6 kg/s for 7 h; the purge
    const [body = 0, leakage = 0, purge = 0] = amounts(sums.oxygen);
    expect(Math.abs(body / 0.519 - 1)).toBeLessThan(0.005);
    expect(leakage).toBeCloseTo(0.0504, 9);
    expect(purge).toBe(0.03);
    // kg of water: 293.07 W, 60 W, 0.606 kg of CO2 at 2 MJ/kg, −20 W over 2.5 MJ/kg
    const [fromBody = 0, fromLoads = 0, fromAbsorber = 0, fromSurroundings = 0, ...others] = amounts(sums.water);
    expect(fromBody).toBeCloseTo((293.07107 * 7 * H) / 2.5e6, 9);
    expect(fromLoads).toBeCloseTo((60 * 7 * H) / 2.5e6, 9);
    expect(Math.abs(fromAbsorber / ((0.606 * 2e6) / 2.5e6) - 1)).toBeLessThan(0.005);
    expect(fromSurroundings).toBeCloseTo((-20 * 7 * H) / 2.5e6, 9);
    expect(others).toEqual([]);
    for (const supply of SUPPLY_NAMES) {
      const total = amounts(sums[supply]).reduce((sum, amount) => sum + amount, 0);
      expect(total / end[supply].likely.used).toBeCloseTo(1, 9);
    }
  });
});

describe('the design envelope', () => {
  const limits = [
    { averageW: 2000 * BTU_PER_H_IN_W, windowS: 15 * 60, source: '[MISHAP13]' },
    { averageW: 1600 * BTU_PER_H_IN_W, windowS: H, source: '[MISHAP13]' },
    { averageW: 1000 * BTU_PER_H_IN_W, windowS: 7 * H, source: '[MISHAP13]' },
  ];
  const at = (btuPerH: number, fromMin: number, toMin: number) => ({
    startS: fromMin * 60,
    endS: toMin * 60,
    metabolicW: btuPerH * BTU_PER_H_IN_W,
  });

  it('holds for seven hours at 1000 BTU/h', () => {
    expect(metabolicEnvelope([at(1000, 0, 420)], limits).map(({ holds }) => holds)).toEqual([true, true, true]); // [MISHAP13]
  });

  it('holds for a quarter of an hour at 2000 BTU/h in light work, and fails the hour for forty minutes of it', () => {
    const short = metabolicEnvelope([at(800, 0, 60), at(2000, 60, 75), at(800, 75, 420)], limits);
    expect(short.map(({ holds }) => holds)).toEqual([true, true, true]); // [MISHAP13]
    expect((short[1]?.worstAverageW ?? 0) / BTU_PER_H_IN_W).toBeCloseTo((15 * 2000 + 45 * 800) / 60, 9);
    const long = metabolicEnvelope([at(800, 0, 60), at(2000, 60, 105), at(800, 105, 420)], limits);
    expect(long.map(({ holds }) => holds)).toEqual([true, false, true]); // (45·2000 + 15·800)/60 = 1700 > 1600 BTU/h [MISHAP13]
  });
});

describe('a broken envelope', () => {
  it('is refused: a stretch too strong, one that does not last, two that overlap', () => {
    const limit = [{ averageW: 500, windowS: H, source: 'operator' }];
    const stretch = (startS: number, endS: number, metabolicW: number) => ({ startS, endS, metabolicW });
    expect(() => metabolicEnvelope([stretch(0, 60, 2600)], limit)).toThrow('metabolic rate must be 0 to 2500 W');
    expect(() => metabolicEnvelope([stretch(60, 60, 100)], limit)).toThrow('work stretch 1 must start after');
    expect(() => metabolicEnvelope([stretch(0, 60, 100), stretch(59, 90, 100)], limit)).toThrow('work stretch 2');
    expect(metabolicEnvelope([stretch(0, 60, 100), stretch(60, 90, 100)], limit)[0]?.holds).toBe(true);
  });
});

describe('heat', () => {
  it('beyond what the cooling carries is stored, worked off later, and reaches the limit at a known minute', () => {
    const suit = completeSuit(INVENTED_SUIT);
    // hard: 879.21 + 40 W of fan against 586 W carried: 333.2 W stored; the limit 4700 J/kg of 80 kg is 376 kJ.
    const hard = 3000 * BTU_PER_H_IN_W + 40 - 586;
    const span = { startS: 0, endS: 3000, idleEffort: null, beyondS: 0, beyondEffort: 'steady' };
    const over = supplyUse(suit, INVENTED_PERSON, [{ startS: 0, endS: 3000, effort: 'hard' }], span);
    expect(over.heatStorage.likely.limitAtS).toBeCloseTo((4700 * 80) / hard, 6);
    const eased = supplyUse(
      suit,
      INVENTED_PERSON,
      [
        { startS: 0, endS: 600, effort: 'hard' },
        { startS: 600, endS: 3000, effort: 'steady' },
      ],
      span,
    );
    expect(eased.heatStorage.likely.peakJ).toBeCloseTo(600 * hard, 6);
    expect(eased.heatStorage.likely.limitAtS).toBeNull();
    // All heat leaves through water in the end: energy in = latent heat of the water used.
    const joules = 600 * (3000 * BTU_PER_H_IN_W + 40) + 2400 * (1000 * BTU_PER_H_IN_W + 40);
    expect(eased.end.water.likely.used * 2.5e6).toBeCloseTo(joules, 3);
  });
});
