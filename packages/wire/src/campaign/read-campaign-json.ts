/** Campaign JSON from a file or another program: its version, its shape, then its text. */
import { FORMAT_VERSION } from '@handrail/eva/campaign/format-version';
import { Fault } from '@handrail/quantity/fault';
import { z } from 'zod';
import { readEnvelope } from '../version/envelope.ts';
import { migrate } from '../version/migrate.ts';
import { CAMPAIGN_FORMAT, type CampaignJson, campaignFromJson } from './campaign-json.ts';
import { CAMPAIGN_MIGRATIONS } from './campaign-migrations.ts';

const scalar = z.union([z.string(), z.number(), z.boolean(), z.null()]);
const texts = z.array(z.string());
const node = z.strictObject({
  node: z.string().min(1),
  title: z.string().optional(),
  arguments: z.array(scalar).optional(),
  properties: z.record(z.string(), scalar).optional(),
  get children() {
    return z.array(node).optional();
  },
  comments: z
    .strictObject({
      before: texts.optional(),
      inside: texts.optional(),
      after: texts.optional(),
      end: texts.optional(),
    })
    .optional(),
});
/** Only what any version has in common; what each node may hold is checked when its text is read. */
const shape = z.strictObject({
  format: z.literal(CAMPAIGN_FORMAT),
  version: z.int(),
  files: z.array(z.strictObject({ name: z.string().min(1), nodes: z.array(node), comments: texts.optional() })),
});

/** Deeper JSON than this is no campaign; the check itself recurses. */
const DEEPEST_JSON = 100;

/**
 * @returns campaign text, file by file, ready for `readCampaign`
 * @throws Fault `wire/…` in words for the person whose file it is
 */
export function readCampaignJson(text: string): {
  readonly files: readonly { readonly name: string; readonly text: string }[];
  /** What was done to bring it up to date. */
  readonly migrated: readonly string[];
} {
  if (deepest(text) > DEEPEST_JSON) {
    throw new Fault('wire/wrong-shape', 'brackets nest deeper than in any campaign', {
      values: { most: DEEPEST_JSON },
    });
  }
  const { version, data } = readEnvelope(text, CAMPAIGN_FORMAT);
  const current = migrate(data as unknown as CampaignJson, version, FORMAT_VERSION, CAMPAIGN_MIGRATIONS);
  const read = shape.safeParse(current.data);
  if (!read.success) {
    const issue = read.error.issues[0];
    throw new Fault(
      'wire/wrong-shape',
      `at ${issue?.path.join('.') || 'the top'}: ${issue?.message ?? 'wrong shape'}`,
      {
        values: { issues: read.error.issues.length },
        advice: 'see docs/schemas/campaign.schema.json',
      },
    );
  }
  return { files: campaignFromJson(read.data as CampaignJson), migrated: current.done };
}

function deepest(text: string): number {
  let depth = 0;
  let most = 0;
  for (const char of text) {
    if (char === '{' || char === '[') most = Math.max(most, ++depth);
    else if (char === '}' || char === ']') depth--;
  }
  return most;
}
