/** `handrail compare A B`: what changed between two campaigns and what that does to their plans, or between two timelines. */
import { type CampaignChange, compareCampaigns } from '@handrail/eva/schedule/compare-campaigns';
import { compareTimelines, type TimelineChanges } from '@handrail/eva/schedule/compare-timelines';
import { planCampaign } from '@handrail/eva/schedule/plan-campaign';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import { compare } from '@handrail/wire/answers/compare';
import type { Command } from 'commander';
import { EXIT } from '../exit-code.ts';
import { loadCampaign, type LoadedCampaign } from '../load-campaign.ts';
import { loadTimeline } from '../load-timeline.ts';
import { printChanges } from '../plan/print-changes.ts';
import { complain } from '../terminal/output.ts';
import { printAnswer } from '../terminal/print-answer.ts';
import { wholeNumber } from '../whole-number.ts';

interface Flags {
  readonly json?: boolean;
  readonly seed: number;
  readonly budget: number;
}

export function register(program: Command): void {
  program
    .command('compare')
    .description('what changed between two campaigns, in the text and in the plan, or between two timelines')
    .argument('<a>', 'timeline (.json) or campaign (.kdl)')
    .argument('<b>', 'timeline (.json) or campaign (.kdl)')
    .option('--seed <number>', 'start of the search where a campaign is planned', wholeNumber, 1)
    .option('--budget <conflicts>', 'search effort per EVA where a campaign is planned', wholeNumber, 20_000)
    .option('--json', 'answer as JSON')
    .action((a: string, b: string, flags: Flags) => {
      const [first, second] = [sideOf(a), sideOf(b)];
      const campaigns =
        first.loaded !== null && second.loaded !== null
          ? compareCampaigns(first.loaded.campaign, second.loaded.campaign)
          : [];
      const before = timelineOf(first, flags, null);
      const changes = compareTimelines(before, timelineOf(second, flags, before));
      if (flags.json === true) {
        printAnswer(compare, EXIT.fine, {
          from: a,
          to: b,
          isSame: isSame(campaigns, changes),
          campaign: campaigns,
          ...changes,
        });
      } else printChanges(changes, campaigns);
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
  const options = { seed, conflictBudget: budget, skipReasons: true };
  const running = planCampaign(loaded.campaign, loaded.hardware, near === null ? options : { ...options, near });
  let next = running.next();
  while (next.done !== true) next = running.next();
  return next.value.timeline;
}

function isSame(campaigns: readonly CampaignChange[], { evas, tasksIn, tasksOut }: TimelineChanges): boolean {
  const isEvaSame = evas.every(({ bothInLaterS, stints }) => bothInLaterS === 0 && stints.length === 0);
  return isEvaSame && campaigns.length === 0 && tasksIn.length === 0 && tasksOut.length === 0;
}
