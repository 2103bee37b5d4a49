import { z } from 'zod';
import { id, seconds, span } from '../answer/answer-parts.ts';
import { defineAnswer } from '../answer/define-answer.ts';

const property = z.union([z.number(), z.string(), z.boolean()]);
const safeUntil = z.enum(['always', 'next-eva', 'tonight', 'never']);

const kind = z.strictObject({
  id,
  title: z.string(),
  about: z.string(),
  aspects: z.array(z.strictObject({ id, values: z.array(id), safe: z.record(z.string(), safeUntil) })),
  verbs: z.array(
    z.strictObject({
      id,
      sentence: z.string(),
      aspect: id.nullable(),
      needs: z.array(id).describe('values it may start from; empty: any'),
      leaves: id.nullable(),
      timeS: z.strictObject({ low: z.number(), likely: z.number(), high: z.number() }),
      perTurnS: z.number().nullable(),
      toolKinds: z.array(id),
      underControl: z.boolean(),
      source: z.string(),
    }),
  ),
  source: z.string(),
});

const stint = z.strictObject({
  stint: id.describe('task/stint'),
  title: z.string(),
  roles: z.array(
    z.strictObject({
      name: z.enum(['lead', 'partner', 'arm']),
      candidates: z.array(id),
      at: z.string().describe('place or pose; empty at level 0'),
      to: z.string(),
      fromStep: z.int().min(0),
      toStep: z.int().min(0).describe('first step that is no longer theirs'),
    }),
  ),
  agreedS: seconds,
  boundsS: z.array(seconds).length(2),
  spread: z.strictObject({ lowS: seconds, likelyS: seconds, highS: seconds }).nullable(),
  basis: z.enum(['stated', 'three-figures', 'samples', 'steps']),
  steps: z.array(z.string()).describe('sentences'),
  span,
});

const hardware = z.strictObject({
  id,
  title: z.string(),
  kind: id,
  at: z.strictObject({ kind: z.enum(['place', 'hardware', 'person', 'arm']), id: z.string() }),
  of: id.nullable(),
  initial: z
    .record(z.string(), z.string())
    .describe('state at the start by aspect; an aspect that is absent is not stated'),
  massKg: z.number().nullable(),
  loadClass: id.nullable(),
  controls: z.array(id),
  torqueNm: z.number().nullable(),
  turns: z.number().nullable(),
  toolFits: z.array(id),
  properties: z.record(z.string(), property),
  settings: z.record(z.string(), z.string()),
  span,
});

const states = z.strictObject({
  stint: id,
  title: z.string(),
  steps: z.array(z.string()),
  lines: z.array(
    z.strictObject({
      step: z.int().min(0).nullable().describe('counted from 0; null: the whole stint'),
      kind: z.enum(['needs', 'leaves', 'tool', 'under', 'carries', 'unknown']),
      text: z.string(),
      why: z.string(),
    }),
  ),
});

export const show = defineAnswer('show', 'What the campaign says, and what was read into its sentences.', {
  campaign: id,
  title: z.string(),
  documentHash: z.string(),
  library: z.strictObject({ id, version: z.string() }),
  kind: kind.nullable().describe('the kind asked for; null: none'),
  stints: z.array(stint),
  hardware: z.array(hardware),
  states: z.array(states).nullable().describe('null: --states was not asked for'),
});
