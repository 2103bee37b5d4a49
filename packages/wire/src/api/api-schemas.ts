/** Every request and answer between page and server. Sizes are limits: a body beyond them is refused before it is read further. */
import { z } from 'zod';
import { timelineSchema } from '../timeline/timeline-schema.ts';

/** A campaign of 10,000 lines has some 700 kB. */
const MOST_TEXT = 4_000_000;

export const ROLES = ['viewer', 'planner', 'approver', 'console', 'administrator'] as const;
/** viewer reads; planner writes versions; approver says agreed or not; console marks the day; administrator keeps accounts. */
export const role = z.enum(ROLES);

export const campaignId = z.string().regex(/^[a-z0-9][a-z0-9-]{0,62}$/);
export const versionNumber = z.coerce.number().int().min(1).max(1_000_000_000);
const name = z
  .string()
  .trim()
  .min(1)
  .max(64)
  .regex(/^[^\p{Cc}\p{Cf}]+$/u);
const password = z.string().min(12).max(200);
/** Neither NUL nor half of a character: no file and no database keeps those. */
const KEEPABLE = /^[^\0\p{Cs}]*$/u;
const text = z.string().max(MOST_TEXT).regex(KEEPABLE);
/** Shape only: whether the plan is any good is judged by whoever opens it. */
const timeline = timelineSchema.nullable();
const message = z.string().trim().min(1).max(500).regex(KEEPABLE);
/** Number of a version that is named in a body. */
const parent = z.number().int().min(1).max(1_000_000_000);

export const serverError = z.object({
  code: z.string(),
  message: z.string(),
  advice: z.string().nullable(),
  /** The version that stands, where a save met another one. */
  head: z.lazy(() => versionWhole.nullable()),
});

export const sessionAnswer = z.object({
  mode: z.enum(['open', 'accounts']),
  needsSetup: z.boolean(),
  user: z.object({ id: z.string(), name: z.string(), roles: z.array(role) }).nullable(),
  program: z.string(),
  caution: z.string(),
  /** The campaign to show first; null: the list. */
  first: z.string().nullable(),
});
export const setupAsk = z.object({ name, password, token: z.string().max(200) });
export const loginAsk = z.object({ name: z.string().max(64).regex(KEEPABLE), password: z.string().max(200) });
export const passwordAsk = z.object({ old: z.string().max(200), password });

export const userRow = z.object({ id: z.string(), name: z.string(), roles: z.array(role), isLocked: z.boolean() });
export const userAsk = z.object({ name, password, roles: z.array(role).max(5) });
export const userChange = z
  .object({ roles: z.array(role).max(5).optional(), isLocked: z.boolean().optional(), password: password.optional() })
  .refine((change) => Object.keys(change).length > 0, 'says nothing to change');

export const versionHead = z.object({
  number: z.number().int(),
  /** null: the first. */
  parent: z.number().int().nullable(),
  author: z.string(),
  atUtcMs: z.number(),
  message: z.string(),
  /** Input level that the text reaches; null: it has errors. */
  level: z.number().int().nullable(),
  errors: z.number().int(),
  hasTimeline: z.boolean(),
});
export const versionWhole = versionHead.extend({ text: z.string(), timeline });
export const campaignHead = z.object({ id: campaignId, title: z.string(), head: versionHead });
export const campaignOpened = z.object({ id: campaignId, title: z.string(), head: versionWhole });
export const campaignAsk = z.object({
  title: z.string().trim().min(1).max(200).regex(KEEPABLE),
  text,
  timeline: timeline.default(null),
});
export const versionAsk = z.object({ parent, text, timeline, message });
export const restoreAsk = z.object({ number: parent, parent, message });

export const draftAsk = z.object({ parent, text, timeline });
export const draftKept = draftAsk.extend({ atUtcMs: z.number() });

export const approveAsk = z.object({
  decision: z.enum(['agreed', 'not agreed']),
  note: z.string().trim().max(2000).regex(KEEPABLE),
});
export const approvalRow = approveAsk.extend({ number: z.number().int(), by: z.string(), atUtcMs: z.number() });

export const lineChange = z.object({
  /** Line in the older and in the newer text, from 1; null: it is not in that one. */
  before: z.number().int().nullable(),
  after: z.number().int().nullable(),
  words: z.string(),
});
export const comparison = z.object({ from: versionHead, to: versionHead, lines: z.array(lineChange) });
export const compareQuery = z.object({ from: versionNumber, to: versionNumber });

export const presenceAsk = z.object({ at: z.string().max(200).regex(KEEPABLE) });
export const auditQuery = z.object({ before: z.coerce.number().int().min(1).max(Number.MAX_SAFE_INTEGER).optional() });
export const auditRow = z.object({
  id: z.number().int(),
  atUtcMs: z.number(),
  by: z.string(),
  what: z.string(),
  of: z.string(),
});

export const liveEvent = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('version'), version: versionHead }),
  z.object({ kind: z.literal('approval'), approval: approvalRow }),
  z.object({ kind: z.literal('presence'), people: z.array(z.object({ name: z.string(), at: z.string() })) }),
]);

export const userId = z.uuid();
/** A drawing of a body, kept beside the campaign. */
export const modelName = z.string().regex(/^[a-z0-9-]{1,60}\.glb$/);
export const health = z.object({ state: z.literal('well'), program: z.string(), schema: z.number().int() });
