/**
 * One thing that is wrong with a campaign text. Problems are data, collected and never thrown: a reader gets all of them
 * in one run, sorted by place.
 */
import type { Span } from '../span.ts';
import type { ProblemCode } from './problem-codes.ts';

export interface Problem {
  /** Stable: `campaign/<what>`. */
  readonly code: string;
  /** error: no campaign comes out. warning: it does, and someone should look. */
  readonly severity: 'error' | 'warning';
  readonly span: Span;
  /** One sentence: what is wrong. */
  readonly what: string;
  /** What would be right; null where the sentence already says it. */
  readonly expected: string | null;
  /** The nearest valid name; null where none is near. */
  readonly nearest: string | null;
}

/** Collects problems; at most `most` of them, so that a broken file does not bury its reader. */
export class ProblemList {
  readonly #problems: Problem[] = [];
  readonly #most: number;
  #errors = 0;

  constructor(most = 500) {
    this.#most = most;
  }

  add(code: ProblemCode, span: Span, what: string, more: { expected?: string; nearest?: string | null } = {}): void {
    this.#push({
      code: `campaign/${code}`,
      severity: 'error',
      span,
      what,
      expected: more.expected ?? null,
      nearest: more.nearest ?? null,
    });
  }

  warn(code: ProblemCode, span: Span, what: string, more: { expected?: string; nearest?: string | null } = {}): void {
    this.#push({
      code: `campaign/${code}`,
      severity: 'warning',
      span,
      what,
      expected: more.expected ?? null,
      nearest: more.nearest ?? null,
    });
  }

  get hasErrors(): boolean {
    return this.#errors > 0;
  }

  get errorCount(): number {
    return this.#errors;
  }

  /** No further problem is listed: what only serves to word one can be left out. */
  get isFull(): boolean {
    return this.#problems.length > this.#most;
  }

  /** Sorted by file (in the order given), line, column, code; the same problem at the same place once. */
  sorted(files: readonly string[]): readonly Problem[] {
    const fileAt = new Map(files.map((name, index) => [name, index]));
    const order = (problem: Problem): number => fileAt.get(problem.span.file) ?? files.length;
    const sorted = this.#problems.toSorted(
      (a, b) =>
        order(a) - order(b) ||
        a.span.line - b.span.line ||
        a.span.column - b.span.column ||
        (a.code < b.code ? -1 : a.code > b.code ? 1 : 0),
    );
    return sorted.filter((problem, index) => {
      const before = sorted[index - 1];
      return (
        before === undefined ||
        before.code !== problem.code ||
        before.what !== problem.what ||
        before.span.file !== problem.span.file ||
        before.span.line !== problem.span.line ||
        before.span.column !== problem.span.column
      );
    });
  }

  #push(problem: Problem): void {
    if (problem.severity === 'error') this.#errors++;
    if (this.#problems.length < this.#most) this.#problems.push(problem);
    else if (this.#problems.length === this.#most) {
      this.#problems.push({
        code: 'campaign/too-many-problems',
        severity: problem.severity,
        span: problem.span,
        what: `more than ${this.#most} problems; the rest is not listed`,
        expected: null,
        nearest: null,
      });
    }
  }
}
