import type { Model } from '@handrail/solver/model/model';
import { type Atom, atomText, negated } from './atom.ts';
import { Bounds } from './bounds.ts';
import { type Definition, type Inference, type Meanings, infers } from './infers.ts';
import { ProofFault } from './proof-fault.ts';
import type { ProofLine } from './read-proof-line.ts';
import { leastSum } from './refutation/logic.ts';
import { Reading } from './reading.ts';
import { followsByPropagation } from './unit-propagation.ts';
import { View } from './view.ts';

interface Judged {
  readonly faults: readonly string[];
  readonly levels: readonly number[];
}

/** Takes a proof line by line; throws ProofFault at the first that does not hold. */
export class Replay {
  claim: 'optimal' | 'infeasible' | 'open' | null = null;
  best: readonly number[] | null = null;
  readonly closed: number[] = [];
  readonly counts = { inferences: 0, nogoods: 0 };
  private readonly model: Model;
  private readonly judge: (values: readonly number[]) => Judged;
  private readonly reading: Reading;
  /** What the model says from the start, for a look at single constraints. */
  private readonly plain: Bounds;
  /** The same with all that has been shown so far. */
  private readonly known: Bounds;
  private readonly definitions = new Map<number, Definition>();
  /** Constraint that each order variable of stretches without length belongs to. */
  private readonly scope = new Map<number, number>();
  private readonly totals = new Map<number, number[]>();
  private readonly users = new Map<number, Set<number>>();
  private readonly meanings: Meanings = {
    definitions: this.definitions,
    isOwn: (variable, constraint) => [...(this.users.get(variable) ?? [])].every((user) => user === constraint),
    mayUse: (variable, constraint) => this.claimScope(variable, constraint) === constraint,
    pairs: new Map(),
    totals: this.totals,
  };
  private readonly nogoods = new Map<number, readonly Atom[]>();
  private inferences: Inference[] = [];
  /** Taken before: what follows from the model alone goes on doing so, and of nothing everything follows. */
  private readonly shown = new WeakSet<Inference>();
  private assumed: readonly Atom[] = [];
  private levels: readonly number[] = [];
  private isStarted = false;
  /** Shown that nothing is left: of the model, or of what a cut or a closed level leaves. */
  private isEmpty = false;
  private isNarrowed = false;
  private refutesAssumptions = false;
  /** Greatest bound of each level for which nothing below it is left. */
  private readonly refuted: number[];

  constructor(model: Model, judge: (values: readonly number[]) => Judged) {
    this.model = model;
    this.judge = judge;
    this.reading = new Reading(model);
    this.plain = new Bounds(this.reading);
    this.known = new Bounds(this.reading);
    this.isEmpty = this.known.isContradictory;
    this.refuted = model.objectives.map(() => Number.NEGATIVE_INFINITY);
  }

  take(line: ProofLine): void {
    if (!this.isStarted) {
      if (line.kind !== 'version' || line.version !== 1) throw new ProofFault('a proof starts with "handrail-proof 1"');
      this.isStarted = true;
      return;
    }
    if (this.claim !== null) throw new ProofFault('nothing follows the claim');
    switch (line.kind) {
      case 'version':
        throw new ProofFault('the version stands in the first line only');
      case 'order':
      case 'support':
      case 'objective':
      case 'total':
        return this.define(line);
      case 'inference':
        return this.takeInference(line);
      case 'nogood':
        return this.takeNogood(line.id, line.atoms, line.hints);
      case 'drop':
        if (!this.nogoods.delete(line.id)) throw new ProofFault(`there is no nogood ${line.id} to drop`);
        return;
      case 'solution':
        return this.takeSolution(line.values);
      case 'cut':
        return this.takeCut(line.level, line.bound);
      case 'closed':
        return this.takeClosed(line.level, line.value);
      case 'assumptions':
        return this.takeAssumptions(line.atoms);
      default:
        return this.takeClaim(line.claim);
    }
  }

  private define(definition: Definition): void {
    const { variable } = definition;
    if (this.isKnown(variable)) throw new ProofFault(`variable ${variable} has a meaning already`);
    const { constraints, objectives, intervals } = this.model;
    let range: [number, number] = [0, 1];
    if (definition.kind === 'order') {
      for (const point of [
        ...definition.first.from,
        definition.first.to,
        ...definition.second.from,
        definition.second.to,
      ]) {
        if (intervals[point.interval] === undefined) throw new ProofFault(`there is no interval ${point.interval}`);
      }
    } else if (definition.kind === 'support') {
      const state = constraints[definition.constraint];
      if (state?.kind !== 'state' || state.needs[definition.need] === undefined)
        throw new ProofFault('a support of no need');
      if (definition.writer >= state.writers.length) throw new ProofFault('a support by no writer');
    } else if (definition.kind === 'objective') {
      if (objectives[definition.level] === undefined) throw new ProofFault(`there is no level ${definition.level}`);
      range = [this.leastOf(definition.level), Number.POSITIVE_INFINITY];
    } else {
      if (constraints[definition.constraint]?.kind !== 'sequence') throw new ProofFault('a total of no sequence');
      range = [0, Number.POSITIVE_INFINITY];
      this.totals.set(definition.constraint, [...(this.totals.get(definition.constraint) ?? []), variable]);
    }
    this.plain.add(variable, ...range);
    this.known.add(variable, ...range);
    this.definitions.set(variable, definition);
  }

  private isKnown(variable: number): boolean {
    return variable < this.model.variables.length || this.definitions.has(variable);
  }

  /** Least value of a level's terms by the bounds of the model. */
  private leastOf(level: number): number {
    const { minimise } = this.model.objectives[level] as Model['objectives'][number];
    const view = new View(this.plain);
    return leastSum({ terms: minimise.terms, constant: 0 }, view);
  }

  private checkAtoms(atoms: readonly (Atom | null)[]): void {
    for (const atom of atoms) {
      if (atom === null) continue;
      if (!this.isKnown(atom.variable)) throw new ProofFault(`there is no variable ${atom.variable}`);
      if (this.reading.standIn(atom.variable).variable !== atom.variable) {
        throw new ProofFault(`variable ${atom.variable} has a stand-in that must be named instead`);
      }
    }
  }

  private takeInference(inference: Inference): void {
    this.counts.inferences += 1;
    if (!this.shown.has(inference)) this.show(inference);
    this.inferences.push(inference);
  }

  private show(inference: Inference): void {
    const atoms = [...inference.premises, inference.conclusion];
    this.checkAtoms(atoms);
    for (const atom of atoms) if (atom !== null) this.checkScope(atom.variable, inference.constraint);
    if (!this.isEmpty && !infers(inference, this.model, this.plain, this.meanings)) {
      const { constraint, label, premises, conclusion } = inference;
      const kind =
        constraint >= 0 ? (this.model.constraints[constraint]?.kind ?? 'no') : constraint === -1 ? 'own' : 'interval';
      const from = premises.map(atomText).join(' ') || 'nothing';
      throw new ProofFault(
        `${kind} constraint ${constraint} (${label}) does not give ${conclusion === null ? 'a failure' : atomText(conclusion)} from ${from}`,
      );
    }
    this.shown.add(inference);
  }

  /** An order variable of two stretches that may be without length speaks for the ties of one constraint only. */
  private checkScope(variable: number, constraint: number): void {
    if (constraint < 0) return;
    const owner = this.claimScope(variable, constraint);
    if (owner !== constraint) throw new ProofFault(`order variable ${variable} belongs to constraint ${owner}`);
  }

  /** Notes that a constraint uses a variable; gives the one that it speaks for, which is another if it is taken. */
  private claimScope(variable: number, constraint: number): number {
    const meaning = this.definitions.get(variable);
    if (meaning?.kind !== 'order') return constraint;
    const { stretches } = this.reading;
    const isOfTies = stretches.mayBeEmpty(meaning.first) && stretches.mayBeEmpty(meaning.second);
    const owner = isOfTies ? (this.scope.get(variable) ?? constraint) : constraint;
    if (isOfTies) this.scope.set(variable, owner);
    if (owner === constraint) this.users.set(variable, (this.users.get(variable) ?? new Set()).add(constraint));
    return owner;
  }

  private takeNogood(id: number, atoms: readonly Atom[], hints: readonly number[]): void {
    this.counts.nogoods += 1;
    this.checkAtoms(atoms);
    if (this.nogoods.has(id)) throw new ProofFault(`nogood ${id} is there already`);
    const used = hints.map((hint) => {
      const nogood = this.nogoods.get(hint);
      if (nogood === undefined) throw new ProofFault(`there is no nogood ${hint}`);
      return nogood;
    });
    if (!this.isEmpty && !followsByPropagation(atoms, this.inferences, used, this.known)) {
      throw new ProofFault(`nogood ${id} does not follow: ${atoms.map(atomText).join(' ') || '(empty)'}`);
    }
    this.inferences = [];
    this.nogoods.set(id, atoms);
    const [only, ...more] = atoms;
    if (only === undefined) this.setEmpty();
    else if (more.length === 0) {
      this.known.set(negated(only));
      if (this.known.isContradictory) this.setEmpty();
    }
    this.noteRefuted(atoms);
  }

  private setEmpty(): void {
    this.isEmpty = true;
    if (!this.isNarrowed) this.refutesAssumptions = true;
  }

  /** What a nogood of assumptions and at most one objective bound says of a level. */
  private noteRefuted(atoms: readonly Atom[]): void {
    const rest = atoms.filter((atom) => !this.assumed.some((a) => entails(a, atom)));
    if (rest.length === 0 && !this.isNarrowed) this.refutesAssumptions = true;
    this.model.objectives.forEach((_, level) => {
      const { variable, offset } = this.objectiveTerm(level);
      const least = this.isEmpty ? Number.POSITIVE_INFINITY : this.known.min(variable) + offset - 1;
      let bound = least;
      const [only] = rest;
      if (rest.length === 0) bound = Number.POSITIVE_INFINITY;
      else if (rest.length === 1 && only?.variable === variable && !only.isAtLeast)
        bound = Math.max(bound, only.bound + offset);
      this.refuted[level] = Math.max(this.refuted[level] as number, bound);
    });
  }

  /** The variable by which the bounds of a level are told. */
  private objectiveTerm(level: number): { readonly variable: number; readonly offset: number } {
    const { minimise } = this.model.objectives[level] as Model['objectives'][number];
    for (const definition of this.definitions.values()) {
      if (definition.kind === 'objective' && definition.level === level) {
        return { variable: definition.variable, offset: minimise.constant };
      }
    }
    const [only, ...more] = minimise.terms;
    if (only === undefined || more.length > 0 || only.coefficient !== 1)
      throw new ProofFault(`level ${level} has no variable`);
    const { variable, offset } = this.reading.standIn(only.variable);
    return { variable, offset: offset + minimise.constant };
  }

  private takeSolution(values: readonly number[]): void {
    const { faults, levels } = this.judge(values);
    if (faults[0] !== undefined) throw new ProofFault(`not a solution: ${faults[0]}`);
    for (const atom of this.assumed) {
      const value = values[atom.variable] as number;
      if (atom.isAtLeast ? value < atom.bound : value > atom.bound)
        throw new ProofFault(`against the assumption ${atomText(atom)}`);
    }
    this.best = values;
    this.levels = levels;
  }

  private checkEarlier(level: number): void {
    if (this.best === null) throw new ProofFault('no solution before');
    this.closed.forEach((value, earlier) => {
      if (earlier < level && this.levels[earlier] !== value)
        throw new ProofFault(`the solution does not keep level ${earlier}`);
    });
  }

  private takeCut(level: number, bound: number): void {
    if (level !== this.closed.length || level !== this.model.objectives.length - 1) {
      throw new ProofFault('a cut is for the last level, when all before are closed');
    }
    this.checkEarlier(level);
    if (this.levels[level] !== bound + 1)
      throw new ProofFault(`the solution has ${this.levels[level]}, not ${bound + 1}`);
    this.narrow(level, bound);
  }

  private narrow(level: number, bound: number): void {
    this.isNarrowed = true;
    const { variable, offset } = this.objectiveTerm(level);
    this.known.set({ variable, isAtLeast: false, bound: bound - offset });
    if (this.known.isContradictory) this.setEmpty();
  }

  private takeClosed(level: number, value: number): void {
    if (level !== this.closed.length) throw new ProofFault(`level ${this.closed.length} is the next to close`);
    this.checkEarlier(level);
    if (this.levels[level] !== value)
      throw new ProofFault(`the newest solution has ${this.levels[level]}, not ${value}`);
    const { variable, offset } = this.objectiveTerm(level);
    const { minimise } = this.model.objectives[level] as Model['objectives'][number];
    const least = leastSum(minimise, new View(this.known));
    const isLeast =
      this.isEmpty ||
      least >= value ||
      this.known.min(variable) + offset >= value ||
      (this.refuted[level] as number) >= value - 1;
    if (!isLeast) throw new ProofFault(`nothing shows that level ${level} cannot be below ${value}`);
    this.closed.push(value);
    if (!this.isEmpty) this.narrow(level, value);
  }

  private takeAssumptions(atoms: readonly Atom[]): void {
    if (this.counts.inferences + this.counts.nogoods > 0) throw new ProofFault('assumptions come before any inference');
    this.checkAtoms(atoms);
    if (atoms.some((atom) => this.reading.ownerOf(atom.variable) !== null))
      throw new ProofFault('assumptions are on owned times');
    this.assumed = [...this.assumed, ...atoms];
  }

  private takeClaim(claim: 'optimal' | 'infeasible' | 'open'): void {
    if (claim === 'infeasible') {
      if (this.best !== null) throw new ProofFault('infeasible with a solution');
      if (!this.refutesAssumptions) throw new ProofFault('nothing shows that there is no solution');
    }
    if (claim === 'optimal') {
      if (this.best === null) throw new ProofFault('optimal without a solution');
      this.checkEarlier(this.closed.length);
      if (this.closed.length !== this.model.objectives.length)
        throw new ProofFault(`level ${this.closed.length} is not closed`);
    }
    this.claim = claim;
  }
}

function entails(a: Atom, b: Atom): boolean {
  if (a.variable !== b.variable || a.isAtLeast !== b.isAtLeast) return false;
  return a.isAtLeast ? a.bound >= b.bound : a.bound <= b.bound;
}
