/**
 * The states of a plan in which something is not as planned: the planned needs and changes from an instant on, step by step, with other
 * values to begin with, or with work left out. Work whose need is not met then changes nothing any more, so that what rests on it
 * fails too. Order and times are those of the plan; what the plan itself does not meet is not counted.
 */
import type { Campaign } from '../campaign/campaign.ts';
import type { HardwareModel, Need } from '../hardware/effects.ts';
import { valueWords } from '../hardware/value-words.ts';
import { stepStart } from './person-course.ts';
import { stateWrites } from './state-writes.ts';
import type { EvaTimeline, PlannedStint } from './timeline.ts';

export interface Otherwise {
  /** PET from which on it is otherwise. */
  readonly fromS: number;
  /** States as they stand at `fromS`; what is missing has its initial value. */
  readonly values: ReadonlyMap<string, string>;
  /** What is otherwise then, in place of those. */
  readonly changed: ReadonlyMap<string, string>;
  /** Stint and step in which it comes about: of its own work only the steps after it are asked, and it does not change these states. */
  readonly inHand: { readonly stint: string; readonly step: number } | null;
  /** Stint keys left out. */
  readonly leftOut: ReadonlySet<string>;
}
export interface UnmetNeed {
  readonly stint: string;
  readonly petS: number;
  readonly variable: string;
  /** "Bolt 1 stuck; release b1 needs it torqued or started". */
  readonly words: string;
  /** It is under way at `fromS`. */
  readonly underWay: boolean;
}
export interface StatesWithout {
  /** First unmet need of each stint that the plan meets, by time. */
  readonly unmet: readonly UnmetNeed[];
  /** Values at the end, by variable; what is missing has its initial value. */
  readonly atEnd: ReadonlyMap<string, string>;
}

export function statesWithout(
  campaign: Campaign,
  hardware: HardwareModel,
  eva: EvaTimeline,
  otherwise: Otherwise,
): StatesWithout {
  const asPlanned = { ...otherwise, changed: new Map<string, string>(), inHand: null, leftOut: new Set<string>() };
  const planned = run(campaign, hardware, eva, asPlanned);
  const then = run(campaign, hardware, eva, otherwise);
  const unmet = [...then.failed.values()].filter((need) => !planned.failed.has(need.stint));
  return { unmet: unmet.sort((a, b) => a.petS - b.petS), atEnd: then.now };
}

interface Moment {
  readonly petS: number;
  /** Changes come before needs of the same instant. */
  readonly rank: 0 | 1;
  readonly stint: string;
  readonly act: { readonly variable: string; readonly value: string } | Need;
}

function run(
  campaign: Campaign,
  hardware: HardwareModel,
  eva: EvaTimeline,
  { fromS, values, changed, inHand, leftOut }: Otherwise,
): { readonly failed: ReadonlyMap<string, UnmetNeed>; readonly now: ReadonlyMap<string, string> } {
  const now = new Map([...values, ...changed]);
  const planned = new Map(eva.stints.map((one) => [one.stint, one] as const));
  const valueOf = (variable: string): string =>
    now.get(variable) ?? hardware.variables.get(variable)?.initial ?? 'unknown';
  const failed = new Map<string, UnmetNeed>();
  for (const { petS, stint, act } of moments(campaign, hardware, eva, fromS)) {
    if (failed.has(stint) || leftOut.has(stint)) continue;
    const own = inHand !== null && stint === inHand.stint;
    if (!('when' in act)) {
      // The work in hand leaves what it has come to, not what it was to leave.
      if (!(own && changed.has(act.variable))) now.set(act.variable, act.value);
      continue;
    }
    const one = planned.get(stint);
    const underWay = petS < fromS;
    if (one === undefined || (underWay && (own || !changed.has(act.variable)))) continue;
    if (own && act.fromStep <= inHand.step) continue;
    const allowed = act.allowed.map((any) => filled(any, one));
    const value = valueOf(act.variable);
    if (allowed.includes(value)) continue;
    const title = hardware.variables.get(act.variable)?.title ?? act.variable;
    failed.set(stint, {
      stint,
      petS: Math.max(petS, fromS),
      variable: act.variable,
      words: `${title} ${valueWords(value)}; ${act.origin.words} needs it ${[...new Set(allowed.map((any) => valueWords(any)))].join(' or ')}`,
      underWay,
    });
  }
  return { failed, now };
}

/** Needs whose time is not over at `fromS`, and changes after it, in order of time. */
function moments(campaign: Campaign, hardware: HardwareModel, eva: EvaTimeline, fromS: number): readonly Moment[] {
  const found: Moment[] = stateWrites(campaign, hardware, eva)
    .filter((write) => write.petS > fromS && write.petS <= eva.bothInS)
    .map(({ petS, by, variable, value }) => ({ petS, rank: 0 as const, stint: by, act: { variable, value } }));
  for (const one of eva.stints) {
    for (const need of hardware.effects.get(one.stint)?.needs ?? []) {
      const petS = need.when === 'end' ? one.endS : need.when === 'start' ? one.startS : stepStart(one, need.fromStep);
      const endS = need.when === 'during' ? (one.stepEndsS[need.toStep - 1] ?? one.endS) : petS;
      if (endS > fromS || (petS >= fromS && need.when !== 'during')) {
        found.push({ petS, rank: 1, stint: one.stint, act: need });
      }
    }
  }
  return found.sort((a, b) => a.petS - b.petS || a.rank - b.rank);
}

/** "role:0" is whoever fills role 0 of the stint. */
function filled(value: string, planned: PlannedStint): string {
  return value.startsWith('role:') ? `person:${planned.assigned[Number(value.slice('role:'.length))] ?? '?'}` : value;
}
