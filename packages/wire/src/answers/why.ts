import { z } from 'zod';
import { id, instant, seconds } from '../answer/answer-parts.ts';
import { defineAnswer } from '../answer/define-answer.ts';

export const why = defineAnswer(
  'why',
  'What a stint waits for, back to the start of its EVA; the stint itself first.',
  {
    campaign: id,
    eva: id,
    stint: id,
    chain: z.array(
      z.strictObject({
        stint: id,
        start: instant,
        kind: z
          .enum(['tight', 'late on purpose', 'free'])
          .describe(
            'tight: it cannot start sooner; late on purpose: something else would break; free: nothing holds it',
          ),
        slackS: seconds,
        words: z.string(),
        waitsFor: id.nullable(),
      }),
    ),
  },
);
