import { z } from 'zod';
import { id } from '../answer/answer-parts.ts';
import { defineAnswer } from '../answer/define-answer.ts';

export const verifyProof = defineAnswer('verify-proof', 'What the second program says of the proofs of a plan.', {
  file: z.string(),
  evas: z.array(
    z.strictObject({
      eva: id,
      lines: z.int().min(0),
      isAccepted: z.boolean(),
      claim: z.string().nullable().describe('what the proof shows, such as "optimal"; null: nothing'),
      levels: z.array(
        z.strictObject({
          name: id,
          provedValue: z.number().nullable().describe('in units of the solver, 10 s for times; null: not proved'),
        }),
      ),
      refusal: z.strictObject({ line: z.int().min(0), reason: z.string() }).nullable(),
    }),
  ),
});
