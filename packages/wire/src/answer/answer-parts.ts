/** Parts that several answers share. */
import { z } from 'zod';

export const id = z.string().min(1);
/** Seconds of PET. */
export const pet = z.int().describe('seconds since PET 0 of the EVA; negative before egress');
export const utc = z.iso.datetime({ offset: false, precision: 0 }).describe('UTC, ISO 8601');
export const seconds = z.int();

/** An instant of an EVA, on its own clock and in UTC. */
export const instant = z.strictObject({ petS: pet, utc });

export const span = z
  .strictObject({ file: z.string(), line: z.int().min(1), column: z.int().min(1), length: z.int().min(0) })
  .describe('where it stands in the text; lines and columns count from 1');

export const problem = z
  .strictObject({
    code: id.describe('handrail explain CODE'),
    severity: z.enum(['error', 'warning']),
    span,
    what: z.string(),
    expected: z.string().nullable(),
    nearest: z.string().nullable().describe('the nearest valid name'),
  })
  .describe('one mistake of a campaign text');

export const finding = z
  .strictObject({
    rule: id.describe('handrail explain RULE'),
    severity: z.enum(['error', 'warning', 'note', 'unknown']),
    title: z.string(),
    where: z.strictObject({
      eva: id.nullable(),
      person: id.nullable(),
      stint: id.nullable().describe('task/stint'),
      step: z.int().min(0).nullable().describe('counted from 0'),
      petS: pet.nullable(),
      utc: utc.nullable().describe('the same instant; null where there is none or its EVA is not known'),
      span: span.nullable(),
    }),
    why: z.string(),
    mend: z.string().nullable(),
    source: z.string().nullable(),
    waiver: z.string().nullable().describe('the reason why it is waived; null: it is not'),
  })
  .describe('one thing that a check noticed');

/** Counts of findings that are not waived, and of those that are. */
export const counts = z.strictObject({
  error: z.int().min(0),
  warning: z.int().min(0),
  unknown: z.int().min(0),
  note: z.int().min(0),
  waived: z.int().min(0),
});
