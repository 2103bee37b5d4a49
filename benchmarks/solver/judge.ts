import type { BestKnown } from './best-known.ts';
import type { Outcome } from './solve-instance.ts';

/** Ways in which an outcome contradicts published bounds: a mistake in one of the two, to be looked at by hand. */
export function contradictions(outcome: Outcome, known: BestKnown | null, sense: 1 | -1): string[] {
  const level = outcome.levels[0];
  if (known === null) return [];
  const found = level?.value ?? null;
  if (known.infeasible) return found === null ? [] : ['a solution where none is published to exist'];
  if (outcome.status === 'infeasible') return ['called infeasible where solutions are published'];
  if (level === undefined) return [];
  // In the sense of the model, where less is better.
  const best = sense === 1 ? known : { lower: -known.upper, upper: -known.lower };
  const faults: string[] = [];
  if (found !== null && found < best.lower) faults.push(`value ${found} beats the published bound ${best.lower}`);
  if (level.bound > best.upper) faults.push(`bound ${level.bound} exceeds the published value ${best.upper}`);
  return faults;
}

/** Distance to the best published value as a share of it; null without a value to compare. */
export function gapToBestKnown(outcome: Outcome, known: BestKnown | null, sense: 1 | -1): number | null {
  const value = outcome.levels[0]?.value ?? null;
  if (value === null || known === null || known.infeasible || known.isAmbiguous) return null;
  // In the sense of the file, where `sense` -1 means that more is better.
  const best = sense === 1 ? known.upper : known.lower;
  return best === 0 ? 0 : (value - sense * best) / best;
}

/** Is everything about the instance settled: every level proved, or its infeasibility? */
export function isClosed(outcome: Outcome): boolean {
  return outcome.status === 'optimal' || outcome.status === 'infeasible';
}
