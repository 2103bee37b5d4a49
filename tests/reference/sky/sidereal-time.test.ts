import { gmstRad } from '@handrail/eva/sky/sidereal-time';
import { gstime } from 'satellite.js';
import { describe, expect, it } from 'vitest';

const degrees = (utcMs: number): number => (gmstRad(utcMs) * 180) / Math.PI;

describe('Greenwich mean sidereal time', () => {
  it.each([
    { at: '1992-08-20T12:14:00Z', deg: 152.578788, source: '[VALLADO] example 3-5' },
    { at: '1987-04-10T00:00:00Z', deg: 197.693195, source: '[MEEUS] example 12.a' },
    { at: '1987-04-10T19:21:00Z', deg: 128.737873, source: '[MEEUS] example 12.b' },
  ])('is $deg° at $at $source', ({ at, deg }) => {
    expect(Math.abs(degrees(Date.parse(at)) - deg)).toBeLessThanOrEqual(1e-5);
  });

  it('agrees with a second implementation (satellite.js) over a century', () => {
    for (let year = 1958; year < 2056; year += 3) {
      const utcMs = Date.UTC(year, year % 12, 1 + (year % 28), year % 24, 13, 7);
      expect(Math.abs(gmstRad(utcMs) - gstime(new Date(utcMs)))).toBeLessThanOrEqual(2e-8);
    }
  });

  it('gains by 15.041° an hour when UT1 is an hour ahead', () => {
    const utcMs = Date.UTC(2031, 8, 14);
    const gainDeg = ((gmstRad(utcMs, 3600) - gmstRad(utcMs)) * 180) / Math.PI;
    expect((gainDeg + 360) % 360).toBeCloseTo(15.04107, 4);
  });
});
