import { z } from 'zod';
import { id } from '../answer/answer-parts.ts';
import { defineAnswer } from '../answer/define-answer.ts';

const stillNeededS = z.number().nullable().describe('oxygen at rest that is still needed, s; 0: none; null: never');

export const prebreathe = defineAnswer(
  'prebreathe',
  'Pre-breathe protocols as stated: ratio against the limit, time still needed, sensitivity. Not medical advice.',
  {
    campaign: id,
    protocols: z.array(
      z.strictObject({
        id,
        title: z.string(),
        evas: z.array(id),
        suitPressurePa: z.number(),
        stages: z.array(
          z.strictObject({
            title: z.string(),
            role: z.enum(['oxygen', 'break', 'hold']),
            startPressurePa: z.number(),
            endPressurePa: z.number(),
            oxygenFraction: z.number(),
            durationS: z.number(),
            exerciseVo2: z.number().nullable().describe('mL/kg/min; null: at rest'),
            endS: z.number(),
            tissuePa: z.array(z.number()),
            ratio: z.number(),
          }),
        ),
        ratio: z.number(),
        limit: z.number(),
        holds: z.boolean(),
        stillNeededS,
        oxygenBlocks: z
          .array(
            z.strictObject({
              firstStage: z.int(),
              lastStage: z.int(),
              servedS: z.number(),
              owedS: z.number(),
              countsS: z.number(),
              restarts: z.int(),
            }),
          )
          .nullable()
          .describe('oxygen that counts after the break rule; null: no rule is stated'),
        sensitivity: z.array(
          z.strictObject({
            figure: z.enum(['half-time', 'start-nitrogen', 'limit']),
            end: z.enum(['low', 'high']),
            ratio: z.number(),
            margin: z.number(),
            stillNeededS,
          }),
        ),
        notes: z.array(z.string()).describe('must stand beside the figures'),
      }),
    ),
    evasWithout: z.array(id).describe('EVAs that state no pre-breathe'),
  },
);
