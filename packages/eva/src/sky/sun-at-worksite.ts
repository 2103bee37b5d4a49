import { Fault } from '@handrail/quantity/fault';
import { norm, subtract, type Vector3 } from '@handrail/quantity/vector';
import { bodyFromTeme } from './attitude.ts';
import { penumbraDepthRad } from './earth-shadow.ts';
import { windowsWherePositive } from './find-windows.ts';
import { inRange } from './in-range.ts';
import { propagator } from './propagate.ts';
import { rayCaster } from './ray-caster.ts';
import { rotate } from './rotation.ts';
import { sunInBody } from './sun-in-body.ts';
import { sunTemeKm } from './sun-position.ts';
import { angleBetween, unit } from './vector-algebra.ts';
import type { Pose } from './vehicle-shape.ts';
import { intersection, type Intervals } from './window-set.ts';
import { type LightState, type LitVehicle, preparedSite, probeAt, spanOf, type Worksite } from './worksite.ts';
import { EDGE_TOLERANCE_MS, worksiteLight } from './worksite-light.ts';

/** The Sun as a worksite has it at one instant. */
export interface SunAtWorksite {
  readonly state: LightState;
  readonly by: string | null;
  /** Unit direction in body axes. */
  readonly sunBody: Vector3;
  /** Angle of the Sun over the surface, rad, −π/2 to π/2; null for a worksite without a normal. */
  readonly elevationRad: number | null;
}

/**
 * The Sun from a worksite as a function of the instant; the triangles are sorted once.
 * @throws as `worksiteLight`
 * @checked tests/reference/sky/own-shadow.test.ts
 */
export function sunAtWorksite(vehicle: LitVehicle, worksite: Worksite): (utcMs: number) => SunAtWorksite {
  const caster = rayCaster(vehicle.shape);
  const site = preparedSite(worksite, caster);
  const state = propagator(vehicle.orbit);
  const toBody = bodyFromTeme(vehicle.attitude);
  return (utcMs) => {
    const now = state(utcMs);
    const sun = sunTemeKm(utcMs);
    const sunBody = unit(rotate(toBody(now), subtract(sun, now.positionTemeKm)));
    const poses = caster.posesAt(sunBody);
    const normal = site.normal === null ? null : rotate((poses[site.carrier] as Pose).turn, site.normal);
    const elevationRad = normal === null ? null : Math.PI / 2 - angleBetween(normal, sunBody);
    if (penumbraDepthRad(now.positionTemeKm, sun) > 0)
      return { state: 'earth-shadow', by: null, sunBody, elevationRad };
    const span = spanOf(0, 1, probeAt(site, caster).codeFor(sunBody, poses), caster);
    return { state: span.state, by: span.by, sunBody, elevationRad };
  };
}

/** A direction somebody looks along, in body axes. */
export interface SightLine {
  readonly name: string;
  /** Where the eye is. Its normal is not used. */
  readonly from: Worksite;
  readonly direction: Vector3;
  readonly withinRad: number;
}

/**
 * When the Sun stands within an angle of a line of sight and nothing of the vehicle or the Earth hides it: Sun in the eyes.
 * The angle is to the centre of the Sun.
 */
export function sunInSightWindows(
  vehicle: LitVehicle,
  sight: SightLine,
  startUtcMs: number,
  endUtcMs: number,
  stepS: number,
): Intervals {
  inRange(`the angle of ${sight.name}`, sight.withinRad, 0.001, Math.PI, 'rad');
  if (!(norm(sight.direction) > 1e-9))
    throw new Fault('sky/bad-shape', `the line of sight ${sight.name} has no direction`, {
      values: { sight: sight.name },
    });
  const direction = unit(sight.direction);
  const sunAt = sunInBody(vehicle.orbit, vehicle.attitude, startUtcMs, endUtcMs);
  const near = windowsWherePositive((t) => sight.withinRad - angleBetween(direction, sunAt(t)), {
    startUtcMs,
    endUtcMs,
    stepMs: stepS * 1000,
    toleranceMs: EDGE_TOLERANCE_MS,
  });
  const worksites = [{ ...sight.from, normal: null }];
  const answer = worksiteLight({ ...vehicle, worksites, startUtcMs, endUtcMs, stepS });
  return intersection(near, answer.worksites[0]?.lit ?? []);
}
