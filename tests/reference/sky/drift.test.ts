import { dayNight } from '@handrail/eva/sky/day-night';
import { fieldPasses } from '@handrail/eva/sky/field-region';
import { propagate } from '@handrail/eva/sky/propagate';
import { radioContacts } from '@handrail/eva/sky/radio-contact';
import { readTwoLineElements } from '@handrail/eva/sky/read-two-line-elements';
import { sunTemeKm } from '@handrail/eva/sky/sun-position';
import { totalS } from '@handrail/eva/sky/window-set';
import { worksiteLight } from '@handrail/eva/sky/worksite-light';
import { describe, expect, it } from 'vitest';
import { inventedStation } from './invented-station.ts';
import { circularOrbit } from './circular-orbit.ts';
import { RECORDED } from './drift-figures.ts';
import { NEAR_EARTH } from './sgp4-verification.ts';

/**
 * The second tolerance: against our own last figures, so that a change of library or of code is noticed even where it stays
 * within the accuracy asked for against the sources. Agreement here says "unchanged", never "right".
 */
const START = Date.UTC(2027, 8, 14);
const ORBIT = circularOrbit(415, 44, 57, START);

interface Drift {
  readonly what: string;
  readonly tolerance: number;
  readonly unit: string;
  readonly figures: () => readonly number[];
}

const DRIFT: readonly Drift[] = [
  {
    what: 'sgp4 position after two days',
    tolerance: 1e-9,
    unit: 'km',
    figures: () => {
      const orbit = readTwoLineElements(NEAR_EARTH[1]?.lines ?? '');
      return propagate(orbit, [orbit.epochUtcMs + 2 * 86_400_000])[0]?.positionTemeKm ?? [];
    },
  },
  { what: 'sun in TEME', tolerance: 1e-3, unit: 'km', figures: () => sunTemeKm(START) },
  {
    what: 'edges of day and night',
    tolerance: 2,
    unit: 'ms after the start',
    figures: () =>
      dayNight(ORBIT, START, START + 14_400_000)
        .night.flat()
        .map((t) => t - START),
  },
  {
    what: 'contact with a relay',
    tolerance: 60,
    unit: 'ms after the start',
    figures: () =>
      radioContacts(
        ORBIT,
        { kind: 'relay', name: 'east', longitudeRad: 1, grazingHeightKm: 100 },
        null,
        START,
        START + 14_400_000,
      )
        .inView.flat()
        .map((t) => t - START),
  },
  {
    what: 'weak field',
    tolerance: 150,
    unit: 'ms after the start',
    figures: () =>
      fieldPasses(ORBIT, { thresholdNt: 32_000, at: 'ground', beyondModel: 'refuse' }, START, START + 43_200_000)
        .windows.flat()
        .map((t) => t - START),
  },
  {
    what: 'light at every seventh place of the station',
    tolerance: 0.3,
    unit: 's lit',
    figures: () => {
      const request = inventedStation();
      const worksites = request.worksites.filter((_, k) => k % 7 === 0);
      return worksiteLight({ ...request, worksites, endUtcMs: request.startUtcMs + 7_200_000 }).worksites.map((site) =>
        totalS(site.lit),
      );
    },
  },
];

describe('unchanged since last recorded (says nothing about right)', () => {
  it.each(DRIFT)('$what, to $tolerance $unit', ({ what, tolerance, figures }) => {
    const now = figures();
    const before = RECORDED[what] ?? [];
    // On a wanted change: copy this list into drift-figures.ts in the commit that explains it.
    const message = `now ${JSON.stringify(now)}`;
    expect(now.length, message).toBe(before.length);
    for (const [k, figure] of now.entries())
      expect(Math.abs(figure - (before[k] ?? Number.NaN)), message).toBeLessThanOrEqual(tolerance);
  });
});
