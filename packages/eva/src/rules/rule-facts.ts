/**
 * What rules read: the campaign, the timeline, and views derived from both once. Everything here only rearranges what the
 * document and the timeline say; a rule decides what it means.
 */
import type { Campaign, Hardware, Person, Stint } from '../campaign/campaign.ts';
import type { HardwareModel, StintEffects } from '../hardware/effects.ts';
import type { KindsLibrary } from '../kinds/kinds-library.ts';
import { personSupplies, type SuppliesReading, takesPart } from '../suit/eva-supplies.ts';
import { type ClockRun, clockRuns } from '../timeline/clock-runs.ts';
import { personCourse, stepStart, type Stretch, stintsByKey } from '../timeline/person-course.ts';
import { type StateWrite, stateWrites } from '../timeline/state-writes.ts';
import type { EvaTimeline, PlannedStint, Timeline } from '../timeline/timeline.ts';
import { type TravelTable, travelTable } from '../vehicle/travel-table.ts';

export interface RuleFacts {
  readonly campaign: Campaign;
  readonly hardware: HardwareModel;
  readonly library: KindsLibrary;
  readonly timeline: Timeline;
  readonly evas: readonly EvaFacts[];
  readonly stints: ReadonlyMap<string, Stint>;
  readonly pieces: ReadonlyMap<string, Hardware>;
  readonly outside: readonly Person[];
}

export interface EvaFacts {
  readonly eva: EvaTimeline;
  readonly travel: TravelTable;
  /** With this person's own anchor and reel. */
  readonly travelOf: (person: string) => TravelTable;
  /** By person id. */
  readonly courses: ReadonlyMap<string, readonly Stretch[]>;
  /** Writes within this EVA, by time. */
  readonly writes: readonly StateWrite[];
  /** Every step of every planned stint, by time. */
  readonly steps: readonly PlannedStep[];
  readonly clocks: readonly ClockRun[];
  /** null: this person states no suit, or takes no part. Worked out when first asked for. */
  readonly suppliesOf: (person: string) => SuppliesReading | null;
  /** Just before `petS`: writes at that very instant do not count yet. */
  readonly valueBefore: (variable: string, petS: number) => string;
  /** From `petS` on. */
  readonly valueAt: (variable: string, petS: number) => string;
  /** At the end of this EVA. */
  readonly valueLeft: (variable: string) => string;
}

export interface PlannedStep {
  readonly stint: Stint;
  readonly planned: PlannedStint;
  readonly effects: StintEffects | undefined;
  readonly index: number;
  readonly startS: number;
  readonly endS: number;
  /** Who does it. */
  readonly who: string;
}

export function ruleFacts(
  campaign: Campaign,
  hardware: HardwareModel,
  library: KindsLibrary,
  timeline: Timeline,
): RuleFacts {
  const stints = stintsByKey(campaign);
  const carried = new Map<string, string>();
  const evas = timeline.evas.map((eva) => evaFacts(campaign, hardware, library, eva, stints, carried));
  return {
    campaign,
    hardware,
    library,
    timeline,
    evas,
    stints,
    pieces: new Map(campaign.hardware.map((piece) => [piece.id, piece])),
    outside: campaign.people.filter((person) => person.role === 'outside'),
  };
}

/** `carried`: the state as the EVA before left it; this EVA's own as-left state is written back into it. */
function evaFacts(
  campaign: Campaign,
  hardware: HardwareModel,
  library: KindsLibrary,
  eva: EvaTimeline,
  stints: ReadonlyMap<string, Stint>,
  carried: Map<string, string>,
): EvaFacts {
  const atStart = new Map(carried);
  const writes = stateWrites(campaign, hardware, eva);
  const history = new Map<string, StateWrite[]>();
  for (const write of writes) {
    const list = history.get(write.variable) ?? [];
    list.push(write);
    history.set(write.variable, list);
  }
  const initial = (variable: string): string =>
    atStart.get(variable) ?? hardware.variables.get(variable)?.initial ?? 'unknown';
  const value = (variable: string, counts: (write: StateWrite) => boolean): string =>
    history.get(variable)?.findLast(counts)?.value ?? initial(variable);
  const valueBefore = (variable: string, petS: number): string => value(variable, (write) => write.petS < petS);
  const valueAt = (variable: string, petS: number): string => value(variable, (write) => write.petS <= petS);
  const valueLeft = (variable: string): string => value(variable, (write) => write.petS <= eva.bothInS);
  const atEgress = new Map([...hardware.variables.keys()].map((variable) => [variable, valueAt(variable, 0)] as const));
  const tables = new Map<string, TravelTable>();
  const travelOf = (person: string): TravelTable => {
    const known = tables.get(person) ?? travelTable(campaign, { valuation: atEgress, person });
    tables.set(person, known);
    return known;
  };
  const pieces = new Map(campaign.hardware.map((piece) => [piece.id, piece]));
  const readings = new Map<string, SuppliesReading | null>();
  const suppliesOf = (id: string): SuppliesReading | null => {
    const known = readings.get(id);
    if (known !== undefined) return known;
    const person = campaign.people.find((candidate) => candidate.id === id);
    const reading =
      person === undefined || person.suit === null || !takesPart(eva, id)
        ? null
        : personSupplies(campaign, library, eva, person, stints, pieces);
    readings.set(id, reading);
    return reading;
  };
  const facts: EvaFacts = {
    eva,
    travel: travelTable(campaign, { valuation: atEgress }),
    travelOf,
    courses: new Map(campaign.people.map((person) => [person.id, personCourse(campaign, eva, person.id)] as const)),
    writes: writes.filter((write) => write.petS <= eva.bothInS),
    steps: plannedSteps(hardware, eva, stints),
    clocks: clockRuns(campaign, hardware, eva, writes, atStart),
    suppliesOf,
    valueBefore,
    valueAt,
    valueLeft,
  };
  for (const variable of history.keys()) carried.set(variable, valueLeft(variable));
  return facts;
}

function plannedSteps(
  hardware: HardwareModel,
  eva: EvaTimeline,
  stints: ReadonlyMap<string, Stint>,
): readonly PlannedStep[] {
  return eva.stints
    .flatMap((planned): PlannedStep[] => {
      const stint = stints.get(planned.stint);
      if (stint === undefined) return [];
      return stint.steps.map((step, index) => {
        const role = stint.roles.findIndex(
          (candidate) => candidate.name === step.by && candidate.fromStep <= index && index < candidate.toStep,
        );
        return {
          stint,
          planned,
          effects: hardware.effects.get(stint.key),
          index,
          startS: stepStart(planned, index),
          endS: planned.stepEndsS[index] ?? planned.endS,
          who: planned.assigned[Math.max(0, role)] ?? '?',
        };
      });
    })
    .sort((a, b) => a.startS - b.startS);
}
