/** Makes the self-contained page of a timeline: puts the style sheet and the script, files of this folder, into the text. */
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { page } from '@handrail/eva/brief/page';
import type { Finding } from '@handrail/eva/finding/finding';
import { briefOf } from '@handrail/eva/judge/brief-of';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import type { LoadedCampaign } from './load-campaign.ts';
import { PROGRAM_VERSION } from './program-version.ts';

const folder = join(dirname(fileURLToPath(import.meta.url)), 'page');

export function pageText(
  loaded: LoadedCampaign,
  timeline: Timeline,
  findings: readonly Finding[],
  madeUtcMs: number,
): string {
  return page(briefOf(loaded, { timeline, findings, program: PROGRAM_VERSION, madeUtcMs }), {
    style: readFileSync(join(folder, 'page-style.css'), 'utf8'),
    script: readFileSync(join(folder, 'page-script.js'), 'utf8'),
  });
}
