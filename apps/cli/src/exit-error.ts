import type { Problem } from '@handrail/eva/campaign/problem/problem';
import type { ExitCode } from './exit-code.ts';

/** Ends the command with a code and, unless it is empty, one sentence on stderr; never a stack trace. */
export class ExitError extends Error {
  readonly code: ExitCode;
  /** Mistakes of the campaign text that are the reason; they have been printed. */
  readonly problems: readonly Problem[];
  constructor(code: ExitCode, message = '', problems: readonly Problem[] = []) {
    super(message);
    this.name = 'ExitError';
    this.code = code;
    this.problems = problems;
  }
}
