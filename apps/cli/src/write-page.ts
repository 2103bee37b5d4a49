/** Makes the self-contained page of a timeline: puts the style sheet and the script, files of this folder, into the text. */
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { page } from '@handrail/eva/brief/page';
import type { Finding } from '@handrail/eva/finding/finding';
import { lightReport } from '@handrail/eva/sky/campaign/light-report';
import { slipTable } from '@handrail/eva/slip/slip-table';
import { evaSupplies } from '@handrail/eva/suit/eva-supplies';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import { wayHomeSurface } from '@handrail/eva/wayhome/way-home-surface';
import { travelAtEgress } from './travel-at-egress.ts';
import type { LoadedCampaign } from './load-campaign.ts';
import { PROGRAM_VERSION } from './program-version.ts';

/** Late egresses of the page's slip table: an hour in steps of ten minutes. */
const LATE_S = [0, 10, 20, 30, 40, 50, 60].map((minutes) => minutes * 60);

const folder = join(dirname(fileURLToPath(import.meta.url)), 'page');

export function pageText(
  loaded: LoadedCampaign,
  timeline: Timeline,
  findings: readonly Finding[],
  madeUtcMs: number,
): string {
  return page(
    {
      campaign: loaded.campaign,
      hardware: loaded.hardware,
      kinds: loaded.library.kinds,
      timeline,
      findings,
      supplies: new Map(
        timeline.evas.map((eva) => [eva.eva, evaSupplies(loaded.campaign, loaded.library, eva)] as const),
      ),
      light: lightReport(loaded.campaign, visitedPlaces(loaded, timeline))?.places ?? [],
      slips: slipTable({ ...loaded, timeline }, LATE_S),
      homeSeconds: travelAtEgress(loaded, timeline),
      wayHome: (eva) => wayHomeSurface(loaded.campaign, loaded.hardware, loaded.library, timeline, eva),
      program: PROGRAM_VERSION,
      madeUtcMs,
    },
    {
      style: readFileSync(join(folder, 'page-style.css'), 'utf8'),
      script: readFileSync(join(folder, 'page-script.js'), 'utf8'),
    },
  );
}

/** Where somebody works in this plan. */
function visitedPlaces({ campaign }: LoadedCampaign, timeline: Timeline): ReadonlySet<string> {
  const planned = new Set(timeline.evas.flatMap((eva) => eva.stints.map(({ stint }) => stint)));
  const stints = campaign.tasks.flatMap((task) => task.stints).filter(({ key }) => planned.has(key));
  return new Set(
    stints.flatMap((stint) => stint.roles.flatMap((role) => (role.name === 'arm' ? [] : [role.at, role.to]))),
  );
}
