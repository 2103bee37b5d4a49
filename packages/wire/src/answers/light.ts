import { z } from 'zod';
import { id, pet, utc } from '../answer/answer-parts.ts';
import { defineAnswer } from '../answer/define-answer.ts';

const rad = z.number().describe('rad');

export const light = defineAnswer('light', 'Sunlight, own shadow and night at worksites, for every EVA.', {
  campaign: id,
  documentHash: z.string(),
  places: z.array(
    z.strictObject({
      eva: id,
      place: id,
      from: utc.describe('PET 0'),
      to: utc,
      litFraction: z.number().min(0).max(1),
      spans: z.array(
        z.strictObject({
          fromS: pet,
          toS: pet,
          state: z.enum(['lit', 'earth-shadow', 'own-shadow', 'facing-away']),
          by: z.string().nullable().describe('the body that casts the shadow'),
          sunElevationRad: z
            .strictObject({ from: rad, middle: rad, to: rad })
            .nullable()
            .describe('over the surface; null: the surface is not stated'),
        }),
      ),
    }),
  ),
  notes: z
    .array(z.strictObject({ eva: id, notes: z.array(z.string()) }))
    .describe('what was taken of bodies and joints'),
  unknown: z.array(id).describe('places without a position'),
});
