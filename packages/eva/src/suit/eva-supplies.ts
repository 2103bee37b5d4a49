/** Supplies of a person on one planned EVA, from the campaign's suit and the timeline. */
import { Fault } from '@handrail/quantity/fault';
import type { Campaign, Hardware, Person, Stint, Suit } from '../campaign/campaign.ts';
import type { KindsLibrary } from '../kinds/kinds-library.ts';
import type { EvaTimeline } from '../timeline/timeline.ts';
import { loadsByWindow } from './loads-by-window.ts';
import { secondaryOxygenS } from './secondary-oxygen.ts';
import { stretchRates } from './stretch-rates.ts';
import { byCase, type SupplyCase } from './supply-case.ts';
import type { SupplyName } from './supply-curve.ts';
import { type SupplyLine, supplySums } from './supply-sum.ts';
import { type SupplyUse, supplyUse } from './supply-use.ts';
import { workFromTimeline } from './work-from-timeline.ts';
import { coverSpan, type SuitPerson, type SupplySpan, type WorkStretch } from './work-stretch.ts';

/** What one effort class took in the likely case, from leaving vehicle supplies until both are in. */
export interface EffortLine {
  readonly effort: string;
  readonly durationS: number;
  readonly metabolicW: number;
  readonly oxygenKg: number;
  readonly carbonDioxideKg: number;
  /** Heat that arose, by all of its causes. */
  readonly heatJ: number;
  readonly batteryJ: number;
}

export interface PersonSupplies {
  readonly known: true;
  readonly person: string;
  readonly suit: Suit;
  readonly span: SupplySpan;
  /** In order, without gaps, up to both in. */
  readonly work: readonly WorkStretch[];
  readonly use: SupplyUse;
  readonly sums: Readonly<Record<SupplyCase, Readonly<Record<SupplyName, readonly SupplyLine[]>>>>;
  readonly byEffort: readonly EffortLine[];
  /** null: the suit has no second oxygen pack. */
  readonly secondaryS: Readonly<Record<SupplyCase, number>> | null;
}

/** Nothing can be told, and why. */
export interface SuppliesUnknown {
  readonly known: false;
  readonly person: string;
  readonly reason: string;
}
export type SuppliesReading = PersonSupplies | SuppliesUnknown;

/** How far the curves go on after both are in, so that a limit after the plan's end is found. */
const BEYOND_S = 8 * 3600;

/** Readings of everybody who takes part in the EVA, in the order of the people. */
export function evaSupplies(campaign: Campaign, library: KindsLibrary, eva: EvaTimeline): readonly SuppliesReading[] {
  const stints = new Map(campaign.tasks.flatMap((task) => task.stints.map((stint) => [stint.key, stint] as const)));
  const pieces = new Map(campaign.hardware.map((piece) => [piece.id, piece] as const));
  return campaign.people
    .filter((person) => person.role === 'outside' && takesPart(eva, person.id))
    .map((person) => personSupplies(campaign, library, eva, person, stints, pieces));
}

export function takesPart(eva: EvaTimeline, person: string): boolean {
  return (
    eva.passages.some((passage) => passage.person === person) ||
    eva.stints.some((stint) => stint.assigned.includes(person))
  );
}

/**
 * One person's reading. Method: `workFromTimeline` step by step, gaps at the suit's idle effort, loads by their windows, then `supplyUse`.
 * @returns unknown with its reason where the person states no suit, or the timeline cannot be flown as written
 */
export function personSupplies(
  campaign: Campaign,
  library: KindsLibrary,
  eva: EvaTimeline,
  person: Person,
  stints: ReadonlyMap<string, Stint>,
  pieces: ReadonlyMap<string, Hardware>,
): SuppliesReading {
  const suit = campaign.suits.find((candidate) => candidate.id === person.suit);
  const wearer = suitPerson(person);
  if (suit === undefined || wearer === null) {
    return { known: false, person: person.id, reason: `no suit is stated for ${person.id}` };
  }
  const uses = suit.effortUse;
  const choice = { ...uses, classes: { low: uses.low, moderate: uses.moderate, high: uses.high } };
  const span: SupplySpan = {
    startS: -suit.beforeEgressS,
    endS: eva.bothInS,
    idleEffort: uses.idle,
    beyondS: BEYOND_S,
    beyondEffort: uses.beyond,
  };
  try {
    const planned = workFromTimeline(eva, stints, pieces, library, person.id, choice);
    const lit = (stretches: readonly WorkStretch[]) =>
      loadsByWindow(suit, campaign.windows, eva.petZeroUtcMs, stretches);
    const work = lit(coverSpan(planned, { ...span, beyondS: 0 }));
    const longSpan = { ...span, endS: span.endS + BEYOND_S, beyondS: 0 };
    const long = supplyUse(suit.specification, wearer, lit(coverSpan(planned, span)), longSpan);
    const use = { ...supplyUse(suit.specification, wearer, work, { ...span, beyondS: 0 }), span, curves: long.curves };
    return {
      known: true,
      person: person.id,
      suit,
      span,
      work,
      use: { ...use, limiting: long.limiting, breakthroughAtS: long.breakthroughAtS },
      sums: byCase((supplyCase) =>
        supplySums(suit.specification, wearer, work, span, supplyCase, use.end.water[supplyCase].used),
      ),
      byEffort: effortLines(suit, wearer, work),
      secondaryS: secondaryOxygenS(suit.specification),
    };
  } catch (fault) {
    if (!(fault instanceof Fault)) throw fault;
    return { known: false, person: person.id, reason: fault.message };
  }
}

/** null: no suit, work factor or mass stated. */
export function suitPerson(person: Person): SuitPerson | null {
  if (person.workFactor === null || person.bodyMassKg === null) return null;
  return { id: person.id, bodyMassKg: person.bodyMassKg, effortFactor: person.workFactor };
}

function effortLines(suit: Suit, wearer: SuitPerson, work: readonly WorkStretch[]): readonly EffortLine[] {
  const lines = new Map<string, EffortLine>();
  for (const stretch of work) {
    const lastsS = stretch.endS - stretch.startS;
    const rates = stretchRates(suit.specification, wearer, stretch, 'likely');
    const before = lines.get(stretch.effort);
    lines.set(stretch.effort, {
      effort: stretch.effort,
      durationS: (before?.durationS ?? 0) + lastsS,
      metabolicW: rates.heatPartsW.body,
      oxygenKg: (before?.oxygenKg ?? 0) + (rates.oxygenKgPerS.body + rates.oxygenKgPerS.leakage) * lastsS,
      carbonDioxideKg: (before?.carbonDioxideKg ?? 0) + rates.carbonDioxideKgPerS * lastsS,
      heatJ: (before?.heatJ ?? 0) + rates.heatW * lastsS,
      batteryJ: (before?.batteryJ ?? 0) + rates.batteryW * lastsS,
    });
  }
  return [...lines.values()].sort((a, b) => a.metabolicW - b.metabolicW);
}
