import type { Model } from '@handrail/solver/model/model';
import { checkSolution } from './check-solution.ts';
import { evaluateObjectives } from './evaluate-objectives.ts';
import { ProofFault } from './proof/proof-fault.ts';
import { type ProofLine, readProofLine } from './proof/read-proof-line.ts';
import { Replay } from './proof/replay.ts';

/** Inferences that are remembered at a time, so that memory stays small however long a proof is. */
const MOST_REMEMBERED = 200_000;

export interface ProofVerdict {
  readonly isAccepted: boolean;
  /** What the proof claims, and shows if it is accepted; null when it stops without a claim. */
  readonly claim: 'optimal' | 'infeasible' | 'open' | null;
  /** Values of the levels that are closed. */
  readonly closed: readonly number[];
  /** Best solution in the proof; null without one. */
  readonly solution: readonly number[] | null;
  /** Number, from 1, and reason of the first line that is refused. */
  readonly refusal: { readonly line: number; readonly reason: string } | null;
  readonly counts: { readonly inferences: number; readonly nogoods: number };
}

/**
 * Replays a proof against the model alone: every inference must follow from the one constraint it names, every nogood by unit
 * propagation from inferences and nogoods before it, every solution must be one, and the claim must rest on all that.
 *
 * Sound by design: what it accepts is true of the model if this checker is right, whoever wrote the proof; labels are not believed.
 * It shares no code with the engine, and works out stand-ins and owners on its own. Not complete: an inference that needs more than
 * the refutations in `proof/refutation` is refused.
 * @checked tests/rejects/solver-proofs, tests/properties/solver-engine-proofs
 */
export function checkProof(model: Model, lines: Iterable<string>): ProofVerdict {
  const replay = new Replay(model, (values) => ({
    faults: checkSolution(model, values).map(({ message }) => message),
    levels: evaluateObjectives(model, values),
  }));
  // Engines say the same inference again and again: the same text is read, and shown, once.
  const inferences = new Map<string, ProofLine>();
  let number = 0;
  let refusal: ProofVerdict['refusal'] = null;
  try {
    for (const text of lines) {
      number += 1;
      const line = inferences.get(text) ?? readProofLine(text);
      replay.take(line);
      if (line.kind !== 'inference') continue;
      if (inferences.size >= MOST_REMEMBERED) inferences.clear();
      inferences.set(text, line);
    }
    if (replay.claim === null) throw new ProofFault('the proof ends without a claim');
  } catch (error) {
    if (!(error instanceof ProofFault)) throw error;
    refusal = { line: number, reason: error.message };
  }
  const { claim, closed, best, counts } = replay;
  return { isAccepted: refusal === null, claim, closed: [...closed], solution: best, refusal, counts: { ...counts } };
}
