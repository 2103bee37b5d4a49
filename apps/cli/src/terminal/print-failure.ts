/** With `--json` a command that ends without an answer still prints JSON: what `docs/schemas/failure.schema.json` says. */
import type { Problem } from '@handrail/eva/campaign/problem/problem';
import { ANSWER_FORMAT, ANSWER_VERSION } from '@handrail/wire/answer/define-answer';
import type { Failure } from '@handrail/wire/answer/failure';
import type { ExitCode } from '../exit-code.ts';
import { printJson } from './output.ts';

export function printFailure(
  command: string,
  exitCode: ExitCode,
  { code, message, problems }: { code: string | null; message: string; problems: readonly Problem[] },
): void {
  const failure: Failure = {
    format: ANSWER_FORMAT,
    version: ANSWER_VERSION,
    command,
    exitCode,
    failure: { code, message, problems },
  };
  printJson(failure);
}
