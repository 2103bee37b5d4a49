import { z } from 'zod';
import { id, pet, seconds } from '../answer/answer-parts.ts';
import { defineAnswer } from '../answer/define-answer.ts';

const planned = z
  .strictObject({ stint: id, startS: pet, endS: pet, assigned: z.array(id), stepEndsS: z.array(pet) })
  .nullable();

export const compare = defineAnswer(
  'compare',
  'What changed between two campaigns, in the text and in the plan, or between two timelines.',
  {
    from: z.string().describe('file'),
    to: z.string().describe('file'),
    isSame: z.boolean(),
    campaign: z
      .array(
        z.strictObject({
          sort: z.string().describe('person, task, stint, limit, …'),
          id: z.string(),
          kind: z.enum(['added', 'removed', 'changed']),
          fields: z.array(z.strictObject({ field: z.string(), from: z.string(), to: z.string() })),
        }),
      )
      .describe('what changed in the text; empty where timelines are compared'),
    tasksIn: z.array(id),
    tasksOut: z.array(id),
    evas: z.array(
      z.strictObject({
        eva: id,
        bothInLaterS: seconds.nullable().describe('null: the EVA is in only one of the two'),
        stints: z.array(
          z.strictObject({
            stint: id,
            kind: z.enum(['moved', 'added', 'removed']),
            laterS: seconds,
            longerS: seconds,
            from: planned,
            to: planned,
            people: z.array(z.strictObject({ role: z.int().min(0), from: id, to: id })),
          }),
        ),
      }),
    ),
  },
);
