/** The model of one EVA while it is written: intervals of tasks, stints and roles, and the points of their steps. */
import { ModelBuilder, endOf, startOf } from '@handrail/solver/model/build-model';
import type { Constraint, IntervalId, Literal, Point, Precedence, VariableId } from '@handrail/solver/model/model';
import type { Role, Stint, Task } from '../campaign/campaign.ts';
import type { EvaProblem } from './eva-problem.ts';
import { modeDuration, roleRange, stepCount, type TeamMode } from './team-mode.ts';

export interface StintDraft {
  readonly stint: Stint;
  readonly task: Task;
  readonly presence: Literal;
  readonly master: IntervalId;
  readonly modes: readonly ModeDraft[];
  /** All modes have the same step boundaries: the master can stand for each of them. */
  readonly uniform: boolean;
}
export interface ModeDraft {
  readonly mode: TeamMode;
  readonly interval: IntervalId;
}
/** An interval that stands for the stint, with its step boundaries: the master, or each mode where they differ. */
export interface StintForm {
  readonly interval: IntervalId;
  readonly boundaries: readonly number[];
  /** Modes that it covers. */
  readonly modes: readonly TeamMode[];
}

export interface LaneMember {
  readonly interval: IntervalId;
  readonly draft: StintDraft | null;
  readonly mode: TeamMode | null;
  readonly role: number | null;
}

export class EvaDraft {
  readonly problem: EvaProblem;
  readonly builder: ModelBuilder;
  readonly tasks = new Map<string, Literal>();
  readonly stints = new Map<string, StintDraft>();
  /** Lanes by person or arm id, with what the sequence constraint holds, for reading the answer back. */
  readonly lanes = new Map<string, LaneMember[]>();
  readonly passages = new Map<string, { readonly egress: IntervalId | null; readonly ingress: IntervalId | null }>();
  /** Ends of moves under way, by the instant that stands for them: place or pose. */
  readonly arrivals = new Map<IntervalId, string>();
  closeHatch: IntervalId | null = null;
  /** End of closing the hatch. */
  bothIn: VariableId = 0;
  readonly travelTotals: VariableId[] = [];
  /** Run of each clock that has a most-limit: end − start must not exceed the limit, by way of these points. */
  readonly clockRuns: {
    readonly clock: string;
    readonly start: Point;
    readonly stop: Point;
    readonly when: readonly Literal[];
  }[] = [];
  readonly requestCovers: {
    readonly request: string;
    readonly cover: IntervalId;
    readonly inForce: readonly Literal[];
  }[] = [];
  /** Instants that need the value of a variable to be, or not to be, among some; see post/clock-changes.ts. */
  readonly conditions = new Map<
    string,
    readonly { readonly instant: IntervalId; readonly among: boolean; readonly values: readonly string[] }[]
  >();
  /** Orders that hold whenever both intervals are present. */
  readonly orders: Precedence[] = [];
  private readonly ranges = new Map<string, IntervalId>();

  constructor(problem: EvaProblem) {
    this.problem = problem;
    this.builder = new ModelBuilder(problem.eva.id, problem.horizon);
  }

  post(constraint: Constraint): void {
    if (constraint.kind === 'precedence' && constraint.when.length === 0) this.orders.push(constraint);
    this.builder.post(constraint);
  }

  forms(draft: StintDraft): readonly StintForm[] {
    if (draft.uniform) {
      const boundaries = (draft.modes[0] as ModeDraft).mode.boundaries;
      return [{ interval: draft.master, boundaries, modes: draft.modes.map(({ mode }) => mode) }];
    }
    return this.modeForms(draft);
  }

  modeForms(draft: StintDraft): readonly StintForm[] {
    return draft.modes.map(({ mode, interval }) => ({ interval, boundaries: mode.boundaries, modes: [mode] }));
  }

  /** The instant of a step boundary. */
  boundary(form: StintForm, step: number): Point {
    const last = form.boundaries.length - 1;
    if (step >= last) return endOf(form.interval);
    return startOf(form.interval, form.boundaries[Math.max(0, step)]);
  }

  /** An interval over the steps [from, to) of a form: the form's own where it is the whole. */
  range(form: StintForm, from: number, to: number): IntervalId {
    const last = form.boundaries.length - 1;
    if (from <= 0 && to >= last) return form.interval;
    const key = `${form.interval}:${from}:${to}`;
    let id = this.ranges.get(key);
    if (id === undefined) {
      const a = form.boundaries[Math.max(0, from)] as number;
      const b = form.boundaries[Math.min(last, to)] as number;
      const owner = this.builder.intervalAt(form.interval);
      id = this.builder.interval(`${owner.name} steps ${from}-${to}`, b - a, { presence: owner.presence });
      this.fix(form.interval, id, a);
      this.ranges.set(key, id);
    }
    return id;
  }

  roleInterval(draft: StintDraft, mode: ModeDraft, role: number): IntervalId {
    const [from, to] = roleRange(draft.stint, draft.stint.roles[role] as Role);
    return this.range({ interval: mode.interval, boundaries: mode.mode.boundaries, modes: [mode.mode] }, from, to);
  }

  /** `inner` starts exactly `offset` after `outer`. */
  fix(outer: IntervalId, inner: IntervalId, offset: number): void {
    this.before(startOf(outer), startOf(inner), offset, null);
    this.before(startOf(inner), startOf(outer), -offset, null);
  }

  /** `to ≥ from + lag`. */
  before(from: Point, to: Point, lag: number, tag: string | null, when: readonly Literal[] = []): void {
    this.post({ kind: 'precedence', from, to, lag, when, tag });
  }

  addTask(task: Task, modesOf: ReadonlyMap<string, readonly TeamMode[]>): void {
    const presence = this.builder.boolean(`task ${task.id}`);
    this.tasks.set(task.id, presence);
    for (const stint of task.stints) this.addStint(task, stint, presence, modesOf.get(stint.key) ?? []);
  }

  private addStint(task: Task, stint: Stint, presence: Literal, modes: readonly TeamMode[]): void {
    const lengths = modes.map(modeDuration);
    const shortest = Math.min(...lengths);
    const longest = Math.max(...lengths);
    const duration = shortest === longest ? shortest : { min: shortest, max: longest };
    const master = this.builder.interval(stint.key, duration, { presence });
    let drafts: ModeDraft[];
    if (modes.length === 1) drafts = [{ mode: modes[0] as TeamMode, interval: master }];
    else {
      drafts = modes.map((mode) => {
        const name = `${stint.key} by ${mode.assigned.join('+')}`;
        const chosen = this.builder.boolean(name);
        return { mode, interval: this.builder.interval(name, modeDuration(mode), { presence: chosen }) };
      });
      this.builder.post({
        kind: 'alternative',
        master,
        options: drafts.map(({ interval }) => interval),
        tag: null,
      });
    }
    const uniform = modes.every((mode) => sameNumbers(mode.boundaries, (modes[0] as TeamMode).boundaries));
    this.stints.set(stint.key, { stint, task, presence, master, modes: drafts, uniform });
  }
}

/** Written boundary of a leave: −1 at the start, k at the end of step k, steps.length at the end. */
export function leaveBoundary(stint: Stint, step: number): number {
  return Math.max(0, Math.min(step + 1, stepCount(stint)));
}

function sameNumbers(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((value, index) => value === b[index]);
}
