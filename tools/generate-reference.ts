/**
 * Writes what is read off the definitions: the reference of the campaign text and the JSON Schemas. `--check` writes nothing
 * and fails when one is out of date.
 *
 *   npx tsx tools/generate-reference.ts [--check]
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { campaignReference } from '@handrail/eva/campaign/campaign-reference';
import { campaignSchema } from '@handrail/wire/campaign/campaign-schema';
import { timelineJsonSchema } from '@handrail/wire/timeline/timeline-schema';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..');

/** Path → text, for all that this tool writes. */
export function references(): Readonly<Record<string, string>> {
  return {
    'docs/reference/campaign-text.md': campaignReference(),
    'docs/schemas/campaign.schema.json': `${JSON.stringify(campaignSchema(), null, 2)}\n`,
    'docs/schemas/timeline.schema.json': `${JSON.stringify(timelineJsonSchema(), null, 2)}\n`,
  };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const check = process.argv.includes('--check');
  for (const [path, text] of Object.entries(references())) {
    const full = join(ROOT, path);
    if (existsSync(full) && readFileSync(full, 'utf8') === text) continue;
    if (check) {
      console.error(`${path} is out of date: run npx tsx tools/generate-reference.ts`);
      process.exitCode = 1;
    } else {
      mkdirSync(dirname(full), { recursive: true });
      writeFileSync(full, text);
      console.log(`wrote ${path}`);
    }
  }
}
