import { z } from 'zod';
import { id } from '../answer/answer-parts.ts';
import { defineAnswer } from '../answer/define-answer.ts';

/** Not whole where somebody stands in the middle of a move. */
const pet = z.number().describe('seconds since PET 0');
const seconds = z.number();

const mode = z.enum(['terminate', 'abort', 'assist']);
const blocked = z.strictObject({
  words: z.string(),
  by: z.array(z.string()).describe('stints or persons'),
  cause: z.enum(['piece', 'clock', 'arm', 'way', 'said']),
  leftS: z.number().nullable().describe('of a clock that runs out too early; null: it is not that'),
});
const limit = z
  .strictObject({ petS: pet, cause: z.string() })
  .nullable()
  .describe('the least of wall and suits; null: none is stated');
const committed = z.strictObject({
  person: id,
  startS: pet,
  endS: pet,
  causes: z.array(blocked.shape.cause),
  why: z.array(z.string()),
  entry: z.string().nullable().describe('stint in which it begins; null: on the way'),
  ifArmStops: z.boolean(),
  longestS: seconds.nullable().describe('how long it takes at its longest; null: nothing bounds it'),
  homeAfterS: seconds
    .nullable()
    .describe('longest way home (terminate) right after it; null: unknown, or committed again'),
});

const latest = z.strictObject({
  latestS: z.number().nullable().describe('null: it cannot be told'),
  atMostS: z.number().nullable().describe('after this it is too late for certain'),
  why: z.string().nullable(),
});

export const way = z.strictObject({
  mode,
  arm: z.enum(['alive', 'dead']),
  totalS: seconds.nullable().describe('until both are in with the hatch closed; null: unknown, or no such plan'),
  marginS: z.number().nullable().describe('to the limit; negative: too late; null: cannot be told'),
  words: z.string(),
  shortest: z.boolean().describe('true: proved, for these times; false: an upper bound'),
  steps: z.array(
    z.strictObject({ person: id, kind: z.string(), startS: z.number(), endS: z.number(), words: z.string() }),
  ),
  unknown: z.array(z.string()),
  blocked: z.array(blocked),
  assumptions: z.array(z.string()),
});

export const wayhome = defineAnswer(
  'wayhome',
  'The way home over an EVA, or from one minute of it: 90 % times, margins, stretches without a safe stop.',
  {
    campaign: id,
    documentHash: z.string(),
    quantile: z.literal(0.9),
    at: z
      .strictObject({ eva: id, petS: pet, limit, ways: z.array(way) })
      .nullable()
      .describe('with --at'),
    evas: z
      .array(
        z.strictObject({
          eva: id,
          horizon: z.enum(['tonight', 'next-eva']),
          limit,
          pairs: z.number().describe('pairs of progress that can stand side by side'),
          committed: z.array(committed),
          lastMoments: z.array(z.strictObject({ stint: id, plannedS: pet, terminate: latest, abort: latest })),
          gates: z.array(
            z.strictObject({
              petS: pet,
              title: z.string(),
              before: id,
              caller: id,
              conditions: z.array(z.string()),
              onNo: z.string(),
              drops: z.array(z.string()).describe('tasks and stints given up on "no"'),
              latestPetS: z.number().nullable(),
              proposed: z.boolean(),
            }),
          ),
          samples: z.array(
            z.strictObject({
              petS: z.number(),
              endS: z.number(),
              returnMarginAtMostS: z
                .number()
                .nullable()
                .describe(
                  'home-within less the time to the hatch in abort, over pairs whose way is known; null: not stated, or none is',
                ),
              modes: z.array(
                z.strictObject({
                  mode,
                  plannedS: seconds.nullable().describe('as planned, at petS'),
                  worstS: seconds.nullable().describe('over every pair until endS'),
                  marginAtMostS: z
                    .number()
                    .nullable()
                    .describe(
                      'over pairs whose way home is known; less where unknown or blocked are not empty; null: none is known',
                    ),
                  words: z.string(),
                  unknown: z.array(z.string()),
                  blocked: z.array(blocked),
                }),
              ),
            }),
          ),
        }),
      )
      .describe('without --at'),
  },
);
