import { z } from 'zod';
import { counts, finding, id, seconds, utc } from '../answer/answer-parts.ts';
import { defineAnswer } from '../answer/define-answer.ts';

const share = z.number().min(0).max(1).nullable();

export const prove = defineAnswer('prove', 'What can be claimed of a timeline, as the data of a stamp.', {
  campaign: id,
  timeline: z.string().nullable().describe('the file that was proved; null: planned for it'),
  verdict: z.enum(['checked', 'does not hold', 'cannot tell']),
  words: z.string().describe('one sentence'),
  hash: z.string().describe('SHA-256 over the document hash, the library, R, what D was made of, and the timeline'),
  documentHash: z.string(),
  library: z.strictObject({ id, version: z.string() }),
  requirements: z.array(id).describe('R: everything that was checked'),
  evas: z.array(
    z.strictObject({
      eva: id,
      raceFree: z.boolean(),
      pairs: z.int().describe('changes against other changes and needs of the same state'),
      proposedHolds: z.array(
        z.strictObject({
          releases: id.describe('task/stint'),
          waits: id.describe('task/stint'),
          releasesSteps: z.int().nullable().describe('called when so many steps are done; null: all'),
          releasesWayOf: id.nullable().describe('whose way from there on is to be over; null: the stint itself'),
          waitsStep: z.int().describe('the step that waits, counted from 0'),
          waitsWayOf: id.nullable().describe('whose way there waits; null: the stint itself'),
        }),
      ),
      controllable: z.boolean().describe('can be kept for all durations in D, with the proposed holds'),
      conflict: z
        .strictObject({
          limits: z.array(z.string()),
          chain: z.array(z.strictObject({ words: z.string(), seconds: z.int(), stint: id.nullable() })),
          shortS: seconds,
        })
        .nullable()
        .describe('why not: the seconds of the chain add up to −shortS'),
      holds: z.array(
        z.strictObject({
          words: z.string(),
          stint: id.nullable(),
          who: z.array(id),
          mayBeLate: z.boolean().describe('the call may fall into a coverage gap'),
          petS: z.int(),
        }),
      ),
      stints: z.int(),
      spreadScaleOfD: z.number().describe('D takes this share of the stated spreads'),
      bounded: z.int().describe('stints whose durations have bounds'),
      unbounded: z.array(id).describe('taken as exactly their planning figure'),
      moveSpread: z.tuple([z.number(), z.number()]).nullable().describe('factors; null: taken as exact'),
      probabilityInD: share.describe('that all bounded durations lie in D, independent of each other'),
      spreadScale: z.number().nullable().describe('λ: the largest scale of the spreads that can be kept; null: none'),
      spreadScaleIsMost: z.boolean().describe('no larger one was tried'),
      probabilityAtScale: share,
      latestEgressS: seconds.nullable().describe('after the planned one; null: not even on time'),
      slipS: seconds,
      reactionS: seconds,
    }),
  ),
  level: z
    .strictObject({ level: z.int().min(0).max(4), title: z.string(), missing: z.array(z.string()) })
    .nullable()
    .describe('the input level that the claim rests on, and what the next one lacks'),
  quantile: share.describe('q, of the ways home and the supplies'),
  margins: z
    .array(
      z.strictObject({
        eva: id,
        mode: z.enum(['terminate', 'abort', 'assist']),
        leastS: z.number().nullable().describe('over all pairs of progress; negative: too late; null: cannot be told'),
        atPetS: seconds.nullable(),
        limit: z.strictObject({ petS: seconds, cause: z.string() }).nullable(),
        unknownS: z.number().describe('of the EVA, in which the way home may be unknown'),
        committedS: z.number().describe('of the EVA, in which no safe stop is in reach of somebody'),
      }),
    )
    .describe('way-home margins in the listed modes'),
  supplies: z
    .array(
      z.strictObject({
        eva: id,
        person: id,
        supply: z.enum(['oxygen', 'carbon-dioxide', 'water', 'battery']),
        atBothIn: z.number().describe('above the reserve, hatch closed as planned, worst case'),
        unit: z.enum(['kg', 'J']),
        lastsUntilS: z.number().nullable().describe('PET at which the reserve is reached; null: not within the curve'),
        neededUntilS: z.number().describe('PET by which all durations in D have both in'),
      }),
    )
    .describe('supplies at q'),
  dataAge: z.array(z.strictObject({ eva: id, days: z.number() })).describe('days since the epoch of the elements'),
  unknowns: z.array(z.string()),
  assumptions: z.array(z.string()).describe('how what is not stated was read'),
  waivers: z.array(z.strictObject({ rule: id, of: id, reason: z.string(), by: z.string(), until: utc })),
  expiry: z.strictObject({ withAnyChangeOf: z.string(), at: utc, why: z.string() }),
  counts,
  findings: z.array(finding),
});
