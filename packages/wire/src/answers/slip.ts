import { z } from 'zod';
import { finding, id, pet, seconds, utc } from '../answer/answer-parts.ts';
import { defineAnswer } from '../answer/define-answer.ts';

export const slip = defineAnswer(
  'slip',
  'What a late egress breaks, which waits mend it, and the last acceptable one.',
  {
    campaign: id,
    documentHash: z.string(),
    evas: z.array(
      z.strictObject({
        eva: id,
        petZero: utc,
        statedSlipS: seconds,
        cleanUntilS: seconds.nullable().describe('nothing breaks up to this step; null: something breaks on time'),
        lastAcceptableS: seconds.nullable().describe('every step up to this one is acceptable; null: none is'),
        rows: z.array(
          z.strictObject({
            lateS: seconds,
            breaks: z.array(finding).describe('what is found then and not on time, with the PET times kept'),
            waits: z.array(
              z.strictObject({
                stint: id,
                window: id,
                waitS: seconds.describe('everything from this stint on waits so long'),
                startS: pet,
                interval: z.strictObject({ fromS: z.number(), toS: z.number() }).describe('PET, pad counted'),
              }),
            ),
            left: z.array(finding).describe('errors that stay with the waits taken'),
            bothInS: pet,
            beforeTheWallS: seconds.nullable().describe('negative: past it; null: no wall is stated'),
            cut: z.array(z.strictObject({ task: id, why: z.string() })),
            acceptable: z.boolean(),
          }),
        ),
      }),
    ),
  },
);
