/** The timeline as it crosses a file or a network, and its JSON Schema. */
import type { Timeline } from '@handrail/eva/timeline/timeline';
import { Fault } from '@handrail/quantity/fault';
import { z } from 'zod';
import { readEnvelope } from '../version/envelope.ts';
import { type Migration, migrate } from '../version/migrate.ts';

export const TIMELINE_FORMAT = 'handrail-timeline';
export const TIMELINE_VERSION = 1;
/** Version 1 is the first. */
export const TIMELINE_MIGRATIONS: readonly Migration<unknown>[] = [];

const id = z.string().min(1);
/** Whole seconds of PET; negative before egress. */
const pet = z.int();
const span = { startS: pet, endS: pet };

const stint = z.strictObject({
  stint: id.describe('task/stint'),
  ...span,
  assigned: z.array(id).describe('by role of the stint'),
  stepEndsS: z.array(pet),
});
const passage = z.strictObject({
  kind: z.enum(['egress', 'ingress', 'close-hatch']),
  person: id.nullable().describe('null for close-hatch'),
  ...span,
});
const move = z.strictObject({
  who: id,
  from: id,
  to: id,
  ...span,
  path: z.array(id),
  anchor: id.nullable().describe('null: anchors are not modelled'),
  carrying: z.array(id),
});
const hold = z.strictObject({
  request: id,
  askS: pet,
  verifiedS: pet,
  firstUseS: pet,
  lastUseS: pet,
  clearedS: pet,
});
const claim = z.strictObject({
  status: z.enum(['optimal for these durations', 'best found', 'written by hand']),
  levels: z.array(
    z.strictObject({
      name: z.string(),
      unit: z.enum(['weight', 's']),
      value: z.number().nullable(),
      bound: z.number().nullable(),
      proved: z.boolean(),
    }),
  ),
  seed: z.int(),
  conflicts: z.int(),
});
const eva = z.strictObject({
  eva: id,
  petZeroUtcMs: z.int().describe('milliseconds since 1970-01-01T00:00:00Z'),
  tasks: z.array(id),
  stints: z.array(stint),
  passages: z.array(passage),
  moves: z.array(move),
  holds: z.array(hold),
  joins: z.array(z.strictObject({ join: id, releasedS: pet, waitsUntilS: pet })),
  bothInS: pet,
  wall: z.strictObject({ petS: pet, cause: z.string() }).nullable().describe('null: no limit is stated'),
  claim,
});

export const timelineSchema = z.strictObject({
  format: z.literal(TIMELINE_FORMAT),
  version: z.literal(TIMELINE_VERSION),
  campaign: id,
  documentHash: z.string().regex(/^[0-9a-f]{64}$/),
  library: z.strictObject({ id, version: z.string() }),
  evas: z.array(eva),
  leftOut: z.array(z.strictObject({ task: id, why: z.string() })),
});

type Read = z.infer<typeof timelineSchema>;
type DeepReadonly<T> = T extends object ? { readonly [K in keyof T]: DeepReadonly<T[K]> } : T;
type Fits<A extends B, B> = A;
/** The schema and the type say the same, both ways: where they part, this does not compile. */
export type TimelineOnTheWire = Fits<Read, Timeline> & Fits<Timeline, DeepReadonly<Read>>;

/**
 * @throws Fault `wire/not-json`, `wire/wrong-format`, `wire/newer-version`, `wire/wrong-shape` with the place of the first mistake
 */
export function readTimelineJson(text: string): Timeline {
  const { version, data } = readEnvelope(text, TIMELINE_FORMAT);
  const current = migrate<unknown>(data, version, TIMELINE_VERSION, TIMELINE_MIGRATIONS);
  const read = timelineSchema.safeParse(current.data);
  if (read.success) return read.data;
  const issue = read.error.issues[0];
  throw new Fault('wire/wrong-shape', `at ${issue?.path.join('.') || 'the top'}: ${issue?.message ?? 'wrong shape'}`, {
    values: { issues: read.error.issues.length },
    advice: 'see docs/schemas/timeline.schema.json',
  });
}

export function writeTimelineJson(timeline: Timeline): string {
  return `${JSON.stringify(timeline, null, 2)}\n`;
}

/** Draft 2020-12. */
export function timelineJsonSchema(): Readonly<Record<string, unknown>> {
  return { title: 'Handrail timeline', ...z.toJSONSchema(timelineSchema, { target: 'draft-2020-12' }) };
}
