/** `handrail export`: a campaign for other programs, as JSON, or its work as a table. */
import { writeFileSync } from 'node:fs';
import { campaignToJson } from '@handrail/wire/campaign/campaign-json';
import { campaignToList } from '@handrail/wire/list/campaign-to-list';
import { type Command, Option } from 'commander';
import Papa from 'papaparse';
import { EXIT } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { loadCampaign } from '../load-campaign.ts';
import { mustBeWritable } from '../must-be-writable.ts';
import { print, printRaw } from '../terminal/output.ts';

export function register(program: Command): void {
  program
    .command('export')
    .argument('<campaign...>', 'campaign files')
    .option('--as <form>', 'json: the whole campaign; csv: its work as a table', 'json')
    .option('-o, --output <file>', 'where to write; absent: the terminal')
    .addOption(new Option('--out <file>', 'the same').hideHelp())
    .description('a campaign for other programs, or its work as a table')
    .action((files: readonly string[], options: { as: string; output?: string; out?: string }) => {
      const file = options.output ?? options.out;
      if (file !== undefined) mustBeWritable(file);
      const text = exportCampaign(files, options.as);
      if (file === undefined) printRaw(text);
      else {
        writeFileSync(file, text);
        print(`wrote ${file}`);
      }
    });
}

/** @throws ExitError with code 2 for another form, or a campaign that does not read */
export function exportCampaign(files: readonly string[], form: string): string {
  if (form !== 'json' && form !== 'csv') {
    throw new ExitError(EXIT.badInput, `--as ${form} is not known; expected json or csv`);
  }
  const { campaign, reading } = loadCampaign(...files);
  if (form === 'json') return `${JSON.stringify(campaignToJson(reading.document.files), null, 2)}\n`;
  // A cell that a spreadsheet would take for a formula is written as text.
  return `${Papa.unparse(campaignToList(campaign) as string[][], { escapeFormulae: true })}\r\n`;
}
