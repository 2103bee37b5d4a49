import { Fault } from '@handrail/quantity/fault';
import type { Vector3 } from '@handrail/quantity/vector';
import { temeFromEqj } from './frames.ts';
import type { OrbitState } from './propagate.ts';
import { interpolated, type Matrix3, matrixOf, multiply, normalized, type Quaternion, transpose } from './rotation.ts';
import { cross, unit } from './vector-algebra.ts';

/**
 * How the vehicle is turned. Body axes are the vehicle's own, in which places and bodies are given.
 * LVLH (local vertical, local horizontal) axes: x forward along the track, y against the orbit normal (to the right when
 * looking forward with the Earth below), z down to the Earth's centre.
 */
export type AttitudeLaw =
  | { readonly kind: 'local-vertical'; readonly lvlhFromBody: Quaternion }
  | { readonly kind: 'inertial'; readonly frame: 'TEME' | 'EQJ'; readonly frameFromBody: Quaternion }
  | { readonly kind: 'table'; readonly frame: 'LVLH' | 'TEME' | 'EQJ'; readonly rows: readonly AttitudeRow[] };

export interface AttitudeRow {
  readonly utcMs: number;
  readonly frameFromBody: Quaternion;
}

/** Carries LVLH components into TEME. Undefined for a state that falls straight down, which no orbit in range has. */
export function temeFromLvlh(state: OrbitState): Matrix3 {
  const down = unit([-state.positionTemeKm[0], -state.positionTemeKm[1], -state.positionTemeKm[2]]);
  const normal = unit(cross(state.positionTemeKm, state.velocityTemeKmS));
  const right: Vector3 = [-normal[0], -normal[1], -normal[2]];
  const forward = cross(right, down);
  return [forward[0], right[0], down[0], forward[1], right[1], down[1], forward[2], right[2], down[2]];
}

/**
 * A law ready for use: the rotation that carries TEME components into body components at a state. Between the rows of a
 * table the attitude follows the great circle at an even rate.
 * @throws Fault `sky/not-a-rotation`, `sky/bad-attitude` for an unordered table, `sky/out-of-range` outside the table
 */
export function bodyFromTeme(law: AttitudeLaw): (state: OrbitState) => Matrix3 {
  if (law.kind === 'local-vertical') {
    const bodyFromLvlh = transpose(matrixOf(normalized(law.lvlhFromBody)));
    return (state) => multiply(bodyFromLvlh, transpose(temeFromLvlh(state)));
  }
  if (law.kind === 'inertial') {
    const bodyFromFrame = transpose(matrixOf(normalized(law.frameFromBody)));
    if (law.frame === 'TEME') return () => bodyFromFrame;
    return (state) => multiply(bodyFromFrame, transpose(temeFromEqj(state.utcMs)));
  }
  const quaternionAt = tableOf(law.rows);
  const { frame } = law;
  return (state) => {
    const bodyFromFrame = transpose(matrixOf(quaternionAt(state.utcMs)));
    if (frame === 'TEME') return bodyFromFrame;
    const temeFromFrame = frame === 'EQJ' ? temeFromEqj(state.utcMs) : temeFromLvlh(state);
    return multiply(bodyFromFrame, transpose(temeFromFrame));
  };
}

function tableOf(rows: readonly AttitudeRow[]): (utcMs: number) => Quaternion {
  const steady = rows.map((row) => ({ utcMs: row.utcMs, q: normalized(row.frameFromBody) }));
  const disordered = steady.findIndex((row, k) => k > 0 && !(row.utcMs > (steady[k - 1] as AttitudeStep).utcMs));
  if (steady.length < 2 || disordered >= 0) {
    const what =
      steady.length < 2
        ? `has ${steady.length} rows; it needs two or more`
        : `is not in order of time at row ${disordered + 1}`;
    throw new Fault('sky/bad-attitude', `the attitude table ${what}`, {
      values: { rows: steady.length, row: disordered + 1 },
    });
  }
  const first = steady[0] as AttitudeStep;
  const last = steady.at(-1) as AttitudeStep;
  return (utcMs) => {
    if (!(utcMs >= first.utcMs && utcMs <= last.utcMs)) {
      const [from, to, asked] = [first.utcMs, last.utcMs, utcMs].map((ms) => new Date(ms).toISOString());
      throw new Fault('sky/out-of-range', `the attitude table runs from ${from} to ${to}; asked for ${asked}`, {
        values: { min: first.utcMs, max: last.utcMs, value: utcMs },
      });
    }
    let low = 0;
    let high = steady.length - 1;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if ((steady[middle] as AttitudeStep).utcMs <= utcMs) low = middle;
      else high = middle;
    }
    const [a, b] = [steady[low] as AttitudeStep, steady[high] as AttitudeStep];
    return interpolated(a.q, b.q, (utcMs - a.utcMs) / (b.utcMs - a.utcMs));
  };
}

interface AttitudeStep {
  readonly utcMs: number;
  readonly q: Quaternion;
}
