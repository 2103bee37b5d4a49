/** `handrail why FILE TIMELINE STINT`: what a stint waits for, back to the start of the EVA. */
import { bindingChain, bindings } from '@handrail/eva/timeline/binding-chain';
import { nearestName } from '@handrail/eva/campaign/problem/nearest-name';
import { formatPet } from '@handrail/quantity/time';
import { instantOnTheWire } from '@handrail/wire/answer/finding-on-the-wire';
import { why } from '@handrail/wire/answers/why';
import type { Command } from 'commander';
import { EXIT } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { loadCampaign } from '../load-campaign.ts';
import { loadTimeline } from '../load-timeline.ts';
import { print } from '../terminal/output.ts';
import { printAnswer } from '../terminal/print-answer.ts';
import { textWidth, wrapText } from '../terminal/wrap-text.ts';

export function register(program: Command): void {
  program
    .command('why')
    .argument('<file>', 'campaign file')
    .argument('<timeline>', 'timeline of it')
    .argument('<stint>', 'task/stint')
    .option('--json', 'answer as JSON')
    .description('why a stint starts when it does')
    .action((file: string, timelineFile: string, stint: string, options: { json?: boolean }) => {
      const { campaign, hardware } = loadCampaign(file);
      const timeline = loadTimeline(timelineFile, campaign);
      const eva = timeline.evas.find((candidate) => candidate.stints.some((planned) => planned.stint === stint));
      if (eva === undefined) {
        const known = timeline.evas.flatMap((candidate) => candidate.stints.map((planned) => planned.stint));
        const near = nearestName(stint, known);
        throw new ExitError(
          EXIT.badInput,
          `${stint} is not in this timeline${near === null ? '' : `; did you mean ${near}?`}`,
        );
      }
      const chain = bindingChain(bindings(campaign, hardware, eva), stint);
      const starts = new Map(eva.stints.map((planned) => [planned.stint, planned.startS] as const));
      const startOf = (key: string): number => starts.get(key) ?? 0;
      if (options.json === true) {
        printAnswer(why, EXIT.fine, {
          campaign: campaign.id,
          eva: eva.eva,
          stint,
          chain: chain.map((binding) => ({
            ...binding,
            start: instantOnTheWire(eva.petZeroUtcMs, startOf(binding.stint)),
          })),
        });
        return;
      }
      const longest = Math.max(...chain.map((binding) => binding.stint.length));
      for (const binding of chain) {
        const start = `PET ${formatPet(startOf(binding.stint)).padEnd(8)} ${binding.stint.padEnd(longest)}  `;
        print(start + wrapText(binding.words, textWidth(), start.length));
      }
    });
}
