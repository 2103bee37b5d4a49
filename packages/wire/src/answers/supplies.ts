import { z } from 'zod';
import { id } from '../answer/answer-parts.ts';
import { defineAnswer } from '../answer/define-answer.ts';

/** Curves and limits lie between whole seconds. */
const petS = z.number().describe('seconds since PET 0');
const supply = z.enum(['oxygen', 'carbon-dioxide', 'water', 'battery']);
const cases = <T extends z.ZodType>(of: T) => z.strictObject({ worst: of, likely: of, best: of });
const amount = z.number().describe('kg; J for the battery');

const supplyEnd = z.strictObject({
  supply,
  unit: z.enum(['kg', 'J']),
  end: cases(
    z.strictObject({
      start: amount,
      reserve: amount.describe('may not be used'),
      used: amount,
      left: amount.describe('when both are in; negative: so much was lacking'),
      margin: amount.describe('left above the reserve; negative: too little'),
      reserveAtS: petS.nullable().describe('when the reserve is reached; null: not within the hours after both are in'),
      parts: z.array(z.strictObject({ what: z.string(), amount })).describe('they add up to what is used'),
    }),
  ),
});

const reading = z.discriminatedUnion('known', [
  z.strictObject({ known: z.literal(false), person: id, reason: z.string() }),
  z.strictObject({
    known: z.literal(true),
    person: id,
    suit: id,
    fromS: petS.describe('off vehicle supplies'),
    toS: petS.describe('both in'),
    byEffort: z.array(
      z.strictObject({
        effort: id,
        durationS: z.number(),
        metabolicW: z.number(),
        oxygenKg: z.number(),
        carbonDioxideKg: z.number(),
        heatJ: z.number(),
        batteryJ: z.number(),
      }),
    ),
    supplies: z.array(supplyEnd),
    limiting: cases(z.strictObject({ supply, petS }).nullable()).describe('the first reserve to be reached'),
    breakthroughAtS: cases(petS.nullable()).describe('CO2 starts to pass the absorber'),
    heatStorage: cases(z.strictObject({ limitJ: z.number(), peakJ: z.number(), limitAtS: petS.nullable() })),
    inspired: z
      .array(
        z.strictObject({
          startS: petS,
          endS: petS,
          effort: id,
          metabolicW: z.strictObject({ likely: z.number(), worst: z.number() }),
          inspiredPa: z.strictObject({ likely: z.number(), worst: z.number() }).nullable(),
          reason: z.string().nullable(),
          warns: z.enum(['no', 'at-worst', 'likely', 'unknown']),
        }),
      )
      .describe('CO2 breathed in: the stretches of work that warn or cannot be told'),
    secondaryS: cases(z.number()).nullable().describe('how long a second oxygen pack lasts; null: none'),
    wall: z.strictObject({ petS, cause: z.string() }).nullable().describe('of this suit, as planning takes it'),
  }),
]);

export const supplies = defineAnswer(
  'supplies',
  'What each person uses and has left of oxygen, CO2 absorber, water and battery over a timeline.',
  {
    campaign: id,
    documentHash: z.string(),
    caution: z.string(),
    evas: z.array(z.strictObject({ eva: id, bothInS: petS, people: z.array(reading) })),
  },
);
