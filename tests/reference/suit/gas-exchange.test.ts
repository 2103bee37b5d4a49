// oxlint-disable oxc/approx-constant -- 0.707 is the quotient for fat in the table, not 1/√2
import { describe, expect, it } from 'vitest';
import { gasExchange, J_PER_KCAL, oxygenEnergyKcalPerL, weirMetabolicW } from '@handrail/eva/suit/gas-exchange';

describe('energy per litre of oxygen', () => {
  // Accuracy: the printed third decimal.
  it.each([
    [0.707, 4.686], // kcal/L [LUSK24]
    [0.75, 4.739], // kcal/L [LUSK24]
    [0.8, 4.801], // kcal/L [LUSK24]
    [0.82, 4.825], // kcal/L [LUSK24]
    [0.85, 4.862], // kcal/L [LUSK24]
    [0.9, 4.924], // kcal/L [LUSK24]
    [0.95, 4.985], // kcal/L [LUSK24]
    [1.0, 5.047], // kcal/L [LUSK24]
  ])('at a respiratory quotient of %f is %f kcal/L in the 1924 table', (rq, kcalPerL) => {
    expect(Math.abs(oxygenEnergyKcalPerL('lusk-1924', rq) - kcalPerL)).toBeLessThan(1.001e-3);
  });

  it.each([
    [0.7036, 4.851], // kcal/L [PERONNET91]
    [0.75, 4.904], // kcal/L [PERONNET91]
    [0.85, 5.02], // kcal/L [PERONNET91]
    [0.996, 5.189], // kcal/L [PERONNET91]
  ])('at a respiratory quotient of %f is %f kcal/L in the 1991 table', (rq, kcalPerL) => {
    expect(oxygenEnergyKcalPerL('peronnet-massicotte-1991', rq)).toBeCloseTo(kcalPerL, 6);
  });

  it('by Weir is within 1 % of Lusk over the whole range of quotients', () => {
    for (let rq = 0.707; rq <= 1; rq += 0.01) {
      const ratio = oxygenEnergyKcalPerL('weir-1949', rq) / oxygenEnergyKcalPerL('lusk-1924', rq);
      expect(Math.abs(ratio - 1)).toBeLessThan(0.01); // two independent conversions [WEIR49] [LUSK24]
    }
    expect(oxygenEnergyKcalPerL('weir-1949', 1)).toBeCloseTo(5.047, 3); // kcal/L, both sources [WEIR49] [LUSK24]
  });

  it('by the 1991 table is about 3 % above the 1924 one, so an answer must say which it took', () => {
    const ratio = oxygenEnergyKcalPerL('peronnet-massicotte-1991', 0.85) / oxygenEnergyKcalPerL('lusk-1924', 0.85);
    expect(ratio).toBeCloseTo(5.02 / 4.862, 3); // [PERONNET91] over [LUSK24]
  });
});

describe('calorimetry', () => {
  it('gives 2084.7 kcal a day for 0.30 L/min of oxygen and 0.24 of CO2 by Weir', () => {
    const kcalPerDay = (weirMetabolicW(0.3, 0.24) * 86_400) / J_PER_KCAL;
    expect(Math.abs(kcalPerDay - 2084.7)).toBeLessThan(0.1); // kcal/day [WEIR49] worked example
  });

  it('gives 74.59 kcal/h for 15.7 L/h of oxygen at the table quotient 0.76', () => {
    expect(12.0 / 15.7).toBeCloseTo(0.7643, 4);
    expect(Math.abs(15.7 * oxygenEnergyKcalPerL('lusk-1924', 0.76) - 74.59)).toBeLessThan(0.1); // kcal/h [LUSK24] textbook example
  });

  it('turns a metabolic rate into the oxygen and CO2 from which Weir recovers it', () => {
    const { oxygenLPerMin, carbonDioxideLPerMin } = gasExchange(293.07, 0.85, 'weir-1949');
    expect(weirMetabolicW(oxygenLPerMin, carbonDioxideLPerMin)).toBeCloseTo(293.07, 9);
    const lusk = gasExchange(293.07, 0.85, 'lusk-1924');
    // Second method: heat recovered from the 1924 table's gas by the 1949 equation.
    expect(Math.abs(weirMetabolicW(lusk.oxygenLPerMin, lusk.carbonDioxideLPerMin) / 293.07 - 1)).toBeLessThan(0.01);
  });

  it('refuses a quotient outside the table, with the range in the message', () => {
    expect(() => oxygenEnergyKcalPerL('lusk-1924', 0.69)).toThrow('0.707 to 1');
    expect(() => oxygenEnergyKcalPerL('peronnet-massicotte-1991', 1)).toThrow('0.7036 to 0.996');
  });
});
