import { describe, expect, it } from 'vitest';
import { between, exactly } from '@handrail/quantity/sourced-value';
import { radiatingTimeConstantS, radiativeCoolingS, STEFAN_BOLTZMANN } from '@handrail/eva/thermal/radiating-body';
import {
  lumpedTemperatureK,
  timeToTemperatureS,
  type UnpoweredUnit,
  unpoweredLimit,
} from '@handrail/eva/thermal/unpowered-unit';

describe('a unit without power', () => {
  it('closes 63.2 % of the gap in one time constant and half of it in ln 2 of one', () => {
    expect((300 - lumpedTemperatureK(300, 200, 3600, 3600)) / 100).toBeCloseTo(0.632, 3); // 1 − 1/e [INCROPERA7] §5.1
    expect(timeToTemperatureS(300, 200, 3600, 250)).toBeCloseTo(3600 * Math.LN2, 9);
  });

  it('agrees with integration in small steps', () => {
    // Second method: explicit midpoint steps of 1 s on dT/dt = (Ts − T)/τ.
    let temperature = 293;
    for (let t = 0; t < 5400; t++) {
      const half = temperature + (180 - temperature) / 7200 / 2;
      temperature += (180 - half) / 7200;
    }
    expect(Math.abs(lumpedTemperatureK(293, 180, 7200, 5400) - temperature)).toBeLessThan(1e-5);
  });

  it('never reaches a limit that lies beyond its surroundings', () => {
    expect(timeToTemperatureS(293, 260, 3600, 250)).toBeNull();
    expect(timeToTemperatureS(293, 310, 3600, 280)).toBeNull();
    expect(timeToTemperatureS(293, 200, 3600, 293)).toBe(0);
    // A hair away from the limit is now, not never.
    expect(timeToTemperatureS(100.00000000000009, 399.99999999999943, 60, 100.0000000000001)).toBe(0);
  });

  const unit = {
    kind: 'lumped' as const,
    id: 'pump',
    startK: between(288, 293, 298, 'drawn for tests'),
    surroundingsK: between(150, 200, 240, 'drawn for tests'),
    timeConstantS: between(5400, 7200, 9000, 'drawn for tests'),
    lowestK: 253,
    highestK: 323,
  } satisfies UnpoweredUnit;

  it('has a clock for the coldest start, coldest surroundings, shortest time constant', () => {
    const limit = unpoweredLimit(unit);
    expect(limit.worstS).toBeCloseTo(5400 * Math.log((288 - 150) / (253 - 150)), 6);
    expect(limit.likelyS).toBeCloseTo(7200 * Math.log((293 - 200) / (253 - 200)), 6);
    expect(limit.bestS).toBeCloseTo(9000 * Math.log((298 - 240) / (253 - 240)), 6);
    expect(limit.meets).toBe('lowest');
  });

  it('in sun meets the hot limit, and may never meet one where the surroundings may be mild', () => {
    const sunny = unpoweredLimit({ ...unit, surroundingsK: between(330, 360, 390, 'drawn') });
    expect(sunny.meets).toBe('highest');
    expect(sunny.worstS).toBeCloseTo(5400 * Math.log((390 - 298) / (390 - 323)), 6);
    const mild = unpoweredLimit({ ...unit, surroundingsK: between(200, 290, 340, 'drawn') });
    expect(mild.likelyS).toBeNull();
    expect(mild.bestS).toBeNull();
    expect(mild.worstS).not.toBeNull();
  });

  it('with minutes stated by its owner takes those, least first', () => {
    const limit = unpoweredLimit({ kind: 'stated', id: 'pump', limitS: between(2400, 2700, 3000, 'owner') });
    expect(limit).toEqual({ basis: 'stated', worstS: 2400, likelyS: 2700, bestS: 3000, meets: null });
  });

  it('without any limit, or starting beyond one, is refused', () => {
    expect(() => unpoweredLimit({ ...unit, lowestK: null, highestK: null })).toThrow('pump states no temperature');
    expect(() => unpoweredLimit({ ...unit, startK: exactly(250, 'drawn') })).toThrow('outside its limits');
  });
});

describe('a radiating body', () => {
  const body = { heatCapacityJPerK: 45_000, areaM2: 1.2, emissivity: 0.8 };

  it('cools as small steps of σ T⁴ say', () => {
    // Second method: steps of 0.5 s until 250 K.
    let temperature = 293;
    let seconds = 0;
    const slope = (t: number) => (-0.8 * 1.2 * STEFAN_BOLTZMANN * t ** 4) / 45_000;
    while (temperature > 250) {
      temperature += 0.5 * slope(temperature + 0.25 * slope(temperature));
      seconds += 0.5;
    }
    expect(Math.abs(radiativeCoolingS(body, 293, 250) - seconds)).toBeLessThan(0.51);
  });

  it('gives 459 W/m² off a black surface at 300 K, and the linear figure is the cautious one', () => {
    expect(STEFAN_BOLTZMANN * 300 ** 4).toBeCloseTo(459.3, 1); // W/m² [INCROPERA7] black body at 300 K
    const tau = radiatingTimeConstantS(body, 293);
    const linear = timeToTemperatureS(293, 3, tau, 250) ?? 0;
    expect(linear).toBeLessThan(radiativeCoolingS(body, 293, 250));
    // About one temperature the linear cooling rate towards T − ΔT equals the change of σ T⁴ over ΔT.
    const change = (t: number) => (0.8 * 1.2 * STEFAN_BOLTZMANN * t ** 4) / 45_000;
    expect((change(293.01) - change(292.99)) / 0.02).toBeCloseTo(1 / tau, 9);
  });
});
