/** `handrail slip FILE… TIMELINE`: what a late egress breaks, which waits mend it, what is cut, and the last acceptable egress. */
import { type EvaSlip, slipTable } from '@handrail/eva/slip/slip-table';
import {
  countWords,
  lateWords,
  leftWords,
  slipLines,
  slipSentence,
  waitWords,
  wallWords,
} from '@handrail/eva/slip/slip-words';
import { formatDuration, formatPet } from '@handrail/quantity/time';
import { slip } from '@handrail/wire/answers/slip';
import type { Command } from 'commander';
import { EXIT } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { loadCampaign } from '../load-campaign.ts';
import { loadTimeline } from '../load-timeline.ts';
import { slipAnswer } from '../sky-answers.ts';
import { print } from '../terminal/output.ts';
import { printAnswer } from '../terminal/print-answer.ts';
import { tableText } from '../terminal/table-text.ts';

interface SlipOptions {
  readonly step: string;
  readonly most: string;
  readonly json?: boolean;
}

export function register(program: Command): void {
  program
    .command('slip')
    .description('what a late egress breaks, and the last acceptable one')
    .argument('<files...>', 'campaign text and its timeline (.json, or .txt written by hand)')
    .option('--step <minutes>', 'from one late egress to the next', '5')
    .option('--most <minutes>', 'the latest egress to look at', '60')
    .option('--json', 'the same as JSON')
    .action((files: string[], options: SlipOptions) => {
      const timelineFile = files.find((file) => /\.(json|txt)$/.test(file));
      const texts = files.filter((file) => file !== timelineFile);
      if (timelineFile === undefined || texts.length === 0) {
        throw new ExitError(EXIT.badInput, 'name the campaign text and its timeline: handrail slip FILE TIMELINE');
      }
      const steps = stepsOf(options);
      const { campaign, hardware, library } = loadCampaign(...texts);
      const timeline = loadTimeline(timelineFile, campaign);
      const slips = slipTable({ campaign, hardware, library, timeline }, steps);
      const short = slips.filter(({ statedSlipS, rows }) =>
        rows.some(({ lateS, acceptable }) => lateS <= statedSlipS && !acceptable),
      );
      const code = short.length > 0 ? EXIT.findings : EXIT.fine;
      if (options.json === true) printAnswer(slip, code, slipAnswer(campaign, slips));
      else print(slips.map(evaText).join('\n\n'));
      if (short.length > 0) {
        const names = short.map(({ eva }) => eva).join(', ');
        throw new ExitError(code, `the stated slip of ${names} is longer than the last acceptable egress`);
      }
    });
}

/** @throws ExitError with code 2 for figures that make no table */
function stepsOf({ step, most }: SlipOptions): readonly number[] {
  const [stepMin, mostMin] = [Number(step), Number(most)];
  if (
    !(Number.isInteger(stepMin) && stepMin >= 1 && Number.isInteger(mostMin) && mostMin >= stepMin && mostMin <= 120)
  ) {
    throw new ExitError(
      EXIT.badInput,
      `--step and --most are whole minutes, the step at least 1, the most at most 120; got ${step} and ${most}`,
    );
  }
  return Array.from({ length: Math.floor(mostMin / stepMin) + 1 }, (_, k) => k * stepMin * 60);
}

function evaText(table: EvaSlip): string {
  const rows = table.rows.map((row) => [
    row.lateS === 0 ? 'on time' : formatDuration(row.lateS),
    countWords(row),
    row.waits.map(waitWords).join('\n'),
    formatPet(Math.ceil(row.bothInS / 60) * 60),
    wallWords(row),
    row.acceptable ? 'yes' : 'no',
  ]);
  const head = ['late by', 'breaks', 'waits', 'both in', 'wall', 'acceptable'];
  const lines = slipLines(table).map(({ severity, words, late }) => `  ${severity} at ${late}: ${words}`);
  const left = table.rows.flatMap((row) =>
    leftWords(row).map((words) => `  left at ${lateWords(row.lateS)}: ${words}`),
  );
  return [`EVA ${table.eva}: ${slipSentence(table)}`, tableText(head, rows), ...lines, ...left].join('\n');
}
