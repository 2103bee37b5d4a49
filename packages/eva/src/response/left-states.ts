/**
 * What a response leaves behind when it has not done what it is for, and which work of the plan cannot be done then: the planned
 * needs and changes from there on, step by step, with these values in place of those that the work in hand would have left.
 *
 * Work whose need is not met changes nothing any more, so that what rests on it fails too. Order and times are those of the plan.
 */
import type { Campaign } from '../campaign/campaign.ts';
import type { HardwareModel, Need } from '../hardware/effects.ts';
import { valueWords } from '../hardware/value-words.ts';
import { stepStart, stintsByKey } from '../timeline/person-course.ts';
import { stateWrites } from '../timeline/state-writes.ts';
import type { EvaTimeline, PlannedStint } from '../timeline/timeline.ts';
import type { AnyResponse } from './any-response.ts';
import { piecesOf } from './concerned.ts';

export interface LeftState {
  readonly variable: string;
  readonly title: string;
  readonly value: string;
}
export interface UnmetNeed {
  readonly stint: string;
  readonly petS: number;
  readonly variable: string;
  /** "Bolt 1 is stuck, and release b1 needs it torqued or started". */
  readonly words: string;
  /** The need is that of work under way when the trouble comes up, by somebody else. */
  readonly underWay: boolean;
}

/** @param inHand stint and step of who has the trouble; null: none */
export function leftStates(
  campaign: Campaign,
  hardware: HardwareModel,
  response: AnyResponse,
  inHand: { readonly stint: string; readonly step: number } | null,
): readonly LeftState[] {
  const step = inHand === null ? undefined : stintsByKey(campaign).get(inHand.stint)?.steps[inHand.step];
  const pieces = step === undefined || response.leavesIt === null ? [] : piecesOf(campaign, response, step);
  return [
    ...pieces.map((piece) => ({ variable: piece.id, value: response.leavesIt as string })),
    ...response.leaves.map(({ variable, value }) => ({ variable, value })),
  ].map((one) => ({ ...one, title: hardware.variables.get(one.variable)?.title ?? one.variable }));
}

/**
 * @param values the states at `petS`
 * @param inHand the stint in which the trouble is; of its own work only the steps after it are asked
 * @returns first need of each stint that the plan meets and that is not met then, by time
 */
export function unmetNeeds(
  campaign: Campaign,
  hardware: HardwareModel,
  eva: EvaTimeline,
  values: ReadonlyMap<string, string>,
  left: readonly LeftState[],
  petS: number,
  inHand: { readonly stint: string; readonly step: number } | null,
): readonly UnmetNeed[] {
  if (left.length === 0) return [];
  const nominal = run(campaign, hardware, eva, values, [], petS, null);
  const then = run(campaign, hardware, eva, values, left, petS, inHand);
  return [...then.values()].filter((need) => !nominal.has(need.stint)).sort((a, b) => a.petS - b.petS);
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
  values: ReadonlyMap<string, string>,
  left: readonly LeftState[],
  fromS: number,
  inHand: { readonly stint: string; readonly step: number } | null,
): Map<string, UnmetNeed> {
  const now = new Map(values);
  for (const { variable, value } of left) now.set(variable, value);
  const changed = new Set(left.map(({ variable }) => variable));
  const planned = new Map(eva.stints.map((one) => [one.stint, one] as const));
  const valueOf = (variable: string): string =>
    now.get(variable) ?? hardware.variables.get(variable)?.initial ?? 'unknown';
  const failed = new Map<string, UnmetNeed>();
  for (const { petS, stint, act } of moments(campaign, hardware, eva, fromS)) {
    if (failed.has(stint)) continue;
    const own = inHand !== null && stint === inHand.stint;
    if (!('when' in act)) {
      // The work in hand leaves what the response says, not what it was to leave.
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
      words: `${title} ${valueWords(value)}; ${act.origin.words} needs it ${[...new Set(allowed.map((one) => valueWords(one)))].join(' or ')}`,
      underWay,
    });
  }
  return failed;
}

/** Needs whose time is not over at `fromS`, and changes after it, in order of time. */
function moments(campaign: Campaign, hardware: HardwareModel, eva: EvaTimeline, fromS: number): readonly Moment[] {
  const found: Moment[] = stateWrites(campaign, hardware, eva)
    .filter((write) => write.petS > fromS)
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
