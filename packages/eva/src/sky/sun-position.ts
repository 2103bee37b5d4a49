import type { Vector3 } from '@handrail/quantity/vector';
import { Body, GeoVector } from 'astronomy-engine';
import { ASTRONOMICAL_UNIT_KM } from './earth.ts';
import { astroTime, temeFromEqj, temeFromMod } from './frames.ts';
import { rotate, transpose } from './rotation.ts';

/**
 * Apparent place of the Sun from the Earth's centre (light time and aberration counted), km.
 * Within 0.002° of the published ephemeris; the library claims one arcminute.
 * @param utcMs instant, UTC ms, 1957 to 2057
 * @throws Fault `sky/out-of-range`
 * @source [ASTRONOMY-ENGINE] astronomy-engine 2.1.19 (VSOP87 truncated)
 * @checked tests/reference/sky/sun.test.ts against three sources, and over a full year against a second formula
 */
export function sunEqjKm(utcMs: number): Vector3 {
  const v = GeoVector(Body.Sun, astroTime(utcMs), true);
  return [v.x * ASTRONOMICAL_UNIT_KM, v.y * ASTRONOMICAL_UNIT_KM, v.z * ASTRONOMICAL_UNIT_KM];
}

export function sunTemeKm(utcMs: number): Vector3 {
  return rotate(temeFromEqj(utcMs), sunEqjKm(utcMs));
}

export function sunModKm(utcMs: number): Vector3 {
  return rotate(transpose(temeFromMod(utcMs)), sunTemeKm(utcMs));
}

/**
 * The Sun in TEME over one interval by cubic interpolation between exact places two hours apart, for kernels that ask
 * some hundred thousand times. Off by less than 1e-9 rad from `sunTemeKm`.
 */
export function sunTrackTeme(startUtcMs: number, endUtcMs: number): (utcMs: number) => Vector3 {
  const stepMs = 7_200_000;
  const first = Math.floor(startUtcMs / stepMs) - 1;
  const count = Math.ceil(endUtcMs / stepMs) - first + 3;
  const nodes = Array.from({ length: count }, (_, k) => sunTemeKm((first + k) * stepMs));
  return (utcMs) => {
    const at = utcMs / stepMs - first;
    const k = Math.floor(at);
    const f = at - k;
    const p = nodes[k - 1];
    const q = nodes[k];
    const r = nodes[k + 1];
    const s = nodes[k + 2];
    if (p === undefined || q === undefined || r === undefined || s === undefined) return sunTemeKm(utcMs);
    const cp = (-f * (f - 1) * (f - 2)) / 6;
    const cq = ((f + 1) * (f - 1) * (f - 2)) / 2;
    const cr = (-(f + 1) * f * (f - 2)) / 2;
    const cs = ((f + 1) * f * (f - 1)) / 6;
    return [
      cp * p[0] + cq * q[0] + cr * r[0] + cs * s[0],
      cp * p[1] + cq * q[1] + cr * r[1] + cs * s[1],
      cp * p[2] + cq * q[2] + cr * r[2] + cs * s[2],
    ];
  };
}
