import { Fault } from '@handrail/quantity/fault';
import type { Vector3 } from '@handrail/quantity/vector';

/** A rotation as nine numbers, row by row. `rotate(m, v)` is m·v. */
export type Matrix3 = readonly [number, number, number, number, number, number, number, number, number];

/** [w, x, y, z], scalar first, unit length. As `aFromB` it carries components in B into components in A. */
export type Quaternion = readonly [number, number, number, number];

export const IDENTITY: Matrix3 = [1, 0, 0, 0, 1, 0, 0, 0, 1];

export function rotate(m: Matrix3, v: Vector3): Vector3 {
  return [
    m[0] * v[0] + m[1] * v[1] + m[2] * v[2],
    m[3] * v[0] + m[4] * v[1] + m[5] * v[2],
    m[6] * v[0] + m[7] * v[1] + m[8] * v[2],
  ];
}

/** The inverse of a rotation. */
export function transpose(m: Matrix3): Matrix3 {
  return [m[0], m[3], m[6], m[1], m[4], m[7], m[2], m[5], m[8]];
}

/** a·b: first b, then a. */
export function multiply(a: Matrix3, b: Matrix3): Matrix3 {
  const cell = (r: number, c: number): number =>
    (a[r * 3] as number) * (b[c] as number) +
    (a[r * 3 + 1] as number) * (b[c + 3] as number) +
    (a[r * 3 + 2] as number) * (b[c + 6] as number);
  return [cell(0, 0), cell(0, 1), cell(0, 2), cell(1, 0), cell(1, 1), cell(1, 2), cell(2, 0), cell(2, 1), cell(2, 2)];
}

/** Turns the axes (not the vector) by an angle about x: ROT1 of the astrodynamics texts. */
export function axesAboutX(angleRad: number): Matrix3 {
  const c = Math.cos(angleRad);
  const s = Math.sin(angleRad);
  return [1, 0, 0, 0, c, s, 0, -s, c];
}

/** Turns the axes about y: ROT2. */
export function axesAboutY(angleRad: number): Matrix3 {
  const c = Math.cos(angleRad);
  const s = Math.sin(angleRad);
  return [c, 0, -s, 0, 1, 0, s, 0, c];
}

/** Turns the axes about z: ROT3. */
export function axesAboutZ(angleRad: number): Matrix3 {
  const c = Math.cos(angleRad);
  const s = Math.sin(angleRad);
  return [c, s, 0, -s, c, 0, 0, 0, 1];
}

/** Turns a vector by an angle about a unit axis, right-handed (Rodrigues). */
export function turnAbout(axis: Vector3, angleRad: number): Matrix3 {
  const [x, y, z] = axis;
  const c = Math.cos(angleRad);
  const s = Math.sin(angleRad);
  const k = 1 - c;
  return [
    x * x * k + c,
    x * y * k - z * s,
    x * z * k + y * s,
    x * y * k + z * s,
    y * y * k + c,
    y * z * k - x * s,
    x * z * k - y * s,
    y * z * k + x * s,
    z * z * k + c,
  ];
}

/** Unit quaternion of the same direction; refuses one that is more than 1 % off unit length, which is a typing mistake. */
export function normalized(q: Quaternion): Quaternion {
  const length = Math.hypot(q[0], q[1], q[2], q[3]);
  if (!(Math.abs(length - 1) <= 0.01)) {
    throw new Fault(
      'sky/not-a-rotation',
      `the quaternion [${q.join(', ')}] has length ${length}; it must lie between 0.99 and 1.01`,
      {
        values: { quaternion: q, length },
        advice: 'give [w, x, y, z], scalar first, of unit length',
      },
    );
  }
  return [q[0] / length, q[1] / length, q[2] / length, q[3] / length];
}

export function matrixOf(q: Quaternion): Matrix3 {
  const [w, x, y, z] = q;
  return [
    1 - 2 * (y * y + z * z),
    2 * (x * y - w * z),
    2 * (x * z + w * y),
    2 * (x * y + w * z),
    1 - 2 * (x * x + z * z),
    2 * (y * z - w * x),
    2 * (x * z - w * y),
    2 * (y * z + w * x),
    1 - 2 * (x * x + y * y),
  ];
}

/**
 * Orientation of a body that is turned from the reference axes first by yaw about z, then pitch about the new y, then roll
 * about the newest x. The result carries body components into reference components.
 */
export function quaternionOfYawPitchRoll(yawRad: number, pitchRad: number, rollRad: number): Quaternion {
  const cy = Math.cos(yawRad / 2);
  const sy = Math.sin(yawRad / 2);
  const cp = Math.cos(pitchRad / 2);
  const sp = Math.sin(pitchRad / 2);
  const cr = Math.cos(rollRad / 2);
  const sr = Math.sin(rollRad / 2);
  return [
    cy * cp * cr + sy * sp * sr,
    cy * cp * sr - sy * sp * cr,
    cy * sp * cr + sy * cp * sr,
    sy * cp * cr - cy * sp * sr,
  ];
}

/** Great-circle interpolation, the short way round; `fraction` 0 gives a, 1 gives b. */
export function interpolated(a: Quaternion, b: Quaternion, fraction: number): Quaternion {
  let cosine = a[0] * b[0] + a[1] * b[1] + a[2] * b[2] + a[3] * b[3];
  const sign = cosine < 0 ? -1 : 1;
  cosine *= sign;
  const angle = Math.acos(Math.min(1, cosine));
  // Below a microradian the sines cancel; the straight line is exact to the last digit there.
  const [u, v] =
    angle < 1e-6
      ? [1 - fraction, fraction]
      : [Math.sin((1 - fraction) * angle) / Math.sin(angle), Math.sin(fraction * angle) / Math.sin(angle)];
  const w = v * sign;
  const mixed: Quaternion = [u * a[0] + w * b[0], u * a[1] + w * b[1], u * a[2] + w * b[2], u * a[3] + w * b[3]];
  return normalized(mixed);
}
