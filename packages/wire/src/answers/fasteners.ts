import { z } from 'zod';
import { id } from '../answer/answer-parts.ts';
import { defineAnswer } from '../answer/define-answer.ts';

const turnsWindow = z.strictObject({ low: z.number(), likely: z.number(), high: z.number() });
const torqueWindow = z.strictObject({ low: z.number(), high: z.number() });

export const fasteners = defineAnswer(
  'fasteners',
  'Turns, torque window, drive time and tool of every fastener that is driven in; a logged reading judged.',
  {
    campaign: id,
    drives: z.array(
      z.strictObject({
        fastener: id,
        stint: id,
        step: z.int().min(0).describe('counted from 0'),
        tool: id.nullable().describe('null: the sentence leaves it open'),
        turns: z.number().nullable(),
        torqueNm: z.number().nullable(),
        window: z.strictObject({ turns: turnsWindow, torqueNm: torqueWindow }).nullable(),
        basis: z.enum(['joint', 'drawing']).nullable(),
        missing: z.array(z.string()).describe('what is not stated and wanted for a window'),
        refused: z.string().nullable().describe('why the figures cannot be right'),
        driveS: z.number().nullable(),
        fit: z.enum(['yes', 'no', 'unknown']).describe('whether the tool has a setting within the window'),
        fitWords: z.string(),
      }),
    ),
    reading: z
      .strictObject({
        fastener: id,
        verdict: z.enum([
          'seated',
          'short',
          'over-run',
          'torque-reached-early',
          'torque-not-reached',
          'over-torqued',
          'torque-unknown',
        ]),
        why: z.string(),
        tryNext: z.array(z.strictObject({ say: z.string(), asks: z.boolean().describe('ask first') })),
      })
      .nullable()
      .describe('the reading that was asked about; null: none'),
  },
);
