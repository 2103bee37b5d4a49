import { z } from 'zod';
import { id, pet, seconds, utc } from '../answer/answer-parts.ts';
import { defineAnswer } from '../answer/define-answer.ts';

const rad = z.number().describe('rad');
const fraction = z.number().min(0).max(1);

export const sky = defineAnswer('sky', 'Orbit, day and night, coverage and weak-field passes of every EVA.', {
  campaign: id,
  documentHash: z.string(),
  orbit: z.strictObject({
    name: z.string(),
    model: z.enum(['sgp4', 'kepler-j2', 'two-body']),
    epoch: utc,
    periodS: z.number().positive().describe('seconds'),
    assumptions: z.array(z.string()).describe('what the elements did not say and was taken as usual'),
  }),
  evas: z.array(
    z.strictObject({
      eva: id,
      from: utc.describe('PET 0'),
      to: utc.describe('the latest end: slip and longest EVA counted'),
      elements: z.strictObject({
        ageDays: z.number().describe('at PET 0; negative before the epoch'),
        alongTrackErrorKm: z.number().min(0),
        timingErrorS: z.number().min(0).describe('at PET 0'),
        padS: z.number().min(0).describe('where the elements are oldest in this EVA'),
        basis: z.array(z.string()),
      }),
      betaRad: z.strictObject({ from: rad, to: rad }),
      litFraction: fraction.describe('penumbra counts half'),
      nights: z.array(
        z.strictObject({
          sunset: utc.nullable().describe('null: before PET 0'),
          darkFrom: utc.nullable().describe('null: before PET 0, or never'),
          darkTo: utc.nullable().describe('null: after the end, or never'),
          sunrise: utc.nullable().describe('null: after the end'),
          nightS: seconds,
          darkS: seconds,
        }),
      ),
      radio: z
        .strictObject({
          coveredFraction: fraction,
          contacts: z.array(
            z.strictObject({
              partner: id,
              aos: utc.nullable().describe('null: before PET 0'),
              los: utc.nullable().describe('null: after the end'),
              fromS: pet,
              toS: pet,
              lostBehind: z.enum(['earth', 'mask', 'own-vehicle']).nullable(),
            }),
          ),
          gaps: z.array(
            z.strictObject({
              los: utc.nullable(),
              aos: utc.nullable(),
              fromS: pet,
              toS: pet,
              cause: z.enum(['handover', 'own-vehicle', 'none-in-view']),
            }),
          ),
          notes: z.array(z.string()),
        })
        .nullable()
        .describe('null: nothing to talk to is stated'),
      weakField: z
        .strictObject({
          thresholdNt: z.number().positive(),
          insideS: seconds,
          limitS: seconds.nullable().describe('null: none is stated'),
          passes: z.array(z.strictObject({ fromS: pet, toS: pet, weakestNt: z.number().positive() })),
          note: z.string(),
        })
        .nullable()
        .describe('a proxy; null: no region is stated'),
    }),
  ),
});
