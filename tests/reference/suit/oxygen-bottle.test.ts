import { describe, expect, it } from 'vitest';
import { oxygenMassKg, oxygenPressurePa } from '@handrail/eva/suit/oxygen-bottle';
import { oxygenCompressibility } from '@handrail/eva/suit/oxygen-compressibility';

describe('stored oxygen', () => {
  // Outside truth: another program's implementation of the same reference equation; it prints six decimals. Accuracy 2e-6 in Z.
  it.each([
    [273.15, 6.2e6, 0.946477], // K, Pa, Z [COOLPROP]
    [293.15, 6.2e6, 0.962395], // K, Pa, Z [COOLPROP]
    [293.15, 1.4e6, 0.990506], // K, Pa, Z [COOLPROP]
    [293.15, 4.1e7, 1.062238], // K, Pa, Z [COOLPROP]
    [250, 2e7, 0.848032], // K, Pa, Z [COOLPROP]
    [300, 1.2e7, 0.948656], // K, Pa, Z [COOLPROP]
    [293.15, 1e5, 0.999306], // K, Pa, Z [COOLPROP]
    [200, 8e7, 1.636599], // K, Pa, Z: the corner of the range [COOLPROP]
    [320, 8e7, 1.424825], // K, Pa, Z: the corner of the range [COOLPROP]
    [200, 2e7, 0.664336], // K, Pa, Z: where it is furthest below 1 [COOLPROP]
    [320, 4e7, 1.075474], // K, Pa, Z [COOLPROP]
  ])('at %f K and %f Pa has a compressibility of %f', (temperatureK, pressurePa, z) => {
    expect(Math.abs(oxygenCompressibility(pressurePa, temperatureK) - z)).toBeLessThan(2e-6);
  });

  it('without pressure is ideal and weighs nothing', () => {
    expect(oxygenCompressibility(0, 293)).toBe(1);
    expect(oxygenMassKg('real', 0, 293, 0.01)).toBe(0);
  });

  it('weighs 84.58 kg per cubic metre at 6.2 MPa and 20 °C, 4 % more than an ideal gas would', () => {
    // The gas constant of the fit is 1.5e-5 off today's, and molar masses differ in the sixth digit: accuracy 5e-5.
    expect(Math.abs(oxygenMassKg('real', 6.2e6, 293.15, 1) / 84.577366 - 1)).toBeLessThan(5e-5); // kg [COOLPROP]
    expect(oxygenMassKg('real', 6.2e6, 293.15, 1) / oxygenMassKg('ideal', 6.2e6, 293.15, 1)).toBeCloseTo(
      1 / 0.962395,
      4,
    ); // [COOLPROP]
  });

  it('meets the second virial coefficient of oxygen, −16 cm³/mol at 300 K, at low pressure', () => {
    const pressure = 1e5;
    const virial = ((oxygenCompressibility(pressure, 300) - 1) * 8.314462618 * 300) / pressure;
    expect(Math.abs(virial * 1e6 - -16)).toBeLessThan(1); // cm³/mol [CRC-VIRIAL] MEMORY
  });

  it.each(['ideal', 'real'] as const)('gives the pressure back from its mass, %s', (law) => {
    for (const pressure of [1e5, 3e6, 6.2e6, 2e7, 4.1e7]) {
      const mass = oxygenMassKg(law, pressure, 285, 0.0075);
      // Drift: the two directions agree to the difference between the fit's gas constant and today's.
      expect(Math.abs(oxygenPressurePa(law, mass, 285, 0.0075) / pressure - 1)).toBeLessThan(1e-4);
    }
  });
});
