/** What `--json` prints instead of an answer when there is none: the exit code, one sentence, and the mistakes in the text. */
import { z } from 'zod';
import { problem } from './answer-parts.ts';
import { ANSWER_FORMAT, ANSWER_VERSION, type AnswerOf, exitCode } from './define-answer.ts';

export const failure = {
  command: '…, when it fails',
  about: 'What any command prints with --json instead of its answer when it ends without one.',
  schema: z.strictObject({
    format: z.literal(ANSWER_FORMAT),
    version: z.literal(ANSWER_VERSION),
    command: z.string(),
    exitCode,
    failure: z.strictObject({
      code: z.string().nullable().describe('of the fault, such as wire/not-json; null: none'),
      message: z.string(),
      problems: z.array(problem).describe('all mistakes of the campaign text, with file, line and column'),
    }),
  }),
};

export type Failure = AnswerOf<typeof failure>;
