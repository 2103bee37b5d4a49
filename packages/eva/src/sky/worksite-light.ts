import { Fault } from '@handrail/quantity/fault';
import { norm, type Vector3 } from '@handrail/quantity/vector';
import type { AttitudeLaw } from './attitude.ts';
import { windowsWherePositive } from './find-windows.ts';
import { inRange, instantInRange } from './in-range.ts';
import type { Orbit } from './orbit.ts';
import { type Hint, noHint, type RayCaster, rayCaster } from './ray-caster.ts';
import { penumbraDepthRad } from './earth-shadow.ts';
import { propagator } from './propagate.ts';
import { rotate } from './rotation.ts';
import { type DayStretch, dayStretches, sunInBody } from './sun-in-body.ts';
import { sunTemeKm } from './sun-position.ts';
import { add, angleBetween, dot, unit } from './vector-algebra.ts';
import type { Pose, VehicleShape } from './vehicle-shape.ts';
import { intersection, type Interval, type Intervals, lastingAtLeast, windowSet } from './window-set.ts';

/** A place where light matters. Coordinates in body axes with every joint at zero. */
export interface Worksite {
  readonly name: string;
  readonly positionM: Vector3;
  /** Outward normal of the surface worked on; null: light from any side counts. */
  readonly normal: Vector3 | null;
  /** The joint that carries it; null: fixed to the vehicle. */
  readonly joint: string | null;
  /** Surfaces nearer than this cast no shadow on it, m: the one it stands on, chiefly. */
  readonly clearanceM: number;
}

/** The vehicle in its orbit, as all light questions need it. */
export interface LitVehicle {
  readonly orbit: Orbit;
  readonly attitude: AttitudeLaw;
  readonly shape: VehicleShape;
}

export interface LightRequest extends LitVehicle {
  readonly worksites: readonly Worksite[];
  readonly startUtcMs: number;
  /** At most 7 d after the start. */
  readonly endUtcMs: number;
  /** Between samples, 1 to 60 s. A patch of light or own shadow shorter than this may be missed. */
  readonly stepS: number;
}

export type LightState = 'lit' | 'earth-shadow' | 'own-shadow' | 'facing-away';

export interface LightSpan {
  readonly startUtcMs: number;
  readonly endUtcMs: number;
  readonly state: LightState;
  /** The body that first cast the shadow of this span; null for the other states. */
  readonly by: string | null;
}

export interface WorksiteLight {
  readonly worksite: string;
  /** Without gaps over the whole interval. */
  readonly spans: readonly LightSpan[];
  readonly lit: Intervals;
}

export interface LightAnswer {
  /** False when it was stopped: the worksites that were finished are there, the others are not. */
  readonly complete: boolean;
  readonly worksites: readonly WorksiteLight[];
  readonly raysCast: number;
}

export interface LongRun {
  /** 0 to 1. */
  readonly onProgress?: (fraction: number) => void;
  readonly shouldStop?: () => boolean;
}

const EDGE_TOLERANCE_MS = 100;
/** Codes of a sample: lit, facing away, or the index of the shading body after these. */
const LIT = 0;
const AWAY = 1;
const FIRST_BODY = 2;

/**
 * Light at each worksite over an interval: in sunlight, in the vehicle's own shadow (and whose), turned away from the Sun,
 * or in the Earth's shadow.
 *
 * The edges of the Earth's shadow come from the search for roots. Between them the Sun is followed in body axes at even
 * steps; where two neighbours differ the edge is narrowed to 0.1 s. The Sun counts as its centre, and "lit" begins when no
 * part of it is behind the Earth. So: edges are right to 0.1 s for a point Sun; a real edge is soft by as long as the Sun
 * takes to move its own width (8 s in a local vertical attitude); patches shorter than `stepS` may be missed.
 * @throws Fault `sky/out-of-range`, `sky/bad-shape`, `sky/not-a-rotation`, `sky/bad-attitude`, `sky/decayed`
 * @checked tests/reference/sky/own-shadow.test.ts (analytic shadows; every second by brute force)
 */
export function worksiteLight(request: LightRequest, run: LongRun = {}): LightAnswer {
  const steps = traceLight(request);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    run.onProgress?.(step.value.fraction);
    if (run.shouldStop?.() === true) return { complete: false, worksites: step.value.finished, raysCast: step.value.raysCast };
  }
}

export interface LightProgress {
  readonly fraction: number;
  readonly finished: readonly WorksiteLight[];
  readonly raysCast: number;
}

/** The same as steps of a few milliseconds each, for a caller that shares its thread. */
export function* traceLight(request: LightRequest): Generator<LightProgress, LightAnswer, void> {
  const caster = rayCaster(request.shape);
  const sites = request.worksites.map((worksite) => preparedSite(worksite, caster));
  const { night, stretches } = dayStretches(request.orbit, request.attitude, request.startUtcMs, request.endUtcMs, request.stepS);
  // The joints depend on the Sun alone, so all worksites share their poses.
  const poses = stretches.map((stretch) => stretch.sunBody.map((sun) => caster.posesAt(sun)));
  const finished: WorksiteLight[] = [];
  let raysCast = 0;
  for (const [index, site] of sites.entries()) {
    const probe = probeAt(site, caster);
    const spans: LightSpan[] = night.map(([start, end]) => ({ startUtcMs: start, endUtcMs: end, state: 'earth-shadow', by: null }));
    for (const [k, stretch] of stretches.entries()) {
      spans.push(...spansOfStretch(stretch, poses[k] as readonly (readonly Pose[])[], probe, caster));
      if (k % 4 === 3) yield { fraction: (index + k / stretches.length) / sites.length, finished, raysCast: raysCast + probe.rays() };
    }
    raysCast += probe.rays();
    spans.sort((a, b) => a.startUtcMs - b.startUtcMs);
    const lit = windowSet(spans.filter((span) => span.state === 'lit').map((span): Interval => [span.startUtcMs, span.endUtcMs]));
    finished.push({ worksite: site.name, spans, lit });
    yield { fraction: (index + 1) / sites.length, finished, raysCast };
  }
  return { complete: true, worksites: finished, raysCast };
}

/** Stretches of light at each worksite that last at least so long ("lit at least 20 min"). */
export function worksiteLightWindows(request: LightRequest, leastS: number, run: LongRun = {}): ReadonlyMap<string, Intervals> {
  inRange('the least length of light', leastS, 0, 86_400, 's');
  const answer = worksiteLight(request, run);
  return new Map(answer.worksites.map((site) => [site.worksite, lastingAtLeast(site.lit, leastS)]));
}

interface Site {
  readonly name: string;
  readonly positionM: Vector3;
  readonly normal: Vector3 | null;
  readonly carrier: number;
  readonly clearanceM: number;
}

function preparedSite(worksite: Worksite, caster: RayCaster): Site {
  const carrier = caster.carriers.indexOf(worksite.joint);
  if (carrier < 0) {
    const known = caster.carriers.filter((name) => name !== null).join(', ');
    throw new Fault('sky/bad-shape', `worksite ${worksite.name} hangs on "${worksite.joint}", which is not a joint; joints are ${known}`, {
      values: { worksite: worksite.name, joint: worksite.joint },
    });
  }
  for (const metres of worksite.positionM) inRange(`the position of worksite ${worksite.name}`, metres, -10_000, 10_000, 'm');
  inRange(`the clearance of worksite ${worksite.name}`, worksite.clearanceM, 0, 100, 'm');
  if (worksite.normal !== null && !(norm(worksite.normal) > 1e-9)) {
    throw new Fault('sky/bad-shape', `the normal of worksite ${worksite.name} has no length`, { values: { worksite: worksite.name } });
  }
  const normal = worksite.normal === null ? null : unit(worksite.normal);
  return { name: worksite.name, positionM: worksite.positionM, normal, carrier, clearanceM: worksite.clearanceM };
}

interface Probe {
  readonly codeFor: (sunBody: Vector3, poses: readonly Pose[]) => number;
  readonly rays: () => number;
}

function probeAt(site: Site, caster: RayCaster): Probe {
  const hint: Hint = noHint();
  let rays = 0;
  return {
    rays: () => rays,
    codeFor: (sunBody, poses) => {
      const pose = poses[site.carrier] as Pose;
      const fixed = site.carrier === 0;
      if (site.normal !== null && dot(fixed ? site.normal : rotate(pose.turn, site.normal), sunBody) <= 0) return AWAY;
      const from = fixed ? site.positionM : add(rotate(pose.turn, site.positionM), pose.shiftM);
      rays += 1;
      const body = caster.blockedBy(from, sunBody, poses, site.clearanceM, hint);
      return body < 0 ? LIT : FIRST_BODY + body;
    },
  };
}

function spansOfStretch(stretch: DayStretch, poses: readonly (readonly Pose[])[], probe: Probe, caster: RayCaster): LightSpan[] {
  const { timesUtcMs, sunBody } = stretch;
  const spans: LightSpan[] = [];
  let openAt = timesUtcMs[0] as number;
  let code = probe.codeFor(sunBody[0] as Vector3, poses[0] as readonly Pose[]);
  const close = (at: number, next: number): void => {
    if (stateOf(code) === stateOf(next)) return;
    if (at > openAt) spans.push(spanOf(openAt, at, code, caster));
    openAt = at;
    code = next;
  };
  for (let k = 1; k < timesUtcMs.length; k++) {
    const next = probe.codeFor(sunBody[k] as Vector3, poses[k] as readonly Pose[]);
    if (stateOf(next) !== stateOf(code)) {
      for (const edge of edgesBetween(stretch, k, code, next, probe, caster)) close(edge.atUtcMs, edge.code);
    }
  }
  const end = timesUtcMs.at(-1) as number;
  if (end > openAt) spans.push(spanOf(openAt, end, code, caster));
  return spans;
}

/** Shadow passing from one body to another is one shadow. */
function stateOf(code: number): number {
  return Math.min(code, FIRST_BODY);
}

function spanOf(startUtcMs: number, endUtcMs: number, code: number, caster: RayCaster): LightSpan {
  if (code === LIT) return { startUtcMs, endUtcMs, state: 'lit', by: null };
  if (code === AWAY) return { startUtcMs, endUtcMs, state: 'facing-away', by: null };
  return { startUtcMs, endUtcMs, state: 'own-shadow', by: caster.bodyNames[code - FIRST_BODY] ?? null };
}

/** The changes of state between sample k−1 and sample k; over so short a step the Sun moves along a straight line. */
function edgesBetween(stretch: DayStretch, k: number, before: number, after: number, probe: Probe, caster: RayCaster): { atUtcMs: number; code: number }[] {
  const [t0, t1] = [stretch.timesUtcMs[k - 1] as number, stretch.timesUtcMs[k] as number];
  const [s0, s1] = [stretch.sunBody[k - 1] as Vector3, stretch.sunBody[k] as Vector3];
  const codeAt = (t: number): number => {
    const f = (t - t0) / (t1 - t0);
    const sun = unit([s0[0] + f * (s1[0] - s0[0]), s0[1] + f * (s1[1] - s0[1]), s0[2] + f * (s1[2] - s0[2])]);
    return probe.codeFor(sun, caster.posesAt(sun));
  };
  const edges: { atUtcMs: number; code: number }[] = [];
  let from = t0;
  let code = before;
  while (stateOf(code) !== stateOf(after) && edges.length < 8) {
    let [low, high, found] = [from, t1, after];
    while (high - low > EDGE_TOLERANCE_MS) {
      const middle = (low + high) / 2;
      const seen = codeAt(middle);
      if (stateOf(seen) === stateOf(code)) low = middle;
      else [high, found] = [middle, seen];
    }
    edges.push({ atUtcMs: (low + high) / 2, code: found });
    [from, code] = [high, found];
  }
  return edges;
}

/** The Sun as a worksite has it at one instant. */
export interface SunAtWorksite {
  readonly state: LightState;
  readonly by: string | null;
  /** Unit direction in body axes. */
  readonly sunBody: Vector3;
  /** Angle of the Sun over the surface, rad, −π/2 to π/2; null for a worksite without a normal. */
  readonly elevationRad: number | null;
}

/** @throws as `worksiteLight` */
export function sunAtWorksite(vehicle: LitVehicle, worksite: Worksite, utcMs: number): SunAtWorksite {
  instantInRange('the instant', utcMs);
  const caster = rayCaster(vehicle.shape);
  const site = preparedSite(worksite, caster);
  const sunBody = sunInBody(vehicle.orbit, vehicle.attitude, utcMs, utcMs)(utcMs);
  const poses = caster.posesAt(sunBody);
  const normal = site.normal === null ? null : rotate((poses[site.carrier] as Pose).turn, site.normal);
  const elevationRad = normal === null ? null : Math.PI / 2 - angleBetween(normal, sunBody);
  const state = propagator(vehicle.orbit)(utcMs);
  if (penumbraDepthRad(state.positionTemeKm, sunTemeKm(utcMs)) > 0) return { state: 'earth-shadow', by: null, sunBody, elevationRad };
  const span = spanOf(0, 1, probeAt(site, caster).codeFor(sunBody, poses), caster);
  return { state: span.state, by: span.by, sunBody, elevationRad };
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
export function sunInSightWindows(vehicle: LitVehicle, sight: SightLine, startUtcMs: number, endUtcMs: number, stepS: number): Intervals {
  inRange(`the angle of ${sight.name}`, sight.withinRad, 0.001, Math.PI, 'rad');
  if (!(norm(sight.direction) > 1e-9)) throw new Fault('sky/bad-shape', `the line of sight ${sight.name} has no direction`, { values: { sight: sight.name } });
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
