import type { Campaign, Eva } from '../../campaign/campaign.ts';
import { type CoverageGap, coveragePlan } from '../coverage-plan.ts';
import { type Night, dayNight } from '../day-night.ts';
import { type ElementAge, elementAge } from '../element-age.ts';
import { type FieldPass, fieldPasses } from '../field-region.ts';
import type { Orbit } from '../orbit.ts';
import { type Contact, radioContacts } from '../radio-contact.ts';
import { totalS } from '../window-set.ts';
import { vehicleAt } from './vehicle-at.ts';

/** What the sky does during one EVA, from PET 0 to the latest end. */
export interface EvaSky {
  readonly eva: Eva;
  readonly startUtcMs: number;
  /** PET 0 with the latest slip, and the longest EVA; 8 h where no longest is stated. */
  readonly endUtcMs: number;
  readonly age: ElementAge;
  readonly padS: number;
  readonly periodS: number;
  /** At the start and at the end. */
  readonly betaRad: readonly [number, number];
  /** Share of the time in sunlight, penumbra counted half. */
  readonly litFraction: number;
  readonly nights: readonly Night[];
  /** null: nothing to talk to is stated. */
  readonly radio: EvaRadio | null;
  /** null: no region of weak field is stated. */
  readonly field: EvaField | null;
}
export interface EvaRadio {
  /** By acquisition of signal. */
  readonly contacts: readonly Contact[];
  readonly gaps: readonly CoverageGap[];
  readonly coveredFraction: number;
  /** What was taken of links and of the vehicle as an obstacle, in words. */
  readonly notes: readonly string[];
}
export interface EvaField {
  readonly passes: readonly FieldPass[];
  readonly insideS: number;
  readonly limitS: number | null;
  readonly note: string;
}

const UNSTATED_LENGTH_S = 8 * 3600;

/**
 * Orbit, light and radio of every EVA.
 * @returns empty where no orbit is stated
 * @throws Fault as the engines do, for what is stated outside their range
 * @checked tests/scenarios/sky/sky-commands.test.ts
 */
export function skyReport(campaign: Campaign): readonly EvaSky[] {
  const orbit = campaign.sky.orbit?.elements;
  return orbit === undefined ? [] : campaign.evas.map((eva) => evaSky(campaign, orbit, eva));
}

function evaSky(campaign: Campaign, orbit: Orbit, eva: Eva): EvaSky {
  const startUtcMs = eva.egressUtcMs;
  const endUtcMs = startUtcMs + (eva.slipS + (eva.longestS ?? UNSTATED_LENGTH_S)) * 1000;
  const table = dayNight(orbit, startUtcMs, endUtcMs);
  return {
    eva,
    startUtcMs,
    endUtcMs,
    age: elementAge(orbit, startUtcMs),
    padS: table.padS,
    periodS: table.periodS,
    betaRad: table.betaRad,
    litFraction: table.litFraction,
    nights: table.nights,
    radio: campaign.sky.partners.length === 0 ? null : evaRadio(campaign, orbit, startUtcMs, endUtcMs),
    field: evaField(campaign, orbit, startUtcMs, endUtcMs),
  };
}

function evaRadio(campaign: Campaign, orbit: Orbit, startUtcMs: number, endUtcMs: number): EvaRadio {
  const { partners, antennas, links } = campaign.sky;
  const vehicle = vehicleAt(campaign, startUtcMs);
  const own = vehicle === null || antennas.length === 0 ? null : { ...vehicle, antennas };
  const contacts = partners.map((partner) => radioContacts(orbit, partner, own, startUtcMs, endUtcMs));
  const plan = coveragePlan(contacts, startUtcMs, endUtcMs, links?.handoverS ?? 0, links?.shortestLinkS ?? 0);
  return {
    contacts: contacts.flatMap((one) => one.contacts).sort((a, b) => a.startUtcMs - b.startUtcMs),
    gaps: plan.gaps,
    coveredFraction: totalS(plan.covered) / ((endUtcMs - startUtcMs) / 1000),
    notes: [
      links === null
        ? 'links are not stated: no time is lost between them and none is taken as too short'
        : `${links.handoverS} s lost at each handover, links under ${links.shortestLinkS} s not taken up`,
      own === null
        ? 'antennas, attitude or bodies are not stated: the vehicle hides nothing'
        : `the vehicle may hide a partner: ${vehicle?.notes.join(', ') ?? ''}`,
    ],
  };
}

function evaField(campaign: Campaign, orbit: Orbit, startUtcMs: number, endUtcMs: number): EvaField | null {
  const { fieldRegion, fieldExposureS } = campaign.sky;
  if (fieldRegion === null) return null;
  const { passes, windows, note } = fieldPasses(orbit, fieldRegion, startUtcMs, endUtcMs);
  return { passes, insideS: totalS(windows), limitS: fieldExposureS, note };
}
