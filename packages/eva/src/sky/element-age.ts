import { DAY_MS, EARTH_MU_KM3_S2 } from './earth.ts';
import { instantInRange } from './in-range.ts';
import type { Orbit } from './orbit.ts';
import { j2Rates } from './propagate.ts';

/** How old the elements are at an instant and how far off they may have drifted: data for a finding, and the pad of windows. */
export interface ElementAge {
  /** Negative before the epoch. */
  readonly ageDays: number;
  readonly alongTrackErrorKm: number;
  /** The same as time: how early or late the vehicle may come by, s. */
  readonly timingErrorS: number;
  /** The parts of the estimate in words, with their sources. */
  readonly basis: readonly string[];
}

/** Share of the drag that a day's air density is commonly off by. MEMORY: common practice, not read in a source. */
const DENSITY_UNCERTAINTY = 0.25;
/** Half the decay of the mean motion of a station near 400 km when the elements do not give it, rev/day². MEMORY. */
const ASSUMED_HALF_DECAY_REV_PER_DAY2 = 2e-4;

/**
 * Expected error along the track, one standard case and not a bound: a reboost after the epoch is not in it.
 * - SGP4: 1 km at the epoch (common practice), 1 km a day, and a quarter of the drag term;
 * - J2 drift: 17 km at the epoch for mean elements and 2 km a day, as a comparison with SGP4 shows (the flattening's short
 *   waves are not in it), and the whole drag, which it does not model. Elements
 *   taken at one instant instead of averaged over a revolution go off faster, up to 90 km a revolution;
 * - two-body: the above and the whole turning of plane and perigee.
 * @source [LEVIT2011] C. Levit, W. Marshall, Advances in Space Research 47 (2011), abstract: their 100 m a day is about a
 * tenth of what single element sets give with SGP4; other figures common practice, from memory
 */
export function elementAge(orbit: Orbit, utcMs: number): ElementAge {
  instantInRange('the instant', utcMs);
  const ageDays = (utcMs - orbit.epochUtcMs) / DAY_MS;
  const days = Math.abs(ageDays);
  const axisKm =
    orbit.kind === 'sgp4'
      ? Math.cbrt(EARTH_MU_KM3_S2 * (DAY_MS / 1000 / orbit.meanMotionRevPerDay / (2 * Math.PI)) ** 2)
      : orbit.semiMajorAxisKm;
  const circumferenceKm = 2 * Math.PI * axisKm;
  // Made-up element sets often carry drag in B* alone and a zero here; zero would then promise too much.
  const blank = orbit.kind === 'sgp4' && orbit.halfMeanMotionRateRevPerDay2 === 0 && orbit.bstarPerEarthRadius !== 0;
  const given = blank ? null : orbit.halfMeanMotionRateRevPerDay2;
  const halfDecay = given ?? ASSUMED_HALF_DECAY_REV_PER_DAY2;
  const dragKm = Math.abs(halfDecay) * days * days * circumferenceKm;
  const assumed = given === null ? ', by an assumed decay of a station near 400 km' : '';
  const basis: string[] = [];
  let errorKm: number;
  if (orbit.kind === 'sgp4') {
    errorKm = 1 + days + DENSITY_UNCERTAINTY * dragKm;
    basis.push(
      '1 km at the epoch [common practice] and 1 km a day [LEVIT2011]',
      `a quarter of the drag, ${(DENSITY_UNCERTAINTY * dragKm).toFixed(1)} km${assumed} [common practice]`,
    );
  } else {
    errorKm = 17 + 2 * days + dragKm;
    basis.push(
      '17 km at the epoch and 2 km a day for averaged elements (compared with SGP4 without drag)',
      `drag is not modelled: ${dragKm.toFixed(1)} km${assumed}`,
    );
    if (orbit.kind === 'two-body') {
      const rates = j2Rates(axisKm, orbit.eccentricity, orbit.inclinationRad);
      const n = Math.sqrt(EARTH_MU_KM3_S2 / axisKm ** 3);
      const turning = Math.abs(rates.raanRadS) + Math.abs(rates.argPerigeeRadS + rates.meanAnomalyRadS - n);
      const turningKm = turning * days * 86_400 * axisKm;
      errorKm += turningKm;
      basis.push(
        `the turning of plane and perigee by the Earth's flattening is not modelled: ${turningKm.toFixed(1)} km [VALLADO]`,
      );
    }
  }
  basis.push('a reboost after the epoch is not counted');
  // Half a revolution off means that nothing is known of where the vehicle is; more has no meaning.
  const cappedKm = Math.min(errorKm, circumferenceKm / 2);
  const speedKmS = Math.sqrt(EARTH_MU_KM3_S2 / axisKm);
  return { ageDays, alongTrackErrorKm: cappedKm, timingErrorS: cappedKm / speedKmS, basis };
}

/** The pad of windows over an interval: the timing error where the elements are oldest, s. */
export function timingPadS(orbit: Orbit, startUtcMs: number, endUtcMs: number): number {
  return Math.max(elementAge(orbit, startUtcMs).timingErrorS, elementAge(orbit, endUtcMs).timingErrorS);
}
