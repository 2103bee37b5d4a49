/** One way in which a claimed answer is wrong. Data; the words are for a reader, `kind` and `constraint` for a program. */
export interface Violation {
  /** Which part of the model is broken: a constraint kind, or `variable`, `interval`, `objective`, `shape`. */
  readonly kind: string;
  /** Index into `Model.constraints`, or null when no single constraint is at fault. */
  readonly constraint: number | null;
  /** Tag of the constraint, when it has one. */
  readonly tag: string | null;
  readonly message: string;
}
