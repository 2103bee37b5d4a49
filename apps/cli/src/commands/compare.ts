/** `handrail compare A B`: what changed between two campaigns and what that does to their plans, or between two timelines. */
import { formatDuration } from '@handrail/quantity/time';
import { type CampaignChange, compareCampaigns } from '@handrail/eva/schedule/compare-campaigns';
import { compareTimelines, type StintChange, type TimelineChanges } from '@handrail/eva/schedule/compare-timelines';
import { planCampaign } from '@handrail/eva/schedule/plan-campaign';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import type { Command } from 'commander';
import { loadCampaign, type LoadedCampaign } from '../load-campaign.ts';
import { loadTimeline } from '../load-timeline.ts';
import { stintWords } from '../plan/timeline-table.ts';
import { complain, print, printJson } from '../terminal/output.ts';

interface Flags {
  readonly json?: boolean;
  readonly seed: string;
  readonly budget: string;
}

export function register(program: Command): void {
  program
    .command('compare')
    .description('what changed between two campaigns, in the text and in the plan, or between two timelines')
    .argument('<a>', 'timeline (.json) or campaign (.kdl)')
    .argument('<b>', 'timeline (.json) or campaign (.kdl)')
    .option('--seed <number>', 'start of the search where a campaign is planned', '1')
    .option('--budget <conflicts>', 'search effort per EVA where a campaign is planned', '20000')
    .option('--json', 'answer as JSON')
    .action((a: string, b: string, flags: Flags) => {
      const [first, second] = [sideOf(a), sideOf(b)];
      const campaigns =
        first.loaded !== null && second.loaded !== null
          ? compareCampaigns(first.loaded.campaign, second.loaded.campaign)
          : [];
      const before = timelineOf(first, flags, null);
      const changes = compareTimelines(before, timelineOf(second, flags, before));
      if (flags.json === true) printJson({ campaign: campaigns, timeline: changes });
      else printChanges(campaigns, changes);
    });
}

/** A campaign file or a timeline file. */
interface Side {
  readonly file: string;
  readonly loaded: LoadedCampaign | null;
}

function sideOf(file: string): Side {
  return { file, loaded: file.endsWith('.json') ? null : loadCampaign(file) };
}

/** The second plan is searched near the first, so that what differs differs for a reason. */
function timelineOf({ file, loaded }: Side, { seed, budget }: Flags, near: Timeline | null): Timeline {
  if (loaded === null) return loadTimeline(file, null);
  complain(`planning ${file}`);
  const options = { seed: Number(seed), conflictBudget: Number(budget), skipReasons: true };
  const running = planCampaign(loaded.campaign, loaded.hardware, near === null ? options : { ...options, near });
  let next = running.next();
  while (next.done !== true) next = running.next();
  return next.value.timeline;
}

function printChanges(campaigns: readonly CampaignChange[], { evas, tasksIn, tasksOut }: TimelineChanges): void {
  for (const { sort, id, kind, fields } of campaigns) {
    if (kind !== 'changed') print(`${kind.padEnd(10)} ${sort} ${id}`);
    for (const { field, from, to } of fields) print(`changed    ${sort} ${id}: ${field} ${from} → ${to}`);
  }
  let isSame = campaigns.length === 0 && tasksIn.length === 0 && tasksOut.length === 0;
  for (const id of tasksIn) print(`task in    ${id}`);
  for (const id of tasksOut) print(`task out   ${id}`);
  for (const { eva, bothInLaterS, stints } of evas) {
    if (bothInLaterS === 0 && stints.length === 0) continue;
    isSame = false;
    print(`EVA ${eva}: ${bothInLaterS === null ? 'only in one of the two' : `both in ${laterWords(bothInLaterS)}`}`);
    for (const change of stints) print(`  ${changeWords(change)}`);
  }
  if (isSame) print('no change');
}

function changeWords({ kind, from, to, laterS, longerS, people, stint }: StintChange): string {
  if (kind === 'added' && to !== null) return `added      ${stintWords(to)}`;
  if (kind === 'removed' && from !== null) return `removed    ${stintWords(from)}`;
  const parts = people.map((change) => `${change.from} → ${change.to}`);
  if (laterS !== 0) parts.push(laterWords(laterS));
  if (longerS !== 0) parts.push(`${formatDuration(Math.abs(longerS))} ${longerS > 0 ? 'longer' : 'shorter'}`);
  return `changed    ${stint}: ${parts.join(', ')}`;
}

function laterWords(s: number): string {
  return s === 0 ? 'at the same time' : `${formatDuration(Math.abs(s))} ${s > 0 ? 'later' : 'earlier'}`;
}
