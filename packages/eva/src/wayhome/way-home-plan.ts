/** A way home as found: steps with times for each person, and the sum in words that can be added up by hand. */
import { formatPet } from '@handrail/quantity/time';
import type { TravelTable } from '../vehicle/travel-table.ts';
import type { Job } from './closing-jobs.ts';
import type { Horizon } from './horizon.ts';
import type { WayHomeCase } from './way-home-state.ts';

export interface PlanStep {
  readonly kind: 'go' | 'put' | 'close' | 'leave' | 'travel' | 'wait' | 'help' | 'hatch';
  readonly startS: number;
  readonly endS: number;
  readonly words: string;
  readonly from: string;
  readonly to: string;
}
export interface PersonWay {
  readonly person: string;
  /** Seconds from now; to the end of their passage. */
  readonly steps: readonly PlanStep[];
  readonly atHatchS: number;
  readonly inS: number;
  /** Hardware id → when this person has closed it. */
  readonly closedS: ReadonlyMap<string, number>;
}
export interface WayHome extends WayHomeCase {
  readonly horizon: Horizon;
  /** From now until both are on vehicle supplies, hatch closed; null: unknown here, or no such plan. */
  readonly totalS: number | null;
  /** "close 0:14 + travel 0:09 + hatch 0:13 = 0:36": the chain that decides. */
  readonly words: string;
  readonly people: readonly PersonWay[];
  /** Assist: from reaching them to the hatch, the longest of all who were tried as the one who cannot move; null: nobody is towed. */
  readonly towS: number | null;
  /** After the last person is in. */
  readonly closeHatchS: number;
  /** true: the minimum, over everything that was open to choice. */
  readonly shortest: boolean;
  readonly jobs: readonly Job[];
  /** What a kind does not tell: nothing is claimed then. */
  readonly unknown: readonly string[];
  /** What keeps the crew from a safe stop; empty: there is one. */
  readonly blocked: readonly Blocked[];
  readonly assumptions: readonly string[];
}
export interface Blocked {
  /** Without figures, so that it reads alike at every minute of a stretch. */
  readonly words: string;
  /** Stints or persons. */
  readonly by: readonly string[];
  readonly cause: BlockedCause;
  /** What a clock that runs out too early still has; null: it is not that. */
  readonly leftS: number | null;
}
/** piece: nothing closes it. clock: it cannot be stopped in time. way: no way from where somebody is. said: the text says so. */
export type BlockedCause = 'piece' | 'clock' | 'arm' | 'way' | 'said';

export function blockedWords({ words, leftS }: Pick<Blocked, 'words' | 'leftS'>): string {
  return leftS === null ? words : `${words} (${formatPet(Math.max(0, leftS))} left)`;
}

export type TravelOf = (person: string) => TravelTable;

const SUMMANDS: readonly (readonly [PlanStep['kind'], string])[] = [
  ['go', 'go on'],
  ['put', 'put away'],
  ['close', 'close'],
  ['help', 'reach and free'],
  ['leave', 'let go'],
  ['wait', 'wait'],
  ['travel', 'travel'],
];

/** The person whose way decides: the last at the hatch without having waited for it, or the first. Each term can be added by hand. */
export function sumInWords(
  people: readonly PersonWay[],
  order: readonly number[],
  closeHatchS: number,
  totalS: number,
): string {
  const inTurn = order.map((index) => people[index]).filter((person) => person !== undefined);
  const deciding =
    inTurn.findLast((person) => !person.steps.some((step) => step.words === 'wait for the hatch')) ?? inTurn[0];
  if (deciding === undefined) return `hatch ${formatPet(closeHatchS)} = ${formatPet(totalS)}`;
  const parts = SUMMANDS.flatMap(([kind, word]) => {
    const seconds = deciding.steps
      .filter((step) => step.kind === kind)
      .reduce((sum, step) => sum + step.endS - step.startS, 0);
    return seconds > 0 ? [`${word} ${formatPet(seconds)}`] : [];
  });
  return `${[...parts, `hatch ${formatPet(totalS - deciding.atHatchS)}`].join(' + ')} = ${formatPet(totalS)}`;
}
