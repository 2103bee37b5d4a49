import type { LevelResult, SolveEvent, SolveOptions, SolveResult } from '../model/answer.ts';
import type { Literal, Model, Objective, Solution } from '../model/model.ts';
import { TextProof } from '../proof/text-proof.ts';
import { DiveBrancher } from '../search/dive-brancher.ts';
import { ScheduleBrancher } from '../search/schedule-brancher.ts';
import { type Outcome, Search } from '../search/search.ts';
import type { Compilation, EngineInterval } from './compilation.ts';
import { compileModel } from './compile-model.ts';
import type { Term } from './kernel.ts';
import { postObjectives, valueOf } from './objective-terms.ts';

/** Conflicts between two yields. */
const SLICE = 100;
/** Conflicts that shifting a plan to the left may cost. */
const SHIFT_CONFLICTS = 10;

type Atom = readonly [side: number, bound: number];

/**
 * Solve a model: a generator that yields every better solution, every better bound and signs of life, and returns the
 * result. Lazy clause generation: propagation with explanations, learned nogoods, restarts; objectives one after another,
 * each with the nogoods, activities and incumbent of the one before.
 *
 * Deterministic: same model, seed and conflict budget, same events. All arithmetic is on 32-bit integers; sums past ±2^29
 * are refused with a RangeError.
 * @checked tests/properties/solver-engine
 */
export function* solve(model: Model, options: SolveOptions): Generator<SolveEvent, SolveResult> {
  const run = new Run(model, options);
  yield* run.go();
  run.endProof();
  return run.result();
}

class Run {
  private readonly model: Model;
  private readonly options: SolveOptions;
  private readonly at: Compilation;
  private readonly search: Search;
  private readonly brancher: ScheduleBrancher;
  private readonly objectives: Term[];
  private readonly assumptions: readonly Literal[];
  private best: Solution | null = null;
  private readonly bounds: number[];
  private readonly proved: boolean[];
  private isRefuted = false;
  private core: Literal[] = [];
  private readonly booleans: number[] = [];
  private readonly proof: TextProof | null;

  constructor(model: Model, options: SolveOptions) {
    this.model = model;
    this.options = options;
    this.at = compileModel(model);
    this.objectives = postObjectives(this.at);
    this.assumptions = options.assumptions ?? [];
    this.search = new Search(this.at.kernel);
    this.brancher = new ScheduleBrancher(this.at, this.search.activity);
    this.search.brancher = this.brancher;
    this.proof = options.proof === undefined ? null : new TextProof(options.proof, this.at, this.assumptionAtoms());
    this.search.setProof(this.proof);
    this.bounds = this.objectives.map((term) => this.lower(term));
    this.proved = this.objectives.map(() => false);
    const { store } = this.at.kernel;
    for (let v = 0; v < store.variableCount; v++) if (store.min(v) === 0 && store.max(v) === 1) this.booleans.push(v);
    options.hint?.forEach((value, id) => {
      if (value === undefined) return;
      const term = this.at.term(id);
      this.brancher.wish[term.variable] = value - term.offset;
    });
  }

  private assumptionAtoms(): Atom[] {
    return this.assumptions.map((l) => {
      const literal = this.at.literal(l);
      return [literal, 1 - (literal & 1)];
    });
  }

  private lower({ variable, offset }: Term): number {
    return (this.at.kernel.store.base[2 * variable] as number) + offset;
  }

  *go(): Generator<SolveEvent, void> {
    const { kernel } = this.at;
    kernel.seal();
    if (!(kernel.consistent ? this.search.propagateRoot() : this.search.refutedAtRoot())) {
      this.isRefuted = true;
      return;
    }
    const frozen = this.assumptionAtoms();
    const levels = Math.max(1, this.objectives.length);
    for (let level = 0; level < levels; level++) {
      const objective = this.objectives[level];
      const isDone = yield* this.minimise(objective, level, frozen);
      if (!isDone || this.best === null) return;
      if (objective !== undefined) {
        const value = valueOf(this.model.objectives[level] as Objective, this.best);
        this.bounds[level] = value;
        this.proved[level] = true;
        this.proof?.closed(level, value);
        const side = 2 * objective.variable + 1;
        // Without assumptions a closed level holds for good; under some it holds with them.
        if (this.assumptions.length > 0) frozen.push([side, objective.offset - value]);
        else if (!this.search.fix(side, objective.offset - value)) throw new Error('a closed level has no solution');
      }
    }
  }

  /** One level. True: proved (or refuted as a whole); false: stopped. */
  private *minimise(objective: Term | undefined, level: number, frozen: readonly Atom[]): Generator<SolveEvent, boolean> {
    const { search } = this;
    for (;;) {
      const atoms = [...frozen];
      if (objective !== undefined && this.best !== null) {
        const value = valueOf(this.model.objectives[level] as Objective, this.best);
        if (value <= this.lower(objective)) return true;
        atoms.push([2 * objective.variable + 1, objective.offset - (value - 1)]);
      } else if (this.best !== null) {
        return true;
      }
      search.setAssumptions(atoms);
      const outcome = yield* this.searchOn();
      if (outcome === 'limit') return false;
      if (outcome === 'solution') {
        this.keepSolution();
        if (objective !== undefined) this.shiftLeft(objective, level, frozen);
        yield { kind: 'incumbent', solution: this.best as unknown as Solution, levels: this.levels(), conflicts: search.conflicts };
        continue;
      }
      if (this.best === null) {
        this.isRefuted = true;
        if (outcome === 'assumption') this.core = search.core.map((i) => this.assumptions[i] as Literal);
      }
      return true;
    }
  }

  /** Keep the choices of the best plan and improve its times, as long as that costs but a few conflicts. */
  private shiftLeft(objective: Term, level: number, frozen: readonly Atom[]): void {
    const { search, brancher } = this;
    const { store } = this.at.kernel;
    const dive = new DiveBrancher(brancher, store);
    search.brancher = dive;
    const byActivity = brancher.byActivity;
    brancher.byActivity = false;
    for (;;) {
      const value = valueOf(this.model.objectives[level] as Objective, this.best as Solution);
      if (value <= this.lower(objective)) break;
      const sides: number[] = [];
      const bounds: number[] = [];
      for (const v of this.booleans) {
        const wish = brancher.wish[v] as number;
        if (Number.isNaN(wish)) continue;
        sides.push(wish > 0 ? 2 * v : 2 * v + 1);
        bounds.push(wish > 0 ? 1 : 0);
      }
      search.setAssumptions([...frozen, [2 * objective.variable + 1, objective.offset - (value - 1)]]);
      dive.aim(sides, bounds);
      dive.minimum = objective.variable;
      if (search.run(SHIFT_CONFLICTS) !== 'solution') break;
      this.keepSolution();
    }
    search.brancher = brancher;
    brancher.byActivity = byActivity;
  }

  private *searchOn(): Generator<SolveEvent, Outcome> {
    const { search, options } = this;
    const budget = options.conflictBudget ?? Number.POSITIVE_INFINITY;
    for (;;) {
      const left = budget - search.conflicts;
      if (left <= 0 || options.shouldStop?.() === true) return 'limit';
      const outcome = search.run(Math.min(SLICE, left));
      if (outcome !== 'limit') return outcome;
      yield { kind: 'progress', conflicts: search.conflicts };
    }
  }

  private keepSolution(): void {
    const { model, at } = this;
    const { store } = at.kernel;
    const values = at.terms.map(({ variable, offset }) => store.min(variable) + offset);
    model.intervals.forEach((interval, id) => {
      const { presence } = at.intervals[id] as EngineInterval;
      if (presence < 0 || !store.fails(presence)) return;
      const own = [interval.start, interval.end, typeof interval.duration === 'number' ? -1 : interval.duration.variable];
      for (const v of own) {
        if (v >= 0 && store.owner[at.term(v).variable] === presence) values[v] = (model.variables[v] as { min: number }).min;
      }
    });
    this.best = values;
    this.proof?.solution(values);
    for (let v = 0; v < store.variableCount; v++) {
      const owner = store.owner[v] as number;
      if (owner < 0 || store.holds(owner)) this.brancher.wish[v] = store.min(v);
    }
  }

  private levels(): LevelResult[] {
    return this.model.objectives.map((objective, level) => {
      const value = this.best === null ? null : valueOf(objective, this.best);
      const bound = Math.max(this.bounds[level] as number, this.lower(this.objectives[level] as Term));
      return { objective: objective.name, value, bound, proved: this.proved[level] as boolean };
    });
  }

  endProof(): void {
    const status = this.status();
    this.proof?.end(status === 'optimal' || status === 'infeasible' ? status : 'open');
  }

  private status(): SolveResult['status'] {
    if (this.isRefuted) return 'infeasible';
    if (this.best === null) return 'unknown';
    return this.proved.every(Boolean) ? 'optimal' : 'feasible';
  }

  result(): SolveResult {
    const { search, at } = this;
    return {
      status: this.status(),
      solution: this.best,
      levels: this.levels(),
      statistics: {
        conflicts: search.conflicts,
        decisions: search.decisions,
        propagations: at.kernel.propagations,
        restarts: search.restarts,
      },
      core: this.core,
    };
  }
}
