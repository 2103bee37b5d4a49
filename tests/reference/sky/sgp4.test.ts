import { Fault } from '@handrail/quantity/fault';
import { propagate } from '@handrail/eva/sky/propagate';
import { checksum, readTwoLineElements } from '@handrail/eva/sky/read-two-line-elements';
import { describe, expect, it } from 'vitest';
import { DEEP_SPACE, LOST, NEAR_EARTH, type VerificationCase } from './sgp4-verification.ts';

/**
 * Printed digits end at 1e-8 km and 1e-9 km/s. An instant in milliseconds of UTC resolves 0.1 µs, 1e-6 km at 8 km/s; so the
 * accuracy asked of the near-Earth cases is 1e-6 km and 1e-9 km/s.
 */
const [NEAR_KM, NEAR_KM_S] = [1e-6, 2e-9];
/** Deep space carries lunar and solar terms of the day, for which implementations differ in the last centimetre. */
const [DEEP_KM, DEEP_KM_S] = [1e-5, 1e-8];

function worst(example: VerificationCase): { km: number; kmS: number } {
  const orbit = readTwoLineElements(example.lines);
  const states = propagate(
    orbit,
    example.rows.map(([minutes]) => orbit.epochUtcMs + minutes * 60_000),
  );
  let [km, kmS] = [0, 0];
  for (const [k, [, x, y, z, vx, vy, vz]] of example.rows.entries()) {
    const { positionTemeKm: p, velocityTemeKmS: v } = states[k] as (typeof states)[number];
    km = Math.max(km, Math.abs(p[0] - x), Math.abs(p[1] - y), Math.abs(p[2] - z));
    kmS = Math.max(kmS, Math.abs(v[0] - vx), Math.abs(v[1] - vy), Math.abs(v[2] - vz));
  }
  return { km, kmS };
}

describe('SGP4 gives the published verification vectors [VALLADO2006]', () => {
  it.each(NEAR_EARTH)('near the Earth: $what', (example) => {
    const { km, kmS } = worst(example);
    expect(km).toBeLessThanOrEqual(NEAR_KM);
    expect(kmS).toBeLessThanOrEqual(NEAR_KM_S);
  });

  it.each(DEEP_SPACE)('in deep space: $what', (example) => {
    const { km, kmS } = worst(example);
    expect(km).toBeLessThanOrEqual(DEEP_KM);
    expect(kmS).toBeLessThanOrEqual(DEEP_KM_S);
  });

  it('follows a falling body to the last published minute and then refuses', () => {
    const orbit = readTwoLineElements(LOST.lines);
    const [last] = propagate(orbit, [orbit.epochUtcMs + LOST.lastMinutes * 60_000]);
    for (const axis of [0, 1, 2] as const) expect(last?.positionTemeKm[axis]).toBeCloseTo(LOST.lastKm[axis], 5);
    expect(() => propagate(orbit, [orbit.epochUtcMs + (LOST.lastMinutes + 5) * 60_000])).toThrow(Fault);
  });
});

describe('the checksum of an element line', () => {
  it('is the one printed in column 69 of every published line', () => {
    const lines = [...NEAR_EARTH, ...DEEP_SPACE].flatMap((example) => example.lines.split('\n'));
    expect(lines.map((line) => checksum(line))).toEqual(lines.map((line) => Number(line[68])));
  });
});
