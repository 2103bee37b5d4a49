import { z } from 'zod';
import { id, span } from '../answer/answer-parts.ts';
import { defineAnswer } from '../answer/define-answer.ts';

/** Travel times are sums of rail times and paces: seconds, not always whole ones. */
const travelS = z.number().min(0).describe('seconds');
const defaults = z
  .array(z.strictObject({ what: z.string(), value: z.string(), source: z.string(), span }))
  .describe('what was not stated and was taken to be');

export const routes = defineAnswer(
  'routes',
  'The way between two places, or all ways, minutes home and arm transfers.',
  {
    campaign: id,
    pace: z.number().positive(),
    load: id.nullable().describe('load class carried; null: hands free'),
    defaults,
    asked: z
      .strictObject({
        from: id,
        to: id,
        seconds: travelS.nullable().describe('null: there is no way as the hardware stands'),
        path: z.array(id).nullable(),
        swaps: z.array(z.strictObject({ at: id.describe('place'), anchor: id })).describe('where the tether is moved'),
      })
      .nullable()
      .describe('the two places asked for; null: none were named, and the tables are given'),
    home: z.array(
      z.strictObject({ place: id, seconds: travelS.nullable(), words: z.string(), path: z.array(id).nullable() }),
    ),
    pairs: z.array(z.strictObject({ from: id, to: id, seconds: travelS.nullable(), path: z.array(id).nullable() })),
    arms: z.array(
      z.strictObject({
        arm: id,
        transfers: z.array(
          z.strictObject({ from: id, to: id, emptyS: travelS.nullable(), loadedS: travelS.nullable() }),
        ),
      }),
    ),
  },
);
