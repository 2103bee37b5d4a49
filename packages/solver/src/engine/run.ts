import type { LevelResult, SolveEvent, SolveOptions, SolveResult } from '../model/answer.ts';
import type { Literal, Model, Objective, Point, Solution } from '../model/model.ts';
import { TextProof } from '../proof/text-proof.ts';
import { DiveBrancher } from '../search/dive-brancher.ts';
import { Neighbourhoods } from '../search/neighbourhoods.ts';
import type { ScheduleGenerator } from '../search/generate-schedule.ts';
import type { Project } from '../search/project.ts';
import { Random } from '../search/random.ts';
import { ScheduleBrancher } from '../search/schedule-brancher.ts';
import { type Outcome, Search } from '../search/search.ts';
import { compileModel } from './compile-model.ts';
import type { Compilation, EngineInterval } from './compilation.ts';
import type { Term } from './kernel.ts';
import { postObjectives, valueOf } from './objective-terms.ts';
import { postRouteWorths } from './route-worths.ts';
import type { RunSettings } from './run-settings.ts';
import { type OpenedProject, openProject } from './solve-project-at-once.ts';

/** Conflicts between two yields. */
const SLICE = 100;
/** Conflicts that shifting a plan to the left may cost. */
const SHIFT_CONFLICTS = 10;
const SHIFT_RUNS = 20;
/** Conflicts for one neighbourhood, and for one attempt on the lower bound. */
const NEIGHBOURHOOD_CONFLICTS = 100;
const PROBE_CONFLICTS = 100;
/** Turns after which a level is a long one: each attempt on its lower bound may then take more, so that what is left open is known closely. */
const LONG_TURNS = 60;
/** Conflicts for the first attempts on the lower bound of a level. */
const BOUND_CONFLICTS = 200;
/** What the attempts get of all conflicts of a level: what they teach holds only under the value that they assume, so that they hinder the proof. */
const BOUND_SHARE = 0.1;
const LONG_BOUND_SHARE = 0.3;
/** They wait until they may take so many. */
const LEAST_BOUND_CONFLICTS = 50;

type Atom = readonly [side: number, bound: number];

/** One solve from beginning to end: levels, incumbents, bounds, and which kind of search has its turn. */
export class Run {
  private readonly model: Model;
  private readonly options: SolveOptions;
  private readonly settings: RunSettings;
  private readonly at: Compilation;
  private readonly search: Search;
  private readonly brancher: ScheduleBrancher;
  private readonly dive: DiveBrancher;
  private readonly neighbourhoods: Neighbourhoods;
  private readonly project: Project | null;
  private readonly generator: ScheduleGenerator | null;
  private readonly objectives: Term[];
  private readonly assumptions: readonly Literal[];
  private readonly booleans: number[] = [];
  private readonly proof: TextProof | null;
  private best: Solution | null = null;
  /** Values that a relaxation found good and that were not tried yet. */
  private suggested: readonly (readonly [variable: number, value: number])[] = [];
  private readonly bounds: number[];
  private readonly proved: boolean[];
  private isRefuted = false;
  private core: Literal[] = [];
  private frozen: Atom[];

  /** `opened`: the model as a project, where its caller has looked at it already; null: it is none, or is not to be taken so. */
  constructor(
    model: Model,
    options: SolveOptions,
    settings: RunSettings = {},
    opened: OpenedProject | null = settings.withoutGenerator === true ? null : openProject(model, options.seed),
  ) {
    this.settings = settings;
    this.model = model;
    this.options = options;
    this.at = compileModel(model, settings);
    this.objectives = postObjectives(this.at);
    this.assumptions = options.assumptions ?? [];
    this.search = new Search(this.at.kernel);
    this.brancher = new ScheduleBrancher(this.at, this.search.activity);
    this.search.brancher = this.brancher;
    if (settings.withoutRouteWorths !== true) {
      postRouteWorths(this.at, (values) => {
        this.suggested = values;
      });
    }
    this.search.analyser.isChecking = settings.checksReasons === true;
    this.search.analyser.isMinimising = settings.withoutMinimisation !== true;
    this.at.kernel.skipsRedundant = settings.withoutRedundant === true;
    const { store } = this.at.kernel;
    this.dive = new DiveBrancher(this.brancher, store);
    this.neighbourhoods = new Neighbourhoods(this.at, new Random(options.seed));
    this.project = opened?.project ?? null;
    this.generator = opened?.generator ?? null;
    this.frozen = this.assumptions.map((l) => {
      const literal = this.at.literal(l);
      return [literal, 1 - (literal & 1)];
    });
    this.proof = options.proof === undefined ? null : new TextProof(options.proof, this.at, this.frozen);
    this.search.setProof(this.proof);
    this.at.isLogged = this.proof !== null;
    this.at.kernel.detectsCycles = settings.withoutCircles !== true;
    this.at.kernel.namesCircles = this.proof !== null;
    this.bounds = this.objectives.map((term) => this.lower(term));
    this.proved = this.objectives.map(() => false);
    for (let v = 0; v < store.variableCount; v++) if (store.min(v) === 0 && store.max(v) === 1) this.booleans.push(v);
    options.hint?.forEach((value, id) => {
      if (value === undefined) return;
      const term = this.at.term(id);
      this.brancher.wish[term.variable] = value - term.offset;
    });
  }

  private lower({ variable, offset }: Term): number {
    return (this.at.kernel.store.base[2 * variable] as number) + offset;
  }
  private value(level: number): number {
    return valueOf(this.model.objectives[level] as Objective, this.best as Solution);
  }

  *go(): Generator<SolveEvent, void> {
    const { kernel } = this.at;
    kernel.seal();
    if (!(kernel.consistent ? this.search.propagateRoot() : this.search.refutedAtRoot())) {
      this.isRefuted = true;
      this.endProof();
      return;
    }
    yield* this.levelsInTurn();
    this.endProof();
  }

  private *levelsInTurn(): Generator<SolveEvent, void> {
    if (this.generator !== null && this.assumptions.length === 0) {
      const enough = this.lower(this.objectives[0] as Term);
      this.generator.sample(30, enough);
      if (this.adoptSchedule()) yield this.incumbent();
    }
    if (this.best === null && !(yield* this.firstSolution())) return;
    for (const [level, objective] of this.objectives.entries()) {
      if (!(yield* this.minimise(objective, level))) return;
      const value = this.value(level);
      this.bounds[level] = value;
      this.proved[level] = true;
      this.proof?.closed(level, value);
      const atom: Atom = [2 * objective.variable + 1, objective.offset - value];
      // Without assumptions a closed level holds for good; under some it holds with them.
      if (this.assumptions.length > 0) this.frozen.push(atom);
      else if (level < this.objectives.length - 1 && !this.search.fix(...atom))
        throw new Error('a closed level has no solution');
    }
  }

  private *firstSolution(): Generator<SolveEvent, boolean> {
    const { search } = this;
    search.setAssumptions(this.frozen);
    this.brancher.leavesOut = true;
    this.at.kernel.skipsRedundant = true;
    const outcome = yield* this.searchFor(Number.POSITIVE_INFINITY);
    this.brancher.leavesOut = false;
    this.at.kernel.skipsRedundant = this.settings.withoutRedundant === true;
    if (outcome === 'limit') return false;
    if (outcome === 'solution') {
      this.keepSolution();
      if (this.objectives[0] !== undefined) this.shiftLeft(this.objectives[0], 0);
      yield this.incumbent();
      return true;
    }
    this.isRefuted = true;
    if (outcome === 'assumption') this.core = search.core.map((i) => this.assumptions[i] as Literal);
    return false;
  }

  /** One level, from an incumbent. True: proved; false: stopped. */
  private *minimise(objective: Term, level: number): Generator<SolveEvent, boolean> {
    let turn = 0;
    let appetite = 10;
    const entered = this.search.conflicts;
    /** Conflicts that attempts on the lower bound took. */
    let onBound = 0;
    // The larger a project, the longer breeding pays before proof does.
    const cells = this.model.horizon * (this.project?.capacity.length ?? 0);
    const brood = Math.max(
      30,
      Math.round(((this.project?.n ?? 0) >= 60 ? 2000 : 300) * Math.min(1, 3000 / (cells + 1))),
    );
    let generations = brood;
    for (;;) {
      const value = this.value(level);
      if (value <= this.boundOf(level)) return true;
      let outcome: Outcome;
      if (this.suggested.length > 0) {
        outcome = yield* this.trySuggestion(objective, level);
        if (outcome === 'refuted') return true;
        continue;
      }
      turn++;
      if (turn % 4 === 2) {
        outcome = yield* this.better(objective, level, 500 * (1 + (turn >> 2)));
        if (outcome === 'assumption' || outcome === 'refuted') return true;
      } else if (turn % 4 === 3 && this.generator !== null) {
        const improved = yield* this.generate(generations, level);
        generations = improved ? brood : Math.min(4 * brood, generations * 2);
        if (improved) yield this.incumbent();
      } else if (turn % 4 === 1) {
        if (this.settings.withoutBoundAttempts) continue;
        const begun = this.search.conflicts;
        const share = turn > LONG_TURNS ? LONG_BOUND_SHARE : BOUND_SHARE;
        const allowed = BOUND_CONFLICTS + share * (begun - entered) - onBound;
        if (allowed < LEAST_BOUND_CONFLICTS) continue;
        outcome = yield* this.raiseBound(objective, level, turn, allowed);
        onBound += this.search.conflicts - begun;
      } else if (this.neighbourhoods.isUseful && !this.settings.withoutNeighbourhoods) {
        let improved = 0;
        outcome = 'limit';
        for (let i = 0; i < appetite; i++) {
          outcome = yield* this.visitNeighbourhood(objective, level);
          if (outcome === 'solution') improved++;
          else if (outcome === 'refuted') return true;
          if (this.isOver() || this.value(level) <= this.boundOf(level)) break;
        }
        appetite = Math.max(6, Math.min(60, improved > 0 ? appetite * 2 : appetite >> 1));
      }
      if (this.isOver()) return this.value(level) <= this.boundOf(level);
    }
  }

  /** Take over what the schedule generator found, if it is better. */
  private adoptSchedule(): boolean {
    const { generator, model } = this;
    const schedule = generator?.best ?? null;
    if (schedule === null || this.project === null) return false;
    const values = model.variables.map(({ min }) => min);
    model.intervals.forEach(({ start, end }, id) => {
      values[start] = schedule.start[id] as number;
      values[end] = (schedule.start[id] as number) + (this.project?.duration[id] as number);
    });
    if (this.best !== null && valueOf(model.objectives[0] as Objective, values) >= this.value(0)) return false;
    this.best = values;
    this.proof?.solution(values);
    const { wish } = this.brancher;
    this.at.terms.forEach(({ variable, offset }, id) => {
      wish[variable] = (values[id] as number) - offset;
    });
    for (const { variable, first, second } of this.at.orders) {
      const instant = ({ interval, of, offset }: Point) =>
        offset + (values[(model.intervals[interval] as { start: number; end: number })[of]] as number);
      wish[variable] = second.from.every((from) => instant(first.to) <= instant(from)) ? 1 : 0;
    }
    return true;
  }

  private boundOf(level: number): number {
    return Math.max(this.bounds[level] as number, this.lower(this.objectives[level] as Term));
  }

  private isOver(): boolean {
    const { options, search } = this;
    return search.conflicts >= (options.conflictBudget ?? Number.POSITIVE_INFINITY) || options.shouldStop?.() === true;
  }

  private *generate(count: number, level: number): Generator<SolveEvent, boolean> {
    for (let done = 0; done < count && !this.isOver(); done += 100) {
      this.generator?.breed(Math.min(100, count - done), this.boundOf(level));
      yield { kind: 'progress', conflicts: this.search.conflicts };
    }
    return this.adoptSchedule();
  }

  /** Search for anything better than the incumbent. At the last level what is not better is cut off for good. */
  private *better(objective: Term, level: number, conflicts: number): Generator<SolveEvent, Outcome> {
    const target = this.value(level) - 1;
    if (this.assumptions.length === 0 && level === this.objectives.length - 1) {
      this.proof?.cut(level, target);
      if (!this.search.fix(...this.atMost(objective, target))) {
        this.bounds[level] = target + 1;
        return 'refuted';
      }
    }
    return yield* this.attempt(objective, level, target, conflicts);
  }

  /** Search for level ≤ target. Keeps what it finds; with nothing there, raises the bound. */
  private *attempt(objective: Term, level: number, target: number, conflicts: number): Generator<SolveEvent, Outcome> {
    const { search } = this;
    search.setAssumptions([...this.frozen, this.atMost(objective, target)]);
    const outcome = yield* this.searchFor(conflicts);
    if (outcome === 'solution') yield* this.takeSolution(objective, level);
    else if (outcome !== 'limit') {
      this.bounds[level] = Math.max(this.bounds[level] as number, target + 1);
      yield { kind: 'bound', level, bound: this.boundOf(level), conflicts: search.conflicts };
    }
    return outcome;
  }

  private *takeSolution(objective: Term, level: number): Generator<SolveEvent, void> {
    this.keepSolution();
    this.shiftLeft(objective, level);
    yield this.incumbent();
  }

  private atMost(objective: Term, value: number): Atom {
    return [2 * objective.variable + 1, objective.offset - value];
  }

  /** Refute values from below, in steps that double while it is easy, for about as many conflicts as are allowed. */
  private *raiseBound(objective: Term, level: number, turn: number, allowed: number): Generator<SolveEvent, Outcome> {
    let step = 1;
    const stopAt = this.search.conflicts + allowed;
    const attempt = PROBE_CONFLICTS * (1 + Math.max(0, (turn - LONG_TURNS) >> 2));
    while (this.search.conflicts < stopAt) {
      const low = this.boundOf(level);
      const high = this.value(level);
      if (high - low <= 1 || this.isOver()) return 'limit';
      const target = Math.min(high - 2, low + step - 1);
      this.at.kernel.refutesFromBelow = true;
      const outcome = yield* this.attempt(objective, level, target, attempt);
      this.at.kernel.refutesFromBelow = false;
      if (outcome === 'limit') {
        if (step === 1) return 'limit';
        step = Math.max(1, step >> 2);
      } else if (outcome === 'solution') return outcome;
      else step *= 2;
    }
    return 'limit';
  }

  /** Search for a better plan with most choices kept. The outcome `assumption` says no more than that this part holds none. */
  private *visitNeighbourhood(objective: Term, level: number): Generator<SolveEvent, Outcome> {
    const { search, brancher, neighbourhoods } = this;
    const kept = this.wishedAtoms(neighbourhoods.draw(brancher.wish));
    search.setAssumptions([...this.frozen, this.atMost(objective, this.value(level) - 1)], kept);
    const outcome = yield* this.searchFor(NEIGHBOURHOOD_CONFLICTS);
    if (outcome === 'solution') yield* this.takeSolution(objective, level);
    neighbourhoods.report(outcome === 'solution', outcome === 'assumption');
    return outcome;
  }

  private *trySuggestion(objective: Term, level: number): Generator<SolveEvent, Outcome> {
    const kept = this.suggested.map(([v, value]): Atom => (value > 0 ? [2 * v, 1] : [2 * v + 1, 0]));
    this.suggested = [];
    this.search.setAssumptions([...this.frozen, this.atMost(objective, this.value(level) - 1)], kept);
    const outcome = yield* this.searchFor(NEIGHBOURHOOD_CONFLICTS);
    if (outcome === 'solution') yield* this.takeSolution(objective, level);
    return outcome;
  }

  private wishedAtoms(variables: readonly number[]): Atom[] {
    const { wish } = this.brancher;
    return variables
      .filter((v) => !Number.isNaN(wish[v] as number))
      .map((v) => ((wish[v] as number) > 0 ? [2 * v, 1] : [2 * v + 1, 0]));
  }

  /** Keep the choices of the best plan and improve its times, as long as that costs but a few conflicts. */
  private shiftLeft(objective: Term, level: number): void {
    if (this.settings.withoutShiftingLeft) return;
    const { search, brancher, dive } = this;
    const { byActivity } = brancher;
    const outer = search.brancher;
    search.brancher = dive;
    brancher.byActivity = false;
    dive.minimum = objective.variable;
    for (;;) {
      const value = this.value(level);
      if (value <= this.lower(objective)) break;
      search.setAssumptions([...this.frozen, this.atMost(objective, value - 1)], this.wishedAtoms(this.booleans));
      const stopAt = search.conflicts + SHIFT_CONFLICTS;
      let outcome: Outcome = 'limit';
      for (let tries = 0; outcome === 'limit' && search.conflicts < stopAt && tries < SHIFT_RUNS; tries++) {
        outcome = search.run(stopAt - search.conflicts);
      }
      if (outcome !== 'solution') break;
      this.keepSolution();
    }
    dive.minimum = -1;
    search.brancher = outer;
    brancher.byActivity = byActivity;
  }

  private *searchFor(conflicts: number): Generator<SolveEvent, Outcome> {
    const { search, options } = this;
    const budget = Math.min(options.conflictBudget ?? Number.POSITIVE_INFINITY, search.conflicts + conflicts);
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
      const own = [
        interval.start,
        interval.end,
        typeof interval.duration === 'number' ? -1 : interval.duration.variable,
      ];
      for (const v of own) {
        if (v >= 0 && store.owner[at.term(v).variable] === presence)
          values[v] = (model.variables[v] as { min: number }).min;
      }
    });
    this.best = values;
    this.proof?.solution(values);
    for (let v = 0; v < store.variableCount; v++) {
      const owner = store.owner[v] as number;
      if (store.isFixed(v) && (owner < 0 || store.holds(owner))) this.brancher.wish[v] = store.min(v);
    }
  }

  private incumbent(): SolveEvent {
    return {
      kind: 'incumbent',
      solution: this.best as Solution,
      levels: this.levels(),
      conflicts: this.search.conflicts,
    };
  }

  private levels(): LevelResult[] {
    return this.model.objectives.map((objective, level) => ({
      objective: objective.name,
      value: this.best === null ? null : valueOf(objective, this.best),
      bound: this.boundOf(level),
      proved: this.proved[level] as boolean,
    }));
  }

  private endProof(): void {
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
