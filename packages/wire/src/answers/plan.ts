import { z } from 'zod';
import { finding, id, instant, pet, seconds, span } from '../answer/answer-parts.ts';
import { defineAnswer } from '../answer/define-answer.ts';
import { timelineSchema } from '../timeline/timeline-schema.ts';

const pin = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('person'), stint: id, role: z.enum(['lead', 'partner']), person: id, span }),
  z.strictObject({ kind: z.literal('start'), stint: id, petS: pet, span }),
  z.strictObject({ kind: z.literal('order'), first: id, second: id, span }),
  z.strictObject({ kind: z.literal('eva'), task: id, eva: id, span }),
  z.strictObject({ kind: z.literal('out'), task: id, span }),
]);

export const plan = defineAnswer('plan', 'The best timeline found, what is claimed of it, what is left out and why.', {
  level: z
    .strictObject({
      level: z.int().min(0).max(5),
      title: z.string(),
      covers: z.string(),
      missing: z.array(z.string()).describe('what the next level asks for'),
    })
    .describe('how deep the input goes; nothing above it is claimed'),
  isStopped: z.boolean().describe('the search was stopped by Ctrl-C or by --time; this is the best until then'),
  evas: z
    .array(
      z.strictObject({
        eva: id,
        petZeroUtc: instant.shape.utc,
        bothIn: instant,
        wall: z
          .strictObject({ ...instant.shape, cause: z.string(), marginS: seconds })
          .nullable()
          .describe('by when both must be in; null: not stated, so nothing is claimed about being in time'),
        status: z.enum(['optimal for these durations', 'best found', 'written by hand']),
      }),
    )
    .describe('the timeline in figures; EVAs without a plan are not in it'),
  timeline: timelineSchema.describe('as docs/schemas/timeline.schema.json; what -o writes'),
  findings: z.array(finding),
  pins: z
    .array(
      z.strictObject({
        pin,
        gains: z.array(id).describe('tasks that would be in without the pin'),
        losses: z.array(id).describe('tasks that would be out without it'),
        laterS: z.record(z.string(), seconds).describe('by EVA: how much later both are in because of the pin'),
        proved: z.boolean(),
      }),
    )
    .describe('only with --price-pins'),
});
