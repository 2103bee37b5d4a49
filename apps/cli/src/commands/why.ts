/** `handrail why FILE TIMELINE STINT`: what a stint waits for, back to the start of the EVA. */
import { bindingChain, bindings } from '@handrail/eva/timeline/binding-chain';
import { nearestName } from '@handrail/eva/campaign/problem/nearest-name';
import { formatPet } from '@handrail/quantity/time';
import type { Command } from 'commander';
import { EXIT } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { loadCampaign } from '../load-campaign.ts';
import { loadTimeline } from '../load-timeline.ts';
import { print, printJson } from '../terminal/output.ts';

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
      if (options.json === true) {
        printJson(chain.map((binding) => ({ ...binding, startS: starts.get(binding.stint) })));
        return;
      }
      for (const binding of chain)
        print(
          `PET ${formatPet(starts.get(binding.stint) ?? 0).padEnd(8)} ${binding.stint.padEnd(42)} ${binding.words}`,
        );
    });
}
