import type { ExitCode } from './exit-code.ts';

/** Ends the command with a code and, unless it is empty, one sentence on stderr; never a stack trace. */
export class ExitError extends Error {
  readonly code: ExitCode;
  constructor(code: ExitCode, message = '') {
    super(message);
    this.name = 'ExitError';
    this.code = code;
  }
}
