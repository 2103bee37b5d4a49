/** `handrail plan FILE…`: the best timeline found, what is claimed of it, what is left out and why. */
import type { CampaignPlan, PlanOptions } from '@handrail/eva/schedule/plan-campaign';
import { pricePins } from '@handrail/eva/schedule/price-pins';
import { plan as answer } from '@handrail/wire/answers/plan';
import type { Command } from 'commander';
import { EXIT, type ExitCode } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { loadCampaign, type LoadedCampaign } from '../load-campaign.ts';
import { ProofShelf } from '@handrail/eva/schedule/proof-shelf';
import { DEFAULT_BUDGET } from '../plan/default-budget.ts';
import { planAnswer } from '../plan/plan-answer.ts';
import { printPlan } from '../plan/print-plan.ts';
import { writeProofs } from '../plan/proof-file.ts';
import { searchPlan, stopSign } from '../plan/search-plan.ts';
import { mustBeWritable } from '../must-be-writable.ts';
import { writeTimeline } from '../plan/write-timeline.ts';
import { print } from '../terminal/output.ts';
import { printAnswer } from '../terminal/print-answer.ts';
import { wholeNumber } from '../whole-number.ts';

interface Flags {
  readonly output?: string;
  readonly seed: number;
  readonly budget: number;
  readonly time?: number;
  readonly eva?: string;
  readonly json?: boolean;
  readonly proof?: string;
  readonly pricePins?: boolean;
}

export function register(program: Command): void {
  program
    .command('plan')
    .description('plan the EVAs of a campaign: who does what, where, when')
    .argument('<file...>', 'campaign files (.kdl)')
    .option('-o, --output <file>', 'write the timeline as JSON')
    .option('--seed <number>', 'start of the search; same seed and budget, same timeline', wholeNumber, 1)
    .option('--budget <conflicts>', 'search effort per EVA, in conflicts', wholeNumber, DEFAULT_BUDGET)
    .option('--time <seconds>', 'stop after this long and keep the best', wholeNumber)
    .option('--eva <id>', 'plan this EVA alone (those before it only for how they leave the hardware)')
    .option('--price-pins', 'say what each pin costs')
    .option('--proof <file>', 'write the models and the logs of their proofs, for verify-proof')
    .option('--json', 'answer as JSON')
    .action(async (files: string[], flags: Flags) => {
      await plan(loadCampaign(...files), flags);
    });
}

async function plan(loaded: LoadedCampaign, flags: Flags): Promise<void> {
  const { campaign, hardware } = loaded;
  if (flags.eva !== undefined && !campaign.evas.some(({ id }) => id === flags.eva)) {
    const known = campaign.evas.map(({ id }) => id).join(', ');
    throw new ExitError(EXIT.badInput, `there is no EVA "${flags.eva}"; the campaign has ${known}`);
  }
  const stop = stopSign(flags.time);
  const options: PlanOptions = {
    seed: flags.seed,
    conflictBudget: flags.budget,
    shouldStop: stop.isUp,
    ...(flags.eva === undefined ? {} : { onlyEva: flags.eva }),
  };
  const proofs = new ProofShelf();
  // A folder that is not there is told now, not after the search.
  for (const file of [flags.output, flags.proof]) if (file !== undefined) mustBeWritable(file);
  const found = await searchPlan(campaign, hardware, options, proofs);
  stop.release();
  const isStopped = stop.hasStopped();
  const prices = flags.pricePins === true ? pricePins(campaign, hardware, found.timeline, options) : [];
  if (flags.output !== undefined) writeTimeline(flags.output, found.timeline);
  if (flags.proof !== undefined) writeProofs(flags.proof, proofs.kept(found));
  const code = exitCode(found);
  if (flags.json === true) printAnswer(answer, code, planAnswer(loaded, found, prices, isStopped));
  else {
    printPlan(loaded, found, prices);
    if (isStopped) print('\nStopped before the search was done: this is the best until then.');
    print(`\n${nextWords(loaded, flags)}`);
  }
  if (code !== EXIT.fine) throw new ExitError(code);
}

function nextWords({ reading }: LoadedCampaign, { output, proof }: Flags): string {
  const texts = reading.document.files.map(({ source }) => source.name).join(' ');
  const lines = proof === undefined ? [] : [`wrote ${proof}: next, handrail verify-proof ${proof}`];
  if (output === undefined) lines.push('Nothing was kept: -o FILE.json writes the timeline, handrail check judges it.');
  else lines.push(`wrote ${output}: next, handrail check ${texts} ${output}`);
  return lines.join('\n');
}

/** No plan at all, or minimum success out of reach, is "no plan"; a search stopped before its first plan cannot tell. */
function exitCode({ evas, findings }: CampaignPlan): ExitCode {
  if (evas.some(({ plan }) => plan.status === 'infeasible')) return EXIT.noPlan;
  if (evas.some(({ plan }) => plan.status === 'unknown')) return EXIT.cannotTell;
  const isShort = (eva: string) =>
    findings.some(({ rule, where }) => rule === 'schedule/minimum-success-is-in' && where.eva === eva);
  const isProved = ({ plan }: CampaignPlan['evas'][number]) =>
    plan.levels.find(({ objective }) => objective === 'rank')?.proved === true;
  if (evas.some((outcome) => isShort(outcome.eva) && isProved(outcome))) return EXIT.noPlan;
  return findings.some(({ severity }) => severity === 'error') ? EXIT.findings : EXIT.fine;
}
