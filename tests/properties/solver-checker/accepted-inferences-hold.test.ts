/**
 * Is the proof checker too trusting? Inferences from real proofs are spoilt at random: a bound moved, a premise left out, the
 * conclusion turned round. Whatever of that it still accepts must hold in every solution of the model, found by enumeration.
 */
import { solve } from '@handrail/solver/engine/solve';
import type { Model, Solution } from '@handrail/solver/model/model';
import { KeptLines } from '@handrail/solver/proof/kept-lines';
import { Assignment } from '@handrail/solver-checker/assignment';
import type { Atom } from '@handrail/solver-checker/proof/atom';
import { Bounds } from '@handrail/solver-checker/proof/bounds';
import { type Definition, type Inference, infers } from '@handrail/solver-checker/proof/infers';
import { Reading } from '@handrail/solver-checker/proof/reading';
import { readProofLine } from '@handrail/solver-checker/proof/read-proof-line';
import { describe, expect, it } from 'vitest';
import { enumerateSolutions } from '../../reference/solver-oracle/enumerate-solutions.ts';
import { TINY, randomModel } from '../../reference/solver-oracle/random-model.ts';

const PER_BATCH = 30;

describe('a spoilt inference is accepted only if it holds in every solution', () => {
  it.each([0, 30, 60, 90, 120, 150])('models from seed %i on', (from) => {
    let accepted = 0;
    let refused = 0;
    for (let seed = from; seed < from + PER_BATCH; seed++) {
      const model = randomModel(seed, TINY);
      const solutions = allSolutions(model);
      if (solutions === null) continue;
      const { inferences, definitions } = inferencesOf(model, seed);
      const reading = new Reading(model);
      const bounds = new Bounds(reading);
      if (bounds.isContradictory) continue;
      for (const variable of definitions.keys()) bounds.add(variable, 0, 1);
      const meanings = {
        definitions,
        totals: new Map<number, readonly number[]>(),
        isOwn: () => true,
        mayUse: () => true,
        pairs: new Map<number, readonly [number, number]>(),
      };
      const pick = picker(seed);
      for (const original of inferences) {
        for (let i = 0; i < 6; i++) {
          const spoilt = spoil(original, pick);
          if (!infers(spoilt, model, bounds, meanings)) {
            refused += 1;
            continue;
          }
          accepted += 1;
          const counterexample = solutions.find((solution) => isBroken(spoilt, solution, model, reading, definitions));
          expect({ seed, spoilt, counterexample }).toEqual({ seed, spoilt, counterexample: undefined });
        }
      }
    }
    // Both outcomes have to be common, or nothing was tried.
    expect(accepted).toBeGreaterThan(100);
    expect(refused).toBeGreaterThan(100);
  });
});

function allSolutions(model: Model): Solution[] | null {
  const solutions: Solution[] = [];
  try {
    enumerateSolutions(model, 200_000, (solution) => solutions.push([...solution]));
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
  return solutions;
}

/** Inferences over variables of the model and orders of stretches; the meaning of other variables is not told by a solution. */
function inferencesOf(model: Model, seed: number) {
  const inferences: Inference[] = [];
  const definitions = new Map<number, Definition>();
  const proof = new KeptLines();
  const search = solve(model, { seed, conflictBudget: 2000, proof });
  while (search.next().done !== true);
  for (const text of proof) {
    const line = readProofLine(text);
    if (line.kind === 'order') definitions.set(line.variable, line);
    if (line.kind === 'inference') inferences.push(line);
  }
  const isTold = ({ variable }: Atom) => variable < model.variables.length || definitions.has(variable);
  return {
    definitions,
    inferences: inferences.filter(({ premises, conclusion }) =>
      [...premises, ...(conclusion === null ? [] : [conclusion])].every(isTold),
    ),
  };
}

function picker(seed: number): (n: number) => number {
  let state = Math.imul(seed + 7, 0x85ebca6b) | 1;
  return (n) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % n;
  };
}

function spoil(inference: Inference, pick: (n: number) => number): Inference {
  const premises = [...inference.premises];
  const moved = (atom: Atom, by: number): Atom => ({ ...atom, bound: atom.bound + by });
  const way = pick(4);
  if (way === 0 && premises.length > 0) premises.splice(pick(premises.length), 1);
  else if (way === 1 && premises.length > 0) {
    const i = pick(premises.length);
    premises[i] = moved(premises[i] as Atom, pick(5) - 2);
  } else if (way === 2 && inference.conclusion !== null) {
    return { ...inference, premises, conclusion: moved(inference.conclusion, pick(5) - 2) };
  } else if (inference.conclusion !== null) {
    return {
      ...inference,
      premises,
      conclusion: { ...inference.conclusion, isAtLeast: !inference.conclusion.isAtLeast },
    };
  }
  return { ...inference, premises };
}

/** Whether the premises hold and the conclusion does not; on an owned time an atom says "if the owner holds". */
function isBroken(
  { premises, conclusion }: Inference,
  solution: Solution,
  model: Model,
  reading: Reading,
  definitions: ReadonlyMap<number, Definition>,
): boolean {
  const at = new Assignment(model, solution);
  let isTold = true;
  const value = (variable: number): number => {
    const order = definitions.get(variable);
    if (order?.kind !== 'order') return at.valueOf(variable);
    const { first, second } = order;
    const isPresent = [first, second].every(({ from, to }) =>
      [...from, to].every(({ interval }) => at.isPresent(interval)),
    );
    const begins = (stretch: typeof first) => Math.min(...stretch.from.map((point) => at.instantOf(point)));
    const forth = at.instantOf(first.to) <= begins(second);
    // Absent, or a tie that may be taken either way: the solution does not tell the value.
    if (!isPresent || (forth && at.instantOf(second.to) <= begins(first))) isTold = false;
    return forth ? 1 : 0;
  };
  const holds = ({ variable, isAtLeast, bound }: Atom) => {
    const owner = reading.ownerOf(variable);
    if (owner !== null && !at.holds(owner)) return true;
    return isAtLeast ? value(variable) >= bound : value(variable) <= bound;
  };
  const broken = premises.every(holds) && (conclusion === null || !holds(conclusion));
  return broken && isTold;
}
