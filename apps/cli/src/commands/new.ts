/** `handrail new`: a first campaign with comments, or one made from a list. */
import { existsSync, writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import { parseUtc } from '@handrail/quantity/time';
import { firstCampaign } from '@handrail/wire/list/first-campaign';
import { newFromList } from '@handrail/wire/list/new-from-list';
import type { Command } from 'commander';
import { EXIT } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { readBytes } from '../load-campaign.ts';
import { mustBeWritable } from '../must-be-writable.ts';
import { complain, print, printRaw } from '../terminal/output.ts';

export function register(program: Command): void {
  program
    .command('new')
    .argument('[file]', 'where to write; "-" writes to the terminal', 'campaign.kdl')
    .option('--from <list>', 'a list as CSV or TSV with columns who, what, minutes, order, place')
    .option('--egress <utc>', 'planned PET 0, such as 2031-09-14T11:40:00Z; absent: tomorrow at noon')
    .option('--force', 'write over a file that is there')
    .description('a first campaign with comments, or one made from a list')
    .action((file: string, options: { from?: string; egress?: string; force?: boolean }) => {
      const egress = options.egress ?? tomorrowNoon(Date.now());
      if (parseUtc(egress) === null) {
        throw new ExitError(EXIT.badInput, `--egress ${egress} is not an instant in UTC, such as 2031-09-14T11:40:00Z`);
      }
      const text = options.from === undefined ? firstCampaign(egress) : campaignFromList(options.from, egress);
      if (file === '-') {
        printRaw(text);
        return;
      }
      if (existsSync(file) && options.force !== true) {
        throw new ExitError(EXIT.badInput, `${file} is there already; name another file, or say --force`);
      }
      mustBeWritable(file);
      writeFileSync(file, text);
      print(`wrote ${file}: next, handrail check ${file}`);
    });
}

function campaignFromList(path: string, egress: string): string {
  const { text, problems } = newFromList(new TextDecoder('utf-8').decode(readBytes(path)), nameOf(path), egress);
  if (text !== null) return text;
  for (const problem of problems)
    complain(`${path}, row ${problem.row}: ${problem.what}; expected ${problem.expected}`);
  throw new ExitError(
    EXIT.badInput,
    `${problems.length} ${problems.length === 1 ? 'error' : 'errors'} in ${path}; nothing was written`,
  );
}

function nameOf(path: string): string {
  const name = basename(path)
    .replace(/\.[a-z0-9]+$/i, '')
    .replaceAll(/[-_]+/g, ' ')
    .trim();
  return name === '' ? 'List' : name.charAt(0).toUpperCase() + name.slice(1);
}

function tomorrowNoon(nowMs: number): string {
  const tomorrow = new Date(nowMs + 24 * 3600 * 1000);
  return `${tomorrow.toISOString().slice(0, 10)}T12:00:00Z`;
}
