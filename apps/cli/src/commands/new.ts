/** `handrail new`: a first campaign with comments, or one made from a list. */
import { existsSync, writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import { LARGEST_FILE_CHARACTERS } from '@handrail/eva/campaign/text/decode-text';
import { parseUtc } from '@handrail/quantity/time';
import { listToCampaign } from '@handrail/wire/list/list-to-campaign';
import { type ListProblem, readList } from '@handrail/wire/list/read-list';
import type { Command } from 'commander';
import Papa from 'papaparse';
import { EXIT } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { readBytes } from '../load-campaign.ts';
import { complain, print } from '../terminal/output.ts';

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
        print(text);
        return;
      }
      if (existsSync(file) && options.force !== true) {
        throw new ExitError(EXIT.badInput, `${file} is there already; name another file, or say --force`);
      }
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

/** Campaign text from the text of a list; null with problems, each with its row. */
export function newFromList(
  list: string,
  name: string,
  egress: string,
): { readonly text: string | null; readonly problems: readonly ListProblem[] } {
  if (list.length > LARGEST_FILE_CHARACTERS || list.includes('\0')) {
    return { text: null, problems: [{ row: 1, what: 'this is not a list', expected: 'CSV or TSV text' }] };
  }
  const parsed = Papa.parse<string[]>(list.replace(/^\ufeff/, ''), { delimitersToGuess: [',', '\t', ';', '|'] });
  const broken = parsed.errors
    .filter((error) => error.type === 'Quotes')
    .map((error) => ({
      row: (error.row ?? 0) + 1,
      what: 'a quote is opened and not closed',
      expected: 'quotes in pairs',
    }));
  const { rows, problems } = readList(parsed.data);
  const all = [...broken, ...problems].sort((a, b) => a.row - b.row);
  return { text: all.length > 0 ? null : listToCampaign(rows, name, egress), problems: all };
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

/** Every line says why it is there; the whole reads without a problem. */
export function firstCampaign(egress: string): string {
  return `// A campaign is text: nodes with values, properties and inner nodes. This is the version of the format.
handrail 1
library standard version="1"
campaign first "First campaign"

// Who: EV1 and EV2 in suits, IV reads the steps. What you leave out stays unknown and is shown so.
person EV1 "First out" role=outside suit-limit="7 h"
person EV2 "Second out" role=outside suit-limit="7 h"
person IV "Reader" role=inside

// Where: places and the minutes between them. Without a vehicle the plan still runs, and counts no travel.
vehicle station "Station" hatch=porch {
    place porch "Porch"
    place bay "Pump bay"
    rail porch bay minutes="4 min" length="9 m"
}

// The operator's limits. None has a default.
limits {
    home-within "30 min"
    margin "15 min"
}

// When: PET 0, the passages through the hatch in order, and the longest time out.
eva one "EVA 1" egress="${egress}" longest="6 h 30 min" {
    out EV1 "8 min"
    out EV2 "6 min"
    in EV2 "6 min"
    in EV1 "6 min"
    close-hatch "7 min"
}

// With what: each piece has a kind, which knows its states and verbs.
hardware j1 j2 kind=power-connector at=bay state=mated

// The work, most important first. A stint is one stay of fixed people at one place.
task free-cables rank=1 "Free the cables" {
    stint open "Open the connectors" who=EV1 at=bay {
        demate j1 j2
        minutes low=6 likely=8 high=12
    }
}

// Worth doing if there is room; dropped first when late.
insert look-around rank=2 "Look around the bay" {
    stint look "Look and report" who=EV2 at=bay {
        inspect bay
        minutes 10
    }
}
`;
}
