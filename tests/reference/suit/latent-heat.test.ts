import { describe, expect, it } from 'vitest';
import { coolingWaterKgPerS, latentHeatJPerKg } from '@handrail/eva/suit/latent-heat';

describe('cooling water', () => {
  it('takes 2500 kJ/kg to vaporise and 2834 kJ/kg to sublime at 0 °C', () => {
    expect(latentHeatJPerKg('vaporisation', 0)).toBeCloseTo(2.5e6, 6); // J/kg [RY89]
    expect(latentHeatJPerKg('sublimation', 0)).toBeCloseTo(2.834e6, 6); // J/kg [RY89]
  });

  it('is known from −40 to 40 °C, and to 0 °C for ice', () => {
    expect(latentHeatJPerKg('vaporisation', 40)).toBeCloseTo(2_409_040, 3); // J/kg, the fit at its end [RY89]
    expect(() => latentHeatJPerKg('vaporisation', 41)).toThrow('must be -40 to 40 °C');
    expect(() => latentHeatJPerKg('sublimation', 1)).toThrow('must be -40 to 0 °C');
  });

  // Accuracy 0.5 %: the published figures rest on 2500.9 kJ/kg.
  it.each([
    ['vaporisation', 100, 143.9], // W, g/h [IAPWS-LV]
    ['sublimation', 100, 127.0], // W, g/h [RY89]
    ['vaporisation', 293.07, 421.9], // W, g/h [IAPWS-LV]
    ['sublimation', 293.07, 372.3], // W, g/h [RY89]
  ] as const)('by %s of %f W uses %f g an hour', (change, heatW, gramsPerHour) => {
    const used = coolingWaterKgPerS(heatW, latentHeatJPerKg(change, 0)) * 3600 * 1000;
    expect(Math.abs(used / gramsPerHour - 1)).toBeLessThan(0.005);
  });
});
