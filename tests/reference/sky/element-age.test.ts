import { elementAge } from '@handrail/eva/sky/element-age';
import type { KeplerOrbit, Sgp4Orbit } from '@handrail/eva/sky/orbit';
import { j2Rates, type OrbitState, propagate } from '@handrail/eva/sky/propagate';
import { readTwoLineElements } from '@handrail/eva/sky/read-two-line-elements';
import { norm, subtract } from '@handrail/quantity/vector';
import { describe, expect, it } from 'vitest';
import { circularOrbit } from './circular-orbit.ts';
import { NEAR_EARTH } from './sgp4-verification.ts';

const DAY = 86_400_000;

describe('how far old elements may be off (a standard case, not a bound)', () => {
  const orbit = readTwoLineElements(NEAR_EARTH[1]?.lines ?? '');
  // 15.56387 rev/day is an axis of 6776 km, so 42,576 km round and 7.67 km/s; half the decay is 8.885e-5 rev/day².
  const roundKm = 42_576;

  it('for SGP4: 1 km at the epoch [common practice], 1 km a day [LEVIT2011], a quarter of the drag [common practice]', () => {
    expect(elementAge(orbit, orbit.epochUtcMs).alongTrackErrorKm).toBeCloseTo(1, 6);
    const week = elementAge(orbit, orbit.epochUtcMs + 7 * DAY);
    expect(Math.abs(week.alongTrackErrorKm - (1 + 7 + 0.25 * 8.885e-5 * 49 * roundKm))).toBeLessThan(0.1);
    expect(Math.abs(week.timingErrorS - week.alongTrackErrorKm / 7.67)).toBeLessThan(0.01);
    expect(week.ageDays).toBeCloseTo(7, 9);
    expect(week.basis.join(' ')).toContain('LEVIT2011');
  });

  it.each([28.5, 44, 51.6, 75])(
    'for averaged elements with J2 drift at %i° covers what SGP4 without drag says, over three days',
    (inclinationDeg) => {
      const epochUtcMs = Date.UTC(2031, 8, 14);
      const degree = Math.PI / 180;
      const eccentricity = 0.001;
      // SGP4's mean motion is the whole rate of the mean anomaly: find the axis whose J2 rate it is.
      const rate = (15.52 * 2 * Math.PI) / 86_400;
      let axis = 6790;
      for (let k = 0; k < 30; k++)
        axis *= (j2Rates(axis, eccentricity, inclinationDeg * degree).meanAnomalyRadS / rate) ** (2 / 3);
      const simple: KeplerOrbit = {
        ...circularOrbit(0, inclinationDeg, 57, epochUtcMs),
        semiMajorAxisKm: axis,
        eccentricity,
        argPerigeeRad: 10 * degree,
        meanAnomalyRad: 20 * degree,
        halfMeanMotionRateRevPerDay2: 0,
      };
      const sgp4: Sgp4Orbit = {
        ...orbit,
        epochUtcMs,
        meanMotionRevPerDay: 15.52,
        eccentricity,
        inclinationDeg,
        raanDeg: 57,
        argPerigeeDeg: 10,
        meanAnomalyDeg: 20,
        bstarPerEarthRadius: 0,
        lines: null,
      };
      for (let minutes = 0; minutes <= 4320; minutes += 37) {
        const t = epochUtcMs + minutes * 60_000;
        const [[a], [b]] = [propagate(simple, [t]), propagate(sgp4, [t])];
        const apartKm = norm(subtract((a as OrbitState).positionTemeKm, (b as OrbitState).positionTemeKm));
        expect(apartKm).toBeLessThan(elementAge(simple, t).alongTrackErrorKm);
        expect(apartKm).toBeGreaterThan(0.1);
      }
    },
  );

  it('counts an instant before the epoch as far off as one after it', () => {
    expect(elementAge(orbit, orbit.epochUtcMs - 3 * DAY).alongTrackErrorKm).toBeCloseTo(
      elementAge(orbit, orbit.epochUtcMs + 3 * DAY).alongTrackErrorKm,
      9,
    );
  });

  it('says of Keplerian elements that drag is not in them, and of a two-body ellipse that its plane stands still', () => {
    const j2 = elementAge(circularOrbit(415, 44, 0, 0), 2 * DAY);
    const two = elementAge(circularOrbit(415, 44, 0, 0, 'two-body'), 2 * DAY);
    expect(j2.basis.join(' ')).toContain('drag is not modelled');
    // 44° at 415 km: the node goes back by some 5.7° a day (common practice), 670 km along the equator.
    expect(two.alongTrackErrorKm - j2.alongTrackErrorKm).toBeGreaterThan(2 * 670);
  });

  it('does not take a drag that is left out, or zero beside a drag term, for no drag', () => {
    const left = { ...orbit, halfMeanMotionRateRevPerDay2: null };
    const zero = { ...orbit, halfMeanMotionRateRevPerDay2: 0 };
    for (const silent of [left, zero]) {
      const age = elementAge(silent, orbit.epochUtcMs + 3 * DAY);
      expect(age.alongTrackErrorKm).toBeGreaterThan(4 + 10);
      expect(age.basis.join(' ')).toContain('assumed decay');
    }
    expect(elementAge({ ...zero, bstarPerEarthRadius: 0 }, orbit.epochUtcMs + 3 * DAY).alongTrackErrorKm).toBeCloseTo(
      4,
      6,
    );
  });

  it('never says more than half a revolution', () => {
    const far = elementAge(circularOrbit(415, 44, 0, 0, 'two-body'), 300 * DAY);
    expect(far.alongTrackErrorKm).toBeCloseTo(Math.PI * 6793.137, 3);
  });
});
