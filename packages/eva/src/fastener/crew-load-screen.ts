import { requireInRange } from '@handrail/quantity/in-range';

/** A load that people put on hardware without meaning to, or while working: the hardware near them must bear it. */
export interface CrewLoad {
  readonly id: string;
  readonly title: string;
  readonly forceN: number | null;
  readonly torqueNm: number | null;
  /** Hardware within this distance of a path or worksite is concerned, m; null: only hardware of that use. */
  readonly withinM: number | null;
  readonly source: string;
}

const LBF = 4.448_221_615_260_5;
const INCH = 0.0254;
const TABLE = '[IC256F] Table 3.1.3-1';

/** Published design loads, an example of such a list: an operator's own list takes its place. @source [IC256F] Table 3.1.3-1 */
export const PUBLISHED_CREW_LOADS: readonly CrewLoad[] = [
  { id: 'kick', title: 'unmeant kick or bump', forceN: 125 * LBF, torqueNm: null, withinM: 24 * INCH, source: TABLE },
  { id: 'handling', title: 'handling by hand', forceN: 45 * LBF, torqueNm: null, withinM: null, source: TABLE },
  {
    id: 'connector-panel',
    title: 'mating and demating on a panel',
    forceN: null,
    torqueNm: 35 * LBF * INCH,
    withinM: null,
    source: TABLE,
  },
  {
    id: 'foot-restraint',
    title: 'foot restraint, force and torque together',
    forceN: 274 * LBF,
    torqueNm: 4200 * LBF * INCH,
    withinM: null,
    source: TABLE,
  },
  { id: 'tool-tether', title: 'tool tether point', forceN: 75 * LBF, torqueNm: null, withinM: null, source: TABLE },
  { id: 'hatch', title: 'hatch', forceN: 187 * LBF, torqueNm: null, withinM: null, source: TABLE },
];

/** What a piece of hardware bears; null: not stated. */
export interface HardwareStrength {
  readonly forceN: number | null;
  readonly torqueNm: number | null;
}

export type LoadScreen =
  | { readonly outcome: 'out-of-reach' | 'bears-it' }
  | { readonly outcome: 'too-weak'; readonly lackingN: number; readonly lackingNm: number }
  /** Which strength is not stated. */
  | { readonly outcome: 'unknown'; readonly missing: readonly ('forceN' | 'torqueNm')[] };

/**
 * Whether hardware at a distance from the nearest path or worksite is concerned by a load, and bears it. Distance counts inclusive.
 * @param distanceM ignored where the load has no reach of its own
 * @checked tests/reference/fastener/crew-load-screen.test.ts
 */
export function screenCrewLoad(load: CrewLoad, strength: HardwareStrength, distanceM: number): LoadScreen {
  const distance = requireInRange('distance to the path', distanceM, { min: 0, max: 1000, unit: 'm' });
  if (load.withinM !== null && distance > load.withinM) return { outcome: 'out-of-reach' };
  const missing: ('forceN' | 'torqueNm')[] = [];
  let lackingN = 0;
  let lackingNm = 0;
  if (load.forceN !== null) {
    if (strength.forceN === null) missing.push('forceN');
    else
      lackingN = Math.max(
        0,
        load.forceN - requireInRange('strength', strength.forceN, { min: 0, max: 1e7, unit: 'N' }),
      );
  }
  if (load.torqueNm !== null) {
    if (strength.torqueNm === null) missing.push('torqueNm');
    else
      lackingNm = Math.max(
        0,
        load.torqueNm - requireInRange('torque strength', strength.torqueNm, { min: 0, max: 1e7, unit: 'N·m' }),
      );
  }
  if (lackingN > 0 || lackingNm > 0) return { outcome: 'too-weak', lackingN, lackingNm };
  return missing.length > 0 ? { outcome: 'unknown', missing } : { outcome: 'bears-it' };
}
