import type { Vector3 } from '@handrail/quantity/vector';
import { inRange } from './in-range.ts';
import { type RayCaster, rayCaster } from './ray-caster.ts';
import { type DayStretch, dayStretches } from './sun-in-body.ts';
import { unit } from './vector-algebra.ts';
import type { Pose } from './vehicle-shape.ts';
import { type Interval, type Intervals, lastingAtLeast, windowSet } from './window-set.ts';
import {
  type LightSpan,
  type LitVehicle,
  preparedSite,
  type Probe,
  probeAt,
  spanOf,
  stateOf,
  type Worksite,
} from './worksite.ts';

export interface LightRequest extends LitVehicle {
  readonly worksites: readonly Worksite[];
  readonly startUtcMs: number;
  /** At most 7 d after the start. */
  readonly endUtcMs: number;
  /** Between samples, 1 to 60 s. A patch of light or own shadow shorter than this may be missed. */
  readonly stepS: number;
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

export const EDGE_TOLERANCE_MS = 100;
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
    if (run.shouldStop?.() === true)
      return { complete: false, worksites: step.value.finished, raysCast: step.value.raysCast };
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
  const { night, stretches } = dayStretches(
    request.orbit,
    request.attitude,
    request.startUtcMs,
    request.endUtcMs,
    request.stepS,
  );
  // The joints depend on the Sun alone, so all worksites share their poses.
  const poses = stretches.map((stretch) => stretch.sunBody.map((sun) => caster.posesAt(sun)));
  const finished: WorksiteLight[] = [];
  let raysCast = 0;
  for (const [index, site] of sites.entries()) {
    const probe = probeAt(site, caster);
    const spans: LightSpan[] = night.map(([start, end]) => ({
      startUtcMs: start,
      endUtcMs: end,
      state: 'earth-shadow',
      by: null,
    }));
    for (const [k, stretch] of stretches.entries()) {
      spans.push(...spansOfStretch(stretch, poses[k] as readonly (readonly Pose[])[], probe, caster));
      if (k % 4 === 3)
        yield { fraction: (index + k / stretches.length) / sites.length, finished, raysCast: raysCast + probe.rays() };
    }
    raysCast += probe.rays();
    spans.sort((a, b) => a.startUtcMs - b.startUtcMs);
    const lit = windowSet(
      spans.filter((span) => span.state === 'lit').map((span): Interval => [span.startUtcMs, span.endUtcMs]),
    );
    finished.push({ worksite: site.name, spans, lit });
    yield { fraction: (index + 1) / sites.length, finished, raysCast };
  }
  return { complete: true, worksites: finished, raysCast };
}

/**
 * Stretches of light at each worksite that last at least so long ("lit at least 20 min"). A worksite that is missing from
 * the answer was not finished before `run` stopped the work; one without light has an empty list.
 */
export function worksiteLightWindows(
  request: LightRequest,
  leastS: number,
  run: LongRun = {},
): ReadonlyMap<string, Intervals> {
  inRange('the least length of light', leastS, 0, 86_400, 's');
  const answer = worksiteLight(request, run);
  return new Map(answer.worksites.map((site) => [site.worksite, lastingAtLeast(site.lit, leastS)]));
}

function spansOfStretch(
  stretch: DayStretch,
  poses: readonly (readonly Pose[])[],
  probe: Probe,
  caster: RayCaster,
): LightSpan[] {
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

/** The changes of state between sample k−1 and sample k; over so short a step the Sun moves along a straight line. */
function edgesBetween(
  stretch: DayStretch,
  k: number,
  before: number,
  after: number,
  probe: Probe,
  caster: RayCaster,
): { atUtcMs: number; code: number }[] {
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
