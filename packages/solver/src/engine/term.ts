/** A number that is a variable plus a constant: a model's start, end or duration as the engine holds it. */
export interface Term {
  readonly variable: number;
  readonly offset: number;
}
