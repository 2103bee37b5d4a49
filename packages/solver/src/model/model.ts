/**
 * The model: a scheduling problem as plain data. Nothing here computes; the engine solves it, `solver-checker` checks
 * answers against it, and both read this file alone. It can be cloned, sent to a worker and written as JSON.
 *
 * All times and numbers are integers. Variables are indices into `variables`; a boolean is a variable with bounds 0..1.
 * An interval is present or absent; constraints on an absent interval hold trivially, and its start and end then mean
 * nothing. All intervals are half-open: [start, end).
 */

/** Index into `Model.variables`. */
export type VariableId = number;
/** Index into `Model.intervals`. */
export type IntervalId = number;

export interface Variable {
  readonly name: string;
  readonly min: number;
  readonly max: number;
}

/** A boolean variable or its negation. `holds` 1: true when the variable is 1; 0: true when it is 0. */
export interface Literal {
  readonly variable: VariableId;
  readonly holds: 0 | 1;
}

/** start + duration = end whenever present. `duration` is a constant or a variable. `presence` null: always present. */
export interface Interval {
  readonly name: string;
  readonly start: VariableId;
  readonly end: VariableId;
  readonly duration: number | VariableDuration;
  readonly presence: Literal | null;
}
export interface VariableDuration {
  readonly variable: VariableId;
}

/** An instant of an interval, moved by a constant: `start + offset` or `end + offset`. */
export interface Point {
  readonly interval: IntervalId;
  readonly of: 'start' | 'end';
  readonly offset: number;
}

export interface LinearTerm {
  readonly coefficient: number;
  readonly variable: VariableId;
}
/** Σ coefficient·variable + constant. */
export interface LinearExpression {
  readonly terms: readonly LinearTerm[];
  readonly constant: number;
}

interface Tagged {
  /** Which requirement of the caller this constraint came from. Explanations are sets of tags. null: structural. */
  readonly tag: string | null;
}

/** `to ≥ from + lag` when all of `when` hold and both intervals are present. A maximum lag is one with from and to swapped and a negative lag. */
export interface Precedence extends Tagged {
  readonly kind: 'precedence';
  readonly from: Point;
  readonly to: Point;
  readonly lag: number;
  readonly when: readonly Literal[];
}

/** `master` is present iff exactly one of `options` is; the present option has the master's start, end and duration. */
export interface Alternative extends Tagged {
  readonly kind: 'alternative';
  readonly master: IntervalId;
  readonly options: readonly IntervalId[];
}

/** `cover` starts with the earliest present member and ends with the latest; absent iff all members are absent. */
export interface Span extends Tagged {
  readonly kind: 'span';
  readonly cover: IntervalId;
  readonly members: readonly IntervalId[];
}

/** A value in a transition table that says: never directly one after the other. */
export const FORBIDDEN = 1 << 28;

/**
 * The present members do not overlap; where b directly follows a, `b.start ≥ a.end + transitions[a.endType][b.startType]`.
 * The table is row-major `types × types`, entries ≥ 0 or FORBIDDEN; it need not satisfy the triangle inequality, and only
 * *direct* successors are bound by it. `first`/`last`: these members, where present, come before/after all others.
 * A member without length lies between two others, never inside one; members without length on one instant may be taken in
 * any order that satisfies the constraint.
 */
export interface Sequence extends Tagged {
  readonly kind: 'sequence';
  readonly members: readonly SequenceMember[];
  readonly types: number;
  readonly transitions: readonly number[];
  readonly first: IntervalId | null;
  readonly last: IntervalId | null;
  /** A variable that equals the sum of the transition times between direct successors, or null. */
  readonly transitionTotal: VariableId | null;
}
export interface SequenceMember {
  readonly interval: IntervalId;
  readonly startType: number;
  readonly endType: number;
}

/** At every instant the demands of the present members that run do not exceed `capacity`. */
export interface Cumulative extends Tagged {
  readonly kind: 'cumulative';
  readonly capacity: number;
  readonly members: readonly { readonly interval: IntervalId; readonly demand: number }[];
}

/**
 * A stock: each event changes the level at its instant; the level stays within [min, max] at all times, `initial` included.
 * Events on one instant count together. An event of an absent interval does not happen.
 */
export interface Reservoir extends Tagged {
  readonly kind: 'reservoir';
  readonly initial: number;
  readonly min: number;
  readonly max: number;
  readonly events: readonly { readonly at: Point; readonly change: number }[];
}

/**
 * Windows: the stretch [from, to] of a present interval lies within one of `windows` (`inside`), or meets none of them
 * (`outside`). Windows are disjoint, sorted, half-open [a, b). With from = to the instant itself must be inside.
 * So `inside` is: some window has a ≤ from < b and to ≤ b; `outside` is: each window has from ≥ b, or from < a and to ≤ a.
 */
export interface Windows extends Tagged {
  readonly kind: 'windows';
  readonly mode: 'inside' | 'outside';
  readonly from: Point;
  readonly to: Point;
  readonly windows: readonly (readonly [number, number])[];
  readonly when: readonly Literal[];
}

/**
 * A variable with a finite domain that jumps. Values are 0..values-1. Before any write it has `initial`.
 * A writer holds it exclusively over [from, to]: no other writer's hold and no foreign need may overlap it; from `to` on
 * the value is `value`. A need holds it shared over [from, to]: the value just before `from` lies in `allowed`, and no
 * foreign write happens within. An interval that both needs and writes has its own need checked just before its own first write:
 * at the earlier of the need's `from` and that write's `from`, up to the need's `to`; its own writes neither serve nor break it.
 * Touching (one ends where the other starts) is allowed: ends apply before starts. Holds without length that fall on one
 * instant may be taken in any order that satisfies the constraint.
 */
export interface State extends Tagged {
  readonly kind: 'state';
  readonly name: string;
  readonly values: number;
  readonly initial: number;
  readonly writers: readonly StateWriter[];
  readonly needs: readonly StateNeed[];
}
export interface StateWriter {
  readonly from: Point;
  readonly to: Point;
  readonly value: number;
  readonly tag: string | null;
}
export interface StateNeed {
  readonly from: Point;
  readonly to: Point;
  readonly allowed: readonly number[];
  readonly tag: string | null;
}

/** At least one literal holds. */
export interface Clause extends Tagged {
  readonly kind: 'clause';
  readonly literals: readonly Literal[];
}

/** `expression ≤ bound` when all of `when` hold. */
export interface Linear extends Tagged {
  readonly kind: 'linear';
  readonly expression: LinearExpression;
  readonly bound: number;
  readonly when: readonly Literal[];
}

/** `result = max` (or `min`) of the points of the present intervals (at least one must be present, else result = `otherwise`). */
export interface Extreme extends Tagged {
  readonly kind: 'extreme';
  readonly which: 'max' | 'min';
  readonly result: VariableId;
  readonly points: readonly Point[];
  readonly otherwise: number;
}

export type Constraint =
  | Precedence
  | Alternative
  | Span
  | Sequence
  | Cumulative
  | Reservoir
  | Windows
  | State
  | Clause
  | Linear
  | Extreme;

/** One lexicographic level, minimised. Level k+1 counts only among the solutions best at levels 0..k. */
export interface Objective {
  readonly name: string;
  readonly minimise: LinearExpression;
}

export interface Model {
  readonly name: string;
  /** No present interval starts before 0 or ends after this. */
  readonly horizon: number;
  readonly variables: readonly Variable[];
  readonly intervals: readonly Interval[];
  readonly constraints: readonly Constraint[];
  readonly objectives: readonly Objective[];
}

/** A value for every variable; index = VariableId. */
export type Solution = readonly number[];
