import { Fault } from '@handrail/quantity/fault';
import { norm, type Vector3 } from '@handrail/quantity/vector';
import type { AttitudeLaw } from './attitude.ts';
import { inRange } from './in-range.ts';
import type { Orbit } from './orbit.ts';
import { type Hint, noHint, type RayCaster } from './ray-caster.ts';
import { rotate } from './rotation.ts';
import { add, dot, unit } from './vector-algebra.ts';
import type { Pose, VehicleShape } from './vehicle-shape.ts';

/** A place where light matters. Coordinates in body axes with every joint at zero. */
export interface Worksite {
  readonly name: string;
  readonly positionM: Vector3;
  /** Outward normal of the surface worked on; null: light from any side counts. */
  readonly normal: Vector3 | null;
  /** The joint that carries it; null: fixed to the vehicle. */
  readonly joint: string | null;
  /** Light counts only where the Sun stands at least so high over the surface, rad, 0 to π/2; 0 when left out. */
  readonly lowestSunRad?: number;
  /** Surfaces nearer than this cast no shadow on it, m: the one it stands on, chiefly. */
  readonly clearanceM: number;
}

/** The vehicle in its orbit, as all light questions need it. */
export interface LitVehicle {
  readonly orbit: Orbit;
  readonly attitude: AttitudeLaw;
  readonly shape: VehicleShape;
}

export type LightState = 'lit' | 'earth-shadow' | 'own-shadow' | 'facing-away';

export interface LightSpan {
  readonly startUtcMs: number;
  readonly endUtcMs: number;
  readonly state: LightState;
  /** The body that first cast the shadow of this span; null for the other states. */
  readonly by: string | null;
}

/** Codes of a sample: lit, facing away, or the index of the shading body after these. */
export const LIT = 0;
export const AWAY = 1;
export const FIRST_BODY = 2;

export interface Site {
  readonly name: string;
  readonly positionM: Vector3;
  readonly normal: Vector3 | null;
  readonly carrier: number;
  readonly clearanceM: number;
  /** Sine of the lowest height of the Sun that counts. */
  readonly lowestSine: number;
}

/** @throws Fault `sky/bad-shape`, `sky/out-of-range` */
export function preparedSite(worksite: Worksite, caster: RayCaster): Site {
  const carrier = caster.carriers.indexOf(worksite.joint);
  if (carrier < 0) {
    const known = caster.carriers.filter((name) => name !== null).join(', ');
    throw new Fault(
      'sky/bad-shape',
      `worksite ${worksite.name} hangs on "${worksite.joint}", which is not a joint; joints are ${known}`,
      {
        values: { worksite: worksite.name, joint: worksite.joint },
      },
    );
  }
  for (const metres of worksite.positionM)
    inRange(`the position of worksite ${worksite.name}`, metres, -10_000, 10_000, 'm');
  inRange(`the clearance of worksite ${worksite.name}`, worksite.clearanceM, 0, 100, 'm');
  if (worksite.normal !== null && !(norm(worksite.normal) > 1e-9)) {
    throw new Fault('sky/bad-shape', `the normal of worksite ${worksite.name} has no length`, {
      values: { worksite: worksite.name },
    });
  }
  const normal = worksite.normal === null ? null : unit(worksite.normal);
  const lowest = inRange(`the lowest Sun at ${worksite.name}`, worksite.lowestSunRad ?? 0, 0, Math.PI / 2, 'rad');
  return {
    name: worksite.name,
    positionM: worksite.positionM,
    normal,
    carrier,
    clearanceM: worksite.clearanceM,
    lowestSine: Math.sin(lowest),
  };
}

/** Looks at the Sun from one worksite. */
export interface Probe {
  readonly codeFor: (sunBody: Vector3, poses: readonly Pose[]) => number;
  readonly rays: () => number;
}

export function probeAt(site: Site, caster: RayCaster): Probe {
  const hint: Hint = noHint();
  let rays = 0;
  return {
    rays: () => rays,
    codeFor: (sunBody, poses) => {
      const pose = poses[site.carrier] as Pose;
      const fixed = site.carrier === 0;
      if (site.normal !== null && dot(fixed ? site.normal : rotate(pose.turn, site.normal), sunBody) <= site.lowestSine)
        return AWAY;
      const from = fixed ? site.positionM : add(rotate(pose.turn, site.positionM), pose.shiftM);
      rays += 1;
      const body = caster.blockedBy(from, sunBody, poses, site.clearanceM, hint);
      return body < 0 ? LIT : FIRST_BODY + body;
    },
  };
}

/** Shadow passing from one body to another is one shadow. */
export function stateOf(code: number): number {
  return Math.min(code, FIRST_BODY);
}

export function spanOf(startUtcMs: number, endUtcMs: number, code: number, caster: RayCaster): LightSpan {
  if (code === LIT) return { startUtcMs, endUtcMs, state: 'lit', by: null };
  if (code === AWAY) return { startUtcMs, endUtcMs, state: 'facing-away', by: null };
  return { startUtcMs, endUtcMs, state: 'own-shadow', by: caster.bodyNames[code - FIRST_BODY] ?? null };
}
