import type { Campaign, Eva } from '../../campaign/campaign.ts';
import { sunAtWorksite } from '../sun-at-worksite.ts';
import { totalS, windowSet } from '../window-set.ts';
import type { LightSpan } from '../worksite.ts';
import { type LongRun, worksiteLight } from '../worksite-light.ts';
import { vehicleAt } from './vehicle-at.ts';

/** Light at one place during one EVA. */
export interface PlaceLight {
  readonly eva: string;
  readonly place: string;
  readonly startUtcMs: number;
  readonly endUtcMs: number;
  readonly spans: readonly PlaceLightSpan[];
  readonly litFraction: number;
}
export interface PlaceLightSpan extends LightSpan {
  /** Height of the Sun over the surface at the start, in the middle and at the end, rad; null: the surface is not stated. */
  readonly sunElevationRad: readonly [number, number, number] | null;
}
export interface LightReport {
  readonly places: readonly PlaceLight[];
  /** By EVA id: what was taken of bodies and joints, in words. */
  readonly notes: ReadonlyMap<string, readonly string[]>;
  /** Places without a position: nothing is known of their light. */
  readonly unknown: readonly string[];
}

const STEP_S = 10;
const UNSTATED_LENGTH_S = 8 * 3600;

/**
 * Sunlight, own shadow and night at each place that has a position, from PET 0 to the latest end of each EVA.
 * @param only these places; all where absent
 * @returns null where no orbit or no attitude is stated
 * @throws Fault as `worksiteLight`
 * @checked tests/scenarios/sky/sky-commands.test.ts
 */
export function lightReport(
  campaign: Campaign,
  only: ReadonlySet<string> | null = null,
  run: LongRun = {},
): LightReport | null {
  const orbit = campaign.sky.orbit?.elements;
  if (orbit === undefined || campaign.sky.attitude === null) return null;
  const worksites = campaign.sky.worksites.filter(({ name }) => only === null || only.has(name));
  const notes = new Map<string, readonly string[]>();
  const places = campaign.evas.flatMap((eva) => {
    const vehicle = vehicleAt(campaign, eva.egressUtcMs);
    if (vehicle === null || worksites.length === 0) return [];
    notes.set(eva.id, vehicle.notes);
    const [startUtcMs, endUtcMs] = spanOf(eva);
    const lit = { orbit, attitude: vehicle.attitude, shape: vehicle.shape };
    return worksiteLight({ ...lit, worksites, startUtcMs, endUtcMs, stepS: STEP_S }, run).worksites.map(
      (answer): PlaceLight => {
        const worksite = worksites.find(({ name }) => name === answer.worksite);
        const sunAt = worksite === undefined || worksite.normal === null ? null : sunAtWorksite(lit, worksite);
        const elevation = (utcMs: number): number => sunAt?.(utcMs).elevationRad ?? 0;
        return {
          eva: eva.id,
          place: answer.worksite,
          startUtcMs,
          endUtcMs,
          spans: answer.spans.map((span) => ({
            ...span,
            sunElevationRad:
              sunAt === null
                ? null
                : [
                    elevation(span.startUtcMs),
                    elevation((span.startUtcMs + span.endUtcMs) / 2),
                    elevation(span.endUtcMs),
                  ],
          })),
          litFraction: totalS(windowSet(answer.lit)) / ((endUtcMs - startUtcMs) / 1000),
        };
      },
    );
  });
  const known = new Set(campaign.sky.worksites.map(({ name }) => name));
  const unknown = campaign.vehicle.places.filter(({ id }) => !known.has(id) && (only === null || only.has(id)));
  return { places, notes, unknown: unknown.map(({ id }) => id) };
}

function spanOf(eva: Eva): readonly [number, number] {
  return [eva.egressUtcMs, eva.egressUtcMs + (eva.slipS + (eva.longestS ?? UNSTATED_LENGTH_S)) * 1000];
}
