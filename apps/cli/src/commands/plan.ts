/** `handrail plan FILE…`: the best timeline found, what is claimed of it, what is left out and why. */
import { writeFileSync } from 'node:fs';
import { formatDuration } from '@handrail/quantity/time';
import { formatFindings } from '@handrail/eva/finding/format-finding';
import { type CampaignPlan, planCampaign, type PlanOptions } from '@handrail/eva/schedule/plan-campaign';
import { type PinPrice, pricePins } from '@handrail/eva/schedule/price-pins';
import type { Campaign, Pin } from '@handrail/eva/campaign/campaign';
import type { Command } from 'commander';
import { EXIT, type ExitCode } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { loadCampaign, type LoadedCampaign } from '../load-campaign.ts';
import { claimSentence, timelineTable } from '../plan/timeline-table.ts';
import { complain, print, printJson } from '../terminal/output.ts';

interface Flags {
  readonly output?: string;
  readonly seed: number;
  readonly budget: number;
  readonly time?: number;
  readonly eva?: string;
  readonly json?: boolean;
  readonly pricePins?: boolean;
}

/** Conflicts per EVA: some seconds for an EVA of thirty stints. */
const DEFAULT_BUDGET = 20_000;

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
    .option('--json', 'answer as JSON')
    .action(async (files: string[], flags: Flags) => {
      await plan(loadCampaign(...files), flags);
    });
}

function wholeNumber(text: string): number {
  if (!/^\d{1,9}$/.test(text)) throw new ExitError(EXIT.badInput, `"${text}" is not a whole number`);
  return Number(text);
}

async function plan({ campaign, hardware }: LoadedCampaign, flags: Flags): Promise<void> {
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
  const running = planCampaign(campaign, hardware, options);
  const progress = progressLine();
  let next = running.next();
  while (next.done !== true) {
    progress(
      next.value.eva,
      next.value.conflicts,
      next.value.kind === 'incumbent' ? (next.value.timeline.evas.at(-1)?.bothInS ?? null) : null,
    );
    await turn();
    next = running.next();
  }
  stop.release();
  const found = next.value;
  const prices = flags.pricePins === true ? pricePins(campaign, hardware, found.timeline, options) : [];
  if (flags.output !== undefined) writeTimeline(flags.output, found);
  if (flags.json === true)
    printJson({ timeline: found.timeline, findings: found.findings, pins: prices.map(priceData) });
  else printPlan(campaign, found, prices);
  const code = exitCode(found);
  if (code !== EXIT.fine) throw new ExitError(code);
}

function printPlan(campaign: Campaign, found: CampaignPlan, prices: readonly PinPrice[]): void {
  for (const eva of found.timeline.evas) {
    const title = campaign.evas.find(({ id }) => id === eva.eva)?.title ?? eva.eva;
    print(`EVA ${title} (${eva.eva})`);
    print(timelineTable(campaign, eva));
    print(`${claimSentence(campaign, eva)}\n`);
  }
  if (found.timeline.evas.length > 1) {
    print(
      'Proved EVA by EVA, for the tasks offered to each; how tasks are shared among EVAs is searched, not proved.\n',
    );
  }
  for (const { task: id, why } of found.timeline.leftOut) {
    const task = campaign.tasks.find((candidate) => candidate.id === id);
    print(`left out  ${id} (rank ${task?.rank ?? '?'}): ${why}`);
  }
  for (const price of prices) print(priceWords(price));
  const others = found.findings.filter(({ rule }) => rule !== 'schedule/ranked-work-is-in');
  if (others.length > 0) print(`\n${formatFindings(others)}`);
}

function writeTimeline(file: string, { timeline }: CampaignPlan): void {
  try {
    writeFileSync(file, `${JSON.stringify(timeline, null, 2)}\n`);
  } catch (cause) {
    throw new ExitError(EXIT.badInput, `${file} cannot be written: ${(cause as NodeJS.ErrnoException).code ?? cause}`);
  }
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

function priceWords({ pin, gains, losses, laterS, proved }: PinPrice): string {
  const parts: string[] = [];
  if (gains.length > 0) parts.push(`keeps out ${gains.join(', ')}`);
  if (losses.length > 0) parts.push(`keeps in ${losses.join(', ')}`);
  for (const [eva, s] of laterS) {
    if (s !== 0) parts.push(`EVA ${eva} ${formatDuration(Math.abs(s))} ${s > 0 ? 'later' : 'earlier'}`);
  }
  const price = parts.length === 0 ? 'costs nothing' : parts.join('; ');
  return `pin       ${pinWords(pin)}: ${price}${proved ? '' : ' (by the plans found, not proved)'}`;
}

function pinWords(pin: Pin): string {
  switch (pin.kind) {
    case 'person':
      return `${pin.person} as ${pin.role} of ${pin.stint}`;
    case 'start':
      return `${pin.stint} at a fixed time`;
    case 'order':
      return `${pin.first} before ${pin.then}`;
    case 'eva':
      return `${pin.task} in EVA ${pin.eva}`;
    case 'out':
      return `${pin.task} out`;
  }
}

function priceData(price: PinPrice): unknown {
  return { ...price, laterS: Object.fromEntries(price.laterS) };
}

/** Ctrl-C or the time limit asks the search to stop; a second Ctrl-C ends the program at once. */
function stopSign(timeS: number | undefined): { readonly isUp: () => boolean; readonly release: () => void } {
  const endMs = timeS === undefined ? Number.POSITIVE_INFINITY : Date.now() + timeS * 1000;
  let isStopped = false;
  const stop = () => {
    isStopped = true;
    complain('stopping; the best timeline so far is kept');
  };
  process.once('SIGINT', stop);
  return { isUp: () => isStopped || Date.now() > endMs, release: () => process.removeListener('SIGINT', stop) };
}

/** One line on stderr, once a second at most, only when it takes longer than a second. */
function progressLine(): (eva: string, conflicts: number, bothInS: number | null) => void {
  let lastMs = Date.now();
  let best = '';
  return (eva, conflicts, bothInS) => {
    if (bothInS !== null) best = `, both in after ${formatDuration(bothInS)}`;
    if (Date.now() - lastMs < 1000) return;
    lastMs = Date.now();
    complain(`planning EVA ${eva}: ${conflicts} conflicts${best}`);
  };
}

/** Lets signals in. */
async function turn(): Promise<void> {
  await new Promise((resolve) => {
    setImmediate(resolve);
  });
}
