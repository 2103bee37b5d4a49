import { readFileSync } from 'node:fs';
import { campaignReference } from '@handrail/eva/campaign/campaign-reference';
import { campaignSchema } from '@handrail/wire/campaign/campaign-schema';
import { timelineJsonSchema } from '@handrail/wire/timeline/timeline-schema';
import { expect, test } from 'vitest';

test.each([
  ['docs/reference/campaign-text.md', campaignReference()],
  ['docs/schemas/campaign.schema.json', `${JSON.stringify(campaignSchema(), null, 2)}\n`],
  ['docs/schemas/timeline.schema.json', `${JSON.stringify(timelineJsonSchema(), null, 2)}\n`],
])('%s is up to date with the definitions', (path, text) => {
  expect(readFileSync(path, 'utf8')).toBe(text);
});
