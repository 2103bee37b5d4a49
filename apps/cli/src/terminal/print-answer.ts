/** Prints the answer of a command as `--json` promises it: the envelope, then what the command supplies, checked when compiled. */
import { ANSWER_FORMAT, ANSWER_VERSION, type AnswerBody } from '@handrail/wire/answer/define-answer';
import type { ExitCode } from '../exit-code.ts';
import { printJson } from './output.ts';

type Definition = Parameters<typeof import('@handrail/wire/answer/define-answer').answerJsonSchema>[0];

export function printAnswer<D extends Definition>(definition: D, exitCode: ExitCode, body: AnswerBody<D>): void {
  printJson({ format: ANSWER_FORMAT, version: ANSWER_VERSION, command: definition.command, exitCode, ...body });
}
