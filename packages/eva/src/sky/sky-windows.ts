import type { AttitudeLaw } from './attitude.ts';
import { coveragePlan } from './coverage-plan.ts';
import { dayNight } from './day-night.ts';
import { elementAge, timingPadS } from './element-age.ts';
import { type FieldRegion, fieldPasses } from './field-region.ts';
import type { Orbit } from './orbit.ts';
import { type Antenna, type RadioPartner, radioContacts } from './radio-contact.ts';
import { type SightLine, sunInSightWindows } from './sun-at-worksite.ts';
import type { VehicleShape } from './vehicle-shape.ts';
import { complement, type Interval, type Intervals, windowSet } from './window-set.ts';
import type { Worksite } from './worksite.ts';
import { type LongRun, worksiteLight } from './worksite-light.ts';

/** Everything the planner may ask of the sky. What is null or empty is not computed, and no window set claims it. */
export interface SkyRequest {
  readonly orbit: Orbit;
  readonly startUtcMs: number;
  /** At most 7 d after the start where worksites or sight lines are given, else 31 d. */
  readonly endUtcMs: number;
  /** Needed for worksites, sight lines, and for the vehicle to stand in the way of its own radio. */
  readonly vehicle: { readonly attitude: AttitudeLaw; readonly shape: VehicleShape } | null;
  readonly worksites: readonly Worksite[];
  readonly sightLines: readonly SightLine[];
  readonly radio: SkyRadio | null;
  readonly fieldRegion: FieldRegion | null;
}

export interface SkyRadio {
  readonly partners: readonly RadioPartner[];
  readonly antennas: readonly Antenna[];
  readonly handoverS: number;
  readonly shortestLinkS: number;
}

/** A window set as the planner uses it. The pad is not yet applied: it shrinks for inside and widens for outside. */
export interface NamedWindowSet {
  /** The name in small letters and hyphens, as a document refers to it: `lit-pump-bay`. */
  readonly id: string;
  readonly name: string;
  /** Disjoint, sorted, half-open, UTC ms. */
  readonly intervals: readonly (readonly [startUtcMs: number, endUtcMs: number])[];
  readonly padS: number;
  readonly shownAs: 'night' | 'gap' | 'band';
  readonly source: string;
  readonly note: string;
}

/** Between samples of own shadow, s. */
const LIGHT_STEP_S = 10;

/**
 * Named window sets over one interval: `day`, `night` (all of the Sun covered), `penumbra`; `contact <partner>`, `coverage`,
 * `coverage gap`; `weak field`; `lit <worksite>`, `own shadow <worksite>`; `sun in eyes <sight line>`.
 * When `run` stops the work, the worksites that were not finished have no window set.
 * @throws Fault `sky/out-of-range`, `sky/bad-shape`, `sky/bad-attitude`, `sky/not-a-rotation`, `sky/decayed`
 * @checked tests/properties/sky/sky-windows.test.ts
 */
export function skyWindows(request: SkyRequest, run: LongRun = {}): readonly NamedWindowSet[] {
  const { orbit, startUtcMs, endUtcMs } = request;
  const padS = timingPadS(orbit, startUtcMs, endUtcMs);
  const source = sourceOf(orbit, startUtcMs);
  const set = (
    name: string,
    intervals: Intervals,
    shownAs: NamedWindowSet['shownAs'],
    note: string,
  ): NamedWindowSet => ({ id: idOf(name), name, intervals, padS, shownAs, source, note });
  const table = dayNight(orbit, startUtcMs, endUtcMs);
  const sets = [
    set('day', table.day, 'band', 'none of the Sun is behind the Earth'),
    set('night', table.umbra, 'night', 'all of the Sun is behind the Earth'),
    set('penumbra', table.penumbra, 'night', 'some of the Sun is behind the Earth'),
  ];
  if (request.radio !== null) sets.push(...radioSets(request, request.radio, set));
  if (request.fieldRegion !== null) {
    const passes = fieldPasses(orbit, request.fieldRegion, startUtcMs, endUtcMs);
    const where = request.fieldRegion.at === 'ground' ? 'at the surface below' : 'at the vehicle';
    sets.push(
      set(
        'weak field',
        passes.windows,
        'band',
        `field below ${request.fieldRegion.thresholdNt} nT ${where}; ${passes.note}`,
      ),
    );
  }
  sets.push(...lightSets(request, set, run));
  return sets;
}

type MakeSet = (name: string, intervals: Intervals, shownAs: NamedWindowSet['shownAs'], note: string) => NamedWindowSet;

function radioSets(request: SkyRequest, radio: SkyRadio, set: MakeSet): NamedWindowSet[] {
  const { orbit, startUtcMs, endUtcMs, vehicle } = request;
  const own = vehicle === null || radio.antennas.length === 0 ? null : { ...vehicle, antennas: radio.antennas };
  const hides =
    own === null ? 'the vehicle itself is not counted as an obstacle' : 'the vehicle itself may stand in the way';
  const contacts = radio.partners.map((partner) => radioContacts(orbit, partner, own, startUtcMs, endUtcMs));
  const plan = coveragePlan(contacts, startUtcMs, endUtcMs, radio.handoverS, radio.shortestLinkS);
  return [
    ...contacts.map((partner) =>
      set(
        `contact ${partner.partner}`,
        windowSet(partner.contacts.map((c): Interval => [c.startUtcMs, c.endUtcMs])),
        'band',
        `AOS to LOS; ${hides}`,
      ),
    ),
    set(
      'coverage',
      plan.covered,
      'band',
      `one link after another, ${radio.handoverS} s without signal at each handover; ${hides}`,
    ),
    set(
      'coverage gap',
      complement(plan.covered, startUtcMs, endUtcMs),
      'gap',
      `no link: none in view, handover, or hidden; ${hides}`,
    ),
  ];
}

function lightSets(request: SkyRequest, set: MakeSet, run: LongRun): NamedWindowSet[] {
  const { orbit, vehicle, startUtcMs, endUtcMs, worksites, sightLines } = request;
  if (vehicle === null) return [];
  const sets: NamedWindowSet[] = [];
  if (worksites.length > 0) {
    const answer = worksiteLight({ orbit, ...vehicle, worksites, startUtcMs, endUtcMs, stepS: LIGHT_STEP_S }, run);
    for (const site of answer.worksites) {
      const own = windowSet(
        site.spans.filter((s) => s.state === 'own-shadow').map((s): Interval => [s.startUtcMs, s.endUtcMs]),
      );
      const note = `patches shorter than ${LIGHT_STEP_S} s may be missed; the vehicle's shape and attitude as given`;
      sets.push(
        set(`lit ${site.worksite}`, site.lit, 'band', note),
        set(`own shadow ${site.worksite}`, own, 'band', note),
      );
    }
  }
  for (const sight of sightLines) {
    const windows = sunInSightWindows({ orbit, ...vehicle }, sight, startUtcMs, endUtcMs, LIGHT_STEP_S);
    const degrees = ((sight.withinRad * 180) / Math.PI).toFixed(0);
    sets.push(
      set(`sun in eyes ${sight.name}`, windows, 'band', `Sun within ${degrees}° of the line of sight and not hidden`),
    );
  }
  return sets;
}

function idOf(name: string): string {
  return name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');
}

/** Which elements, how old, and how sure: said beside every window. */
function sourceOf(orbit: Orbit, utcMs: number): string {
  const model =
    orbit.kind === 'sgp4'
      ? `SGP4, ${orbit.source}`
      : orbit.kind === 'kepler-j2'
        ? 'Keplerian elements with J2 drift'
        : 'two-body ellipse';
  const age = elementAge(orbit, utcMs);
  const when = age.ageDays < 0 ? 'before their epoch' : 'old';
  return `${orbit.name}: ${model}, elements ${Math.abs(age.ageDays).toFixed(1)} d ${when}, ±${age.timingErrorS.toFixed(1)} s along the track`;
}
