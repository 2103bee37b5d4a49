/**
 * The program or its caller is wrong (a *finding* is about a plan; a *fault* is not). One class, with a code, the values
 * that made it, advice, and the cause.
 */
export class Fault extends Error {
  readonly code: string;
  readonly values: Readonly<Record<string, unknown>>;
  readonly advice: string | null;

  constructor(
    code: string,
    message: string,
    options: { values?: Readonly<Record<string, unknown>>; advice?: string; cause?: unknown } = {},
  ) {
    super(message, options.cause === undefined ? undefined : { cause: options.cause });
    this.name = 'Fault';
    this.code = code;
    this.values = options.values ?? {};
    this.advice = options.advice ?? null;
  }
}
