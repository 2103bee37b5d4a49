import type { Constraint, Model, State } from '@handrail/solver/model/model';
import { type Atom, negated } from './atom.ts';
import type { Bounds } from './bounds.ts';
import type { ProofLine } from './read-proof-line.ts';
import { closesCircle } from './refutation/circle.ts';
import { refutesAlternative, refutesExtreme, refutesSpan } from './refutation/choice.ts';
import {
  refutesClause,
  refutesInterval,
  refutesLinear,
  refutesObjective,
  refutesPrecedence,
} from './refutation/logic.ts';
import { refutesCumulative, refutesReservoir } from './refutation/resources.ts';
import { refutesWorth } from './refutation/route-worth.ts';
import { refutesSequence } from './refutation/sequence.ts';
import { meaningsOfTies, refutesState } from './refutation/state.ts';
import { refutesWindows } from './refutation/windows.ts';
import { type OrderFact, type SupportFact, View } from './view.ts';

export type Inference = Extract<ProofLine, { readonly kind: 'inference' }>;
export type Definition = Extract<ProofLine, { readonly kind: 'order' | 'support' | 'objective' | 'total' }>;

/** What a proof has defined so far, and how its order variables have been used. */
export interface Meanings {
  readonly definitions: ReadonlyMap<number, Definition>;
  /** Auxiliary total variables of each sequence. */
  readonly totals: ReadonlyMap<number, readonly number[]>;
  /** Whether no other constraint than this one has used an order variable of ties. */
  readonly isOwn: (variable: number, constraint: number) => boolean;
  /** Whether an order variable may speak for this constraint; one of ties speaks for the first that asks, and for no other. */
  readonly mayUse: (variable: number, constraint: number) => boolean;
  /** The two holds that an order variable of ties turned out to mean; settled once, where the first inference needs it. */
  readonly pairs: Map<number, readonly [number, number]>;
}

/**
 * Whether the one constraint an inference names makes its conclusion follow from its premises: the premises and the opposite
 * of the conclusion are taken as bounds, on top of what the model says from the start, and the constraint must have no
 * solution within them. `bounds` are given back as they came. Labels are for readers: nothing is believed because of one.
 */
export function infers(inference: Inference, model: Model, bounds: Bounds, meanings: Meanings): boolean {
  const mark = bounds.mark();
  const { premises, conclusion } = inference;
  const atoms = conclusion === null ? premises : [...premises, negated(conclusion)];
  // The opposite of a conclusion on an owned time means that the owner holds.
  const owner = conclusion === null ? null : bounds.reading.ownerOf(conclusion.variable);
  if (owner !== null) bounds.setLiteral(owner);
  for (const atom of atoms) if (!bounds.isContradictory) bounds.set(atom);
  const holds = bounds.isContradictory || isImpossible(inference, atoms, model, bounds, meanings);
  bounds.revert(mark);
  return holds;
}

function isImpossible(
  { constraint: index, label }: Inference,
  atoms: readonly Atom[],
  model: Model,
  bounds: Bounds,
  meanings: Meanings,
): boolean {
  const { definitions, pairs } = meanings;
  const orders: OrderFact[] = [];
  const supports: SupportFact[] = [];
  const objectives: [number, number][] = [];
  for (const variable of new Set(atoms.map((atom) => atom.variable))) {
    const meaning = definitions.get(variable);
    if (meaning === undefined) continue;
    const value = bounds.min(variable) === bounds.max(variable) ? bounds.min(variable) : null;
    if (meaning.kind === 'order' && value !== null) {
      const isOwn = meanings.isOwn(variable, index);
      const { first, second } = meaning;
      orders.push({ variable, first, second, isBefore: value === 1, isOwn, pair: pairs.get(variable) ?? null });
    }
    if (meaning.kind === 'support' && meaning.constraint === index && value !== null) {
      supports.push({ need: meaning.need, writer: meaning.writer, serves: value === 1 });
    }
    if (meaning.kind === 'objective') objectives.push([variable, meaning.level]);
  }
  const constraint = model.constraints[index];
  if (constraint?.kind === 'state' && !bringsPresence(constraint, supports, bounds)) return true;
  const totals = meanings.totals.get(index) ?? [];
  const { stretches } = bounds.reading;
  const named = orders.map((fact) => ({
    ...fact,
    first: stretches.atMasters(fact.first),
    second: stretches.atMasters(fact.second),
  }));
  const view = new View(bounds, named, supports, totals, label, new Set(atoms.map((atom) => atom.variable)));
  if (index === -1) {
    const circle = circleOf(label);
    if (circle !== null) {
      return closesCircle(circle, model, (constraint) => {
        const own = named.filter(({ variable }) => meanings.mayUse(variable, constraint));
        return new View(bounds, own);
      });
    }
    const [head, lane = -1, ...memories] = label.split('/').map((word, i) => (i === 0 ? word : Number(word)));
    if (head === 'worth') {
      return objectives.some(([variable, level]) =>
        refutesWorth(variable, level, Number(lane), memories.map(Number), view),
      );
    }
    return objectives.some(([variable, level]) => {
      const objective = model.objectives[level];
      return objective !== undefined && refutesObjective(variable, objective, view);
    });
  }
  if (index < -1) {
    const interval = model.intervals[-2 - index];
    return interval !== undefined && refutesInterval(-2 - index, interval, view);
  }
  if (constraint === undefined) return false;
  if (isRefuted(constraint, view)) return true;
  return constraint.kind === 'state' && settlesTies(constraint, view, pairs);
}

/** Constraints that the label of a circle names; null: it is no such label. */
function circleOf(label: string): number[] | null {
  const [head, ...names] = label.split('/');
  return head === 'circle' && names.length > 0 ? names.map(Number) : null;
}

/** A support variable that holds says that its need and its writer are present. False: they cannot be. */
function bringsPresence(constraint: State, supports: readonly SupportFact[], bounds: Bounds): boolean {
  for (const { need, writer, serves } of supports) {
    if (!serves) continue;
    for (const hold of [constraint.needs[need], constraint.writers[writer]]) {
      if (hold === undefined) continue;
      for (const { interval } of [hold.from, hold.to]) {
        const { presence } = bounds.reading.interval(interval);
        if (presence !== null && !bounds.isContradictory) bounds.setLiteral(presence);
      }
    }
  }
  return !bounds.isContradictory;
}

/**
 * Order variables of ties that could mean several pairs: is there a meaning by which the inference holds? What they mean is a
 * definition, free as long as it is kept; so it is settled here, by the first inference that needs it.
 */
function settlesTies(constraint: State, view: View, pairs: Map<number, readonly [number, number]>): boolean {
  let choices: Map<number, readonly [number, number]>[] = [new Map()];
  for (const [variable, meanings] of meaningsOfTies(constraint, view)) {
    choices = choices.flatMap((choice) => meanings.map((pair) => new Map(choice).set(variable, pair)));
    if (choices.length > 64) return false;
  }
  for (const choice of choices) {
    if (choice.size === 0) continue;
    const orders = view.orders.map((fact) => ({ ...fact, pair: choice.get(fact.variable) ?? fact.pair }));
    if (!refutesState(constraint, new View(view.bounds, orders, view.supports))) continue;
    for (const [variable, pair] of choice) pairs.set(variable, pair);
    return true;
  }
  return false;
}

function isRefuted(constraint: Constraint, view: View): boolean {
  switch (constraint.kind) {
    case 'precedence':
      return refutesPrecedence(constraint, view);
    case 'alternative':
      return refutesAlternative(constraint, view);
    case 'span':
      return refutesSpan(constraint, view);
    case 'sequence':
      return refutesSequence(constraint, view);
    case 'cumulative':
      return refutesCumulative(constraint, view);
    case 'reservoir':
      return refutesReservoir(constraint, view);
    case 'windows':
      return refutesWindows(constraint, view);
    case 'state':
      return refutesState(constraint, view);
    case 'clause':
      return refutesClause(constraint, view);
    case 'linear':
      return refutesLinear(constraint, view);
    default:
      return refutesExtreme(constraint, view);
  }
}
