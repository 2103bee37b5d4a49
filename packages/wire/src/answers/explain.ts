import { z } from 'zod';
import { id } from '../answer/answer-parts.ts';
import { defineAnswer } from '../answer/define-answer.ts';

const example = z.strictObject({ campaign: z.string(), timeline: z.string() });

export const explain = defineAnswer('explain', 'What the ids in messages mean: one entry, or all of them.', {
  entries: z.array(
    z.strictObject({
      id,
      of: z.enum(['rule', 'replay', 'proof', 'plan', 'text', 'fault']),
      severity: z.string(),
      title: z.string(),
      why: z.string(),
      source: z.string().nullable(),
      examples: z
        .strictObject({ violates: example, satisfies: example })
        .nullable()
        .describe('null: there are none, or all entries were asked for'),
    }),
  ),
});
