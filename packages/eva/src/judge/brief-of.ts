/** Everything that a briefing is made of, worked out for a timeline. */
import type { BriefInput } from '../brief/brief-input.ts';
import type { Finding } from '../finding/finding.ts';
import { lightReport } from '../sky/campaign/light-report.ts';
import { slipTable } from '../slip/slip-table.ts';
import { evaSupplies } from '../suit/eva-supplies.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { wayHomeSurface } from '../wayhome/way-home-surface.ts';
import type { OpenedCampaign } from './open-campaign.ts';
import { travelAtEgress } from './travel-at-egress.ts';

/** Late egresses of the slip table: an hour in steps of ten minutes. */
const LATE_S = [0, 10, 20, 30, 40, 50, 60].map((minutes) => minutes * 60);

export interface BriefMaking {
  readonly timeline: Timeline;
  readonly findings: readonly Finding[];
  readonly program: string;
  readonly madeUtcMs: number;
}

export function briefOf(opened: OpenedCampaign, { timeline, findings, program, madeUtcMs }: BriefMaking): BriefInput {
  const { campaign, hardware, library } = opened;
  return {
    campaign,
    hardware,
    kinds: library.kinds,
    timeline,
    findings,
    supplies: new Map(timeline.evas.map((eva) => [eva.eva, evaSupplies(campaign, library, eva)] as const)),
    light: lightReport(campaign, visitedPlaces(opened, timeline))?.places ?? [],
    slips: slipTable({ campaign, hardware, library, timeline }, LATE_S),
    homeSeconds: travelAtEgress(opened, timeline),
    wayHome: (eva) => wayHomeSurface(campaign, hardware, library, timeline, eva),
    program,
    madeUtcMs,
  };
}

/** Where somebody works in this plan. */
function visitedPlaces({ campaign }: OpenedCampaign, timeline: Timeline): ReadonlySet<string> {
  const planned = new Set(timeline.evas.flatMap((eva) => eva.stints.map(({ stint }) => stint)));
  const stints = campaign.tasks.flatMap((task) => task.stints).filter(({ key }) => planned.has(key));
  return new Set(
    stints.flatMap((stint) => stint.roles.flatMap((role) => (role.name === 'arm' ? [] : [role.at, role.to]))),
  );
}
