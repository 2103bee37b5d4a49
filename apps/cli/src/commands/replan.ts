/**
 * `handrail replan FILE TIMELINE --eva E --now 2:10 [--late STINT=MIN]`: the rest of an EVA planned again under way. What has
 * begun stays; what runs late is said with --late; the new timeline goes to a file, and what changed is printed.
 */
import { compareTimelines } from '@handrail/eva/schedule/compare-timelines';
import { replanEva } from '@handrail/eva/schedule/replan-eva';
import { whyNoPlan } from '@handrail/eva/schedule/why-no-plan';
import { runsLate } from '@handrail/eva/timeline/runs-late';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import { parsePet } from '@handrail/quantity/time';
import type { Command } from 'commander';
import { EXIT } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { loadCampaign } from '../load-campaign.ts';
import { loadTimeline } from '../load-timeline.ts';
import { ProofShelf } from '@handrail/eva/schedule/proof-shelf';
import { printChanges } from '../plan/print-changes.ts';
import { outcomeSentence, timelineTable } from '../plan/timeline-table.ts';
import { stopSign } from '../plan/search-plan.ts';
import { writeTimeline } from '../plan/write-timeline.ts';
import { print, printJson } from '../terminal/output.ts';

interface Flags {
  readonly eva: string;
  readonly now: string;
  readonly late: readonly string[];
  readonly leastChange?: boolean;
  readonly output?: string;
  readonly budget: string;
  readonly json?: boolean;
}

export function register(program: Command): void {
  program
    .command('replan')
    .argument('<file>', 'campaign file')
    .argument('<timeline>', 'timeline under way')
    .requiredOption('--eva <id>', 'the EVA under way')
    .requiredOption('--now <pet>', 'PET now, such as 2:10; what starts before it has begun')
    .option('--late <stint=min>', 'a stint that has begun ends this many minutes later (again for more)', collect, [])
    .option('--least-change', 'change as little as may be before finish and travel count')
    .option('-o, --output <file>', 'write the new timeline as JSON')
    .option('--budget <conflicts>', 'search effort, in conflicts', '20000')
    .option('--json', 'the new timeline as JSON')
    .description('plan the rest of an EVA again under way')
    .action((file: string, timelineFile: string, flags: Flags) => {
      const { campaign, hardware } = loadCampaign(file);
      const nowS = parsePet(flags.now);
      if (nowS === null) throw new ExitError(EXIT.badInput, `--now ${flags.now} is not a PET time such as 2:10`);
      const given = loadTimeline(timelineFile, campaign);
      const known = given.evas.map(({ eva }) => eva);
      if (!known.includes(flags.eva)) {
        throw new ExitError(EXIT.badInput, `the timeline has no EVA "${flags.eva}"; it has ${known.join(', ')}`);
      }
      const timeline = flags.late.reduce((before, late) => withLate(before, flags.eva, late, nowS), given);
      const stop = stopSign(undefined);
      const proofs = new ProofShelf();
      const replan = { eva: flags.eva, nowS, leastChange: flags.leastChange === true };
      const running = replanEva(campaign, hardware, timeline, replan, {
        seed: 1,
        conflictBudget: Number(flags.budget),
        shouldStop: stop.isUp,
        proof: proofs.sink(),
      });
      let next = running.next();
      while (next.done !== true) next = running.next();
      const plan = proofs.checkedEva(next.value);
      if (plan === null) {
        const why = whyNoPlan(campaign, hardware, next.value, { seed: 1, conflictBudget: 2000, shouldStop: stop.isUp });
        stop.release();
        throw new ExitError(EXIT.noPlan, noPlanWords(flags.now, why));
      }
      stop.release();
      const after: Timeline = { ...timeline, evas: timeline.evas.map((eva) => (eva.eva === plan.eva ? plan : eva)) };
      if (flags.output !== undefined) writeTimeline(flags.output, after);
      if (flags.json === true) {
        printJson(after);
        return;
      }
      print(timelineTable(campaign, plan));
      print(`${outcomeSentence(plan)}\n`);
      printChanges(compareTimelines(given, after));
    });
}

function noPlanWords(now: string, why: ReturnType<typeof whyNoPlan>): string {
  if (why === null)
    return `no plan was found from PET ${now} on within the budget; it was not proved that there is none`;
  const list = why.words.map((word) => `  - ${word}`).join('\n');
  const none = why.isIrreducible ? '; without any one of them there is a plan' : '';
  return `there is no plan from PET ${now} on that keeps everything. These collide${none}:\n${list}\nOne of them has to give: get it waived, take work out with a pin, or turn back.`;
}

function collect(value: string, before: readonly string[]): readonly string[] {
  return [...before, value];
}

function withLate(timeline: Timeline, eva: string, late: string, nowS: number): Timeline {
  const [stint = '', minutes = ''] = late.split('=');
  const lateS = Number(minutes) * 60;
  if (!/^-?\d{1,3}$/.test(minutes))
    throw new ExitError(EXIT.badInput, `--late ${late}: expected task/stint=minutes, such as swap-pump/free-lines=12`);
  const changed = runsLate(timeline, eva, stint, lateS, nowS);
  if (changed === null)
    throw new ExitError(EXIT.badInput, `--late ${late}: ${stint} has not begun by then in EVA ${eva}`);
  return changed;
}
