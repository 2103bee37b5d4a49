/**
 * What the campaign states of the sky: the orbit, how the vehicle is turned, what of it casts shadow, what it can talk to,
 * and where the magnetic field counts as weak. Nothing here is computed; null and [] mean "not stated", and no window rests
 * on what is not stated.
 */
import type { Vector3 } from '@handrail/quantity/vector';
import type { AttitudeLaw } from '../sky/attitude.ts';
import type { FieldRegion } from '../sky/field-region.ts';
import type { Orbit } from '../sky/orbit.ts';
import type { Antenna, RadioPartner } from '../sky/radio-contact.ts';
import type { Joint, ShapeBody } from '../sky/vehicle-shape.ts';
import type { Worksite } from '../sky/worksite.ts';
import type { Span } from './span.ts';

export interface CampaignSky {
  readonly orbit: { readonly elements: Orbit; readonly span: Span } | null;
  readonly attitude: AttitudeLaw | null;
  readonly bodies: readonly ShapeBody[];
  readonly joints: readonly SunJoint[];
  readonly partners: readonly RadioPartner[];
  readonly antennas: readonly Antenna[];
  /** How links follow one another; null: not stated, taken as no time lost and every link worth taking, which the source of a window says. */
  readonly links: { readonly handoverS: number; readonly shortestLinkS: number } | null;
  readonly fieldRegion: FieldRegion | null;
  /** Longest time in the weak field allowed in one EVA; null: not stated. */
  readonly fieldExposureS: number | null;
  /** Places that have a position, as worksites by the name of the place. */
  readonly worksites: readonly Worksite[];
  /** Where somebody at a place looks; the name is the place. */
  readonly sightLines: readonly StatedSightLine[];
}

/** A joint that follows the Sun unless its hardware stands parked. */
export interface SunJoint extends Joint {
  /** Angle it stands at when the hardware of this name is not turning; null: not stated, so it is drawn as if it still followed the Sun. */
  readonly parkedRad: number | null;
}

export interface StatedSightLine {
  readonly place: string;
  readonly direction: Vector3;
  readonly withinRad: number;
  readonly span: Span;
}

/** Said on a window whose intervals come from an engine and not from the text. */
export interface ComputedWindow {
  readonly what: ComputedSort;
  /** The worksite of `lit`, `own-shadow` and `sun-in-eyes`; null for the others. */
  readonly place: string | null;
  /** Shorter intervals are left out; 0: none is. */
  readonly leastS: number;
  /** The pad written in the text. The window's own pad has the timing error of the elements added to it. */
  readonly statedPadS: number;
  /** False until the engines have run: a window that is not filled has no intervals and says nothing. */
  readonly filled: boolean;
}
export const COMPUTED_SORTS = [
  'night',
  'day',
  'coverage',
  'coverage-gap',
  'field-region',
  'lit',
  'own-shadow',
  'sun-in-eyes',
] as const;
export type ComputedSort = (typeof COMPUTED_SORTS)[number];
/** Sorts that are about one place. */
export const PLACED_SORTS: readonly ComputedSort[] = ['lit', 'own-shadow', 'sun-in-eyes'];

export const NO_SKY: CampaignSky = {
  orbit: null,
  attitude: null,
  bodies: [],
  joints: [],
  partners: [],
  antennas: [],
  links: null,
  fieldRegion: null,
  fieldExposureS: null,
  worksites: [],
  sightLines: [],
};
