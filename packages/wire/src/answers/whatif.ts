import { z } from 'zod';
import { id } from '../answer/answer-parts.ts';
import { defineAnswer } from '../answer/define-answer.ts';
import { way } from './wayhome.ts';

/** Not whole where somebody stands in the middle of a move. */
const pet = z.number().describe('seconds since PET 0');
const seconds = z.number();

const home = z.strictObject({ startS: z.number(), marginS: z.number().nullable(), way });

const response = z.strictObject({
  id,
  title: z.string(),
  trigger: z.string(),
  from: z.enum(['campaign', 'stock']),
  kinds: z.array(z.string()).describe('of hardware that it concerns; empty: any'),
  verbs: z.array(z.string()).describe('at which it comes up on them; empty: any'),
  stint: z.string().nullable(),
  steps: z.array(z.strictObject({ by: z.enum(['self', 'partner', 'both', 'reader', 'operator']), words: z.string() })),
  timeS: z.strictObject({ low: seconds, likely: seconds, high: seconds }).nullable().describe('null: not stated'),
  kit: z.array(z.string()),
  outcome: z.string().nullable(),
  leadsTo: z.enum(['terminate', 'abort', 'assist']).nullable(),
  armStops: z.boolean(),
  probability: z.number().nullable().describe('that it comes up, once a use; null: not known'),
  leavesIt: z.string().nullable().describe('state that its piece is left in when it does not work; null: not stated'),
  leaves: z.array(z.strictObject({ variable: z.string(), value: z.string() })),
  prevails: z.string(),
});

export const whatif = defineAnswer(
  'whatif',
  'A response applied to one minute of a plan: what is delayed, what breaks, the way home then.',
  {
    campaign: id,
    documentHash: z.string(),
    responses: z.array(response).describe('with --list: all that there are; else the one applied'),
    kit: z
      .array(
        z.strictObject({
          eva: id,
          response: id,
          asked: z.string(),
          pieces: z.array(id),
          occasions: z.number().int().describe('in the plan, at which the trouble can come up'),
          notAtHand: z.strictObject({ petS: pet, where: z.string().nullable() }).nullable().describe('the first'),
          inUse: z.strictObject({ petS: pet, person: id, stint: z.string() }).nullable().describe('the first'),
          farthestS: seconds.nullable().describe('the longest way to it and back; null: somewhere out of reach'),
        }),
      )
      .describe('with --kit'),
    occasions: z
      .array(
        z.strictObject({
          petS: pet,
          who: id,
          stint: z.string().nullable(),
          delayS: seconds.nullable(),
          lateS: seconds.nullable().describe('both in later than planned; null: it leads home'),
          homeMarginS: seconds.nullable(),
          abortMarginS: seconds.nullable().describe('where there is no terminate'),
          breaks: z.number().int().describe('how many things break'),
          first: z.string().nullable().describe('the first of them; null: it holds'),
        }),
      )
      .describe('without --at: at every occasion of the EVA'),
    found: z
      .strictObject({
        eva: id,
        petS: pet,
        response: id,
        responding: z.array(z.strictObject({ person: id, stint: z.string().nullable(), place: z.string() })),
        alsoFor: z.array(id).describe('who else could have it then; what is told is the worse'),
        steps: z.array(z.strictObject({ who: z.string(), words: z.string() })),
        notHere: z.string().nullable().describe('why it cannot come up at this minute; null: it can'),
        kit: z.array(
          z.strictObject({
            asked: z.string(),
            piece: z.string().nullable(),
            where: z.string().nullable(),
            fetchS: seconds.nullable().describe('to it and back; null: out of reach'),
            inUseBy: z.strictObject({ person: id, stint: z.string() }).nullable(),
          }),
        ),
        missingKit: z.array(z.string()),
        delayS: seconds.nullable(),
        delayed: z.array(z.strictObject({ stint: id, fromS: z.number(), toS: z.number() })),
        bothInS: z.strictObject({ plannedS: z.number(), thenS: z.number() }).nullable(),
        consequences: z.array(
          z.strictObject({
            about: z.enum(['wall', 'clock', 'window', 'request', 'last moment', 'gate', 'state', 'way home']),
            words: z.string(),
            marginS: z.number().nullable(),
            breaks: z.boolean(),
          }),
        ),
        left: z
          .array(z.strictObject({ variable: z.string(), title: z.string(), value: z.string() }))
          .describe('when it does not work'),
        givenUp: z.strictObject({
          undone: z.array(z.string()).describe('stints that are not done then'),
          cutFirst: z
            .array(z.strictObject({ task: id, freesS: seconds }))
            .describe('by the cut order, until both are in'),
        }),
        home: home.nullable(),
        instead: home.nullable().describe('abort, where there is no terminate from there'),
        cannotTell: z.array(z.string()),
      })
      .nullable()
      .describe('null with --list, with --kit and without --at'),
  },
);
