import type { NamedWindowSet, SkyRequest } from '@handrail/eva/sky/sky-windows';
import { skyWindows } from '@handrail/eva/sky/sky-windows';
import { intersection, totalS, union } from '@handrail/eva/sky/window-set';
import { timingPadS } from '@handrail/eva/sky/element-age';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inventedStation } from '../../reference/sky/invented-station.ts';
import { stationOrbits } from './in-range-orbits.ts';

const { attitude, shape, worksites } = inventedStation();
const small = {
  ...shape,
  bodies: shape.bodies.filter((body) => body.name.startsWith('wing') || body.name === 'radiator'),
};

function requestFor(orbit: SkyRequest['orbit'], hours: number): SkyRequest {
  const startUtcMs = orbit.epochUtcMs + 86_400_000;
  const place = worksites[0] as NonNullable<(typeof worksites)[number]>;
  return {
    orbit,
    startUtcMs,
    endUtcMs: startUtcMs + hours * 3_600_000,
    vehicle: { attitude, shape: small },
    worksites: [place],
    sightLines: [{ name: 'down the spine', from: place, direction: [0, 1, 0], withinRad: 0.35 }],
    radio: {
      partners: [
        { kind: 'relay', name: 'east', longitudeRad: 1, grazingHeightKm: 100 },
        { kind: 'relay', name: 'west', longitudeRad: -1.5, grazingHeightKm: 100 },
      ],
      antennas: [{ name: 'mast', positionM: [0, 0, -9], joint: null, cone: null, clearanceM: 0.1 }],
      handoverS: 20,
      shortestLinkS: 60,
    },
    fieldRegion: { thresholdNt: 32_000, at: 'ground', beyondModel: 'hold-last' },
  };
}

const named = (sets: readonly NamedWindowSet[], name: string): NamedWindowSet['intervals'] =>
  sets.find((set) => set.name === name)?.intervals ?? [];

describe('the named window sets', () => {
  it('divide the interval: day, penumbra, night; coverage and gap; and light lies within the day', () => {
    const late = stationOrbits.map((orbit) => ({
      ...orbit,
      epochUtcMs: Date.UTC(2016, 0, 1) + (orbit.epochUtcMs % 800_000_000_000) / 2,
    }));
    fc.assert(
      fc.property(late, (orbit) => {
        const request = requestFor(orbit, 3);
        const sets = skyWindows(request);
        const whole = 3 * 3600;
        expect(totalS(named(sets, 'day')) + totalS(named(sets, 'penumbra')) + totalS(named(sets, 'night'))).toBeCloseTo(
          whole,
          2,
        );
        expect(totalS(union(named(sets, 'day'), named(sets, 'penumbra'), named(sets, 'night')))).toBeCloseTo(whole, 2);
        expect(totalS(named(sets, 'coverage')) + totalS(named(sets, 'coverage gap'))).toBeCloseTo(whole, 2);
        const contact = union(named(sets, 'contact east'), named(sets, 'contact west'));
        expect(totalS(intersection(named(sets, 'coverage'), contact))).toBeCloseTo(totalS(named(sets, 'coverage')), 2);
        for (const name of ['lit place 1', 'own shadow place 1', 'sun in eyes down the spine']) {
          expect(totalS(intersection(named(sets, name), named(sets, 'day')))).toBeCloseTo(totalS(named(sets, name)), 2);
        }
        for (const set of sets) {
          expect(set.padS).toBe(timingPadS(orbit, request.startUtcMs, request.endUtcMs));
          for (const [k, [from, to]] of set.intervals.entries()) {
            expect(from).toBeLessThan(to);
            expect(from).toBeGreaterThanOrEqual(k === 0 ? request.startUtcMs : (set.intervals[k - 1]?.[1] ?? 0));
            expect(to).toBeLessThanOrEqual(request.endUtcMs);
          }
        }
      }),
      { numRuns: 15 },
    );
  });

  it('claim nothing that was not asked for', () => {
    const request = requestFor(inventedStation().orbit, 2);
    const names = skyWindows({ ...request, vehicle: null, radio: null, fieldRegion: null }).map((set) => set.name);
    expect(names).toEqual(['day', 'night', 'penumbra']);
    expect(skyWindows(request).map((set) => set.id)).toContain('sun-in-eyes-down-the-spine');
  });

  it('say where they come from and how old the elements are', () => {
    const [day] = skyWindows({ ...requestFor(inventedStation().orbit, 2), radio: null, fieldRegion: null });
    expect(day?.source).toContain('elements 1.0 d old');
    expect(day?.source).toContain('J2 drift');
  });
});
