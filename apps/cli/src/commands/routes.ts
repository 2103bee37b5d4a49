/** `handrail routes FILE… [FROM TO]`: the way between two places, or minutes home and all travel times as tables. */
import { findRoutes } from '@handrail/eva/vehicle/find-routes';
import { armTransfers } from '@handrail/eva/vehicle/arm-transfers';
import { minutesHome } from '@handrail/eva/vehicle/minutes-home';
import type { Campaign } from '@handrail/eva/campaign/campaign';
import { formatDuration } from '@handrail/quantity/time';
import Table from 'cli-table3';
import type { Command } from 'commander';
import { EXIT } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { loadCampaign } from '../load-campaign.ts';
import { print, printJson } from '../terminal/output.ts';

interface RoutesOptions {
  readonly load?: string;
  readonly person?: string;
  readonly state: readonly string[];
  readonly json?: boolean;
}

export function register(program: Command): void {
  program
    .command('routes')
    .description('shortest ways hand over hand, minutes home, and arm transfers')
    .argument('<file>', 'campaign text')
    .argument('[from]', 'place')
    .argument('[to]', 'place')
    .option('--load <class>', 'load class carried')
    .option('--person <id>', 'whose pace, anchor and reel count; without: pace 1, the slowest tether')
    .option('--state <variable=value>', 'how a joint stands, instead of at the start; may be repeated', collect, [])
    .option('--json', 'the same as JSON')
    .action((file: string, from: string | undefined, to: string | undefined, options: RoutesOptions) => {
      const { campaign, hardware } = loadCampaign(file);
      const values = new Map([...hardware.variables.values()].map(({ id, initial }) => [id, initial]));
      for (const pair of options.state) {
        const [variable, value] = pair.split('=');
        if (variable === undefined || value === undefined || !values.has(variable)) {
          throw new ExitError(EXIT.badInput, `--state takes variable=value of this campaign, got "${pair}"`);
        }
        values.set(variable, value);
      }
      if ((from === undefined) !== (to === undefined)) throw new ExitError(EXIT.badInput, 'name both places, or none');
      const question = {
        load: options.load ?? null,
        hardwareValues: values,
        ...(options.person === undefined ? {} : { person: options.person }),
      };
      if (from !== undefined && to !== undefined) printRoute(campaign, question, from, to, options.json === true);
      else printTables(campaign, question, options.json === true);
    });
}

type Question = Parameters<typeof findRoutes>[1];

function printRoute(campaign: Campaign, question: Question, from: string, to: string, asJson: boolean): void {
  const { table, pace, load } = findRoutes(campaign, question);
  const route = table.routeBetween(from, to, load);
  if (asJson) {
    printJson({
      from,
      to,
      load,
      pace,
      seconds: route === null ? null : route.seconds * pace,
      route,
      defaults: table.defaults,
    });
  } else if (route !== null) {
    const swaps = route.swaps.map(({ at, anchor }) => `; tether to ${anchor} at ${route.path[at] ?? ''}`).join('');
    print(`${from} to ${to}: ${formatDuration(route.seconds * pace)}${load === null ? '' : ` with ${load}`}`);
    print(`  ${route.path.join(' → ')}${swaps}`);
  }
  if (route === null) {
    if (!asJson) print(`no way from ${from} to ${to}${load === null ? '' : ` with ${load}`}, as the hardware stands`);
    throw new ExitError(EXIT.findings);
  }
}

function printTables(campaign: Campaign, question: Question, asJson: boolean): void {
  const found = findRoutes(campaign, question);
  const home = minutesHome(campaign, found.pace, {}, found.table);
  const arms = campaign.arms.map((arm) => ({ arm: arm.id, transfers: transfersOf(campaign, arm.id) }));
  if (asJson) {
    printJson({
      campaign: campaign.id,
      pace: found.pace,
      load: found.load,
      home,
      pairs: found.pairs.map(({ from, to, seconds, route }) => ({ from, to, seconds, path: route?.path ?? null })),
      arms,
      defaults: found.table.defaults,
    });
    return;
  }
  const places = campaign.vehicle.places.map((place) => place.id);
  if (places.length === 0) {
    print('no places are given (level 0): travel counts as nothing');
    return;
  }
  print(`Home, hands free, pace ${found.pace}`);
  const homeTable = plainTable(['place', 'home', 'the sum', 'anchor']);
  for (const { place, seconds, words } of home) {
    homeTable.push([
      place,
      seconds === null ? 'no way' : formatDuration(seconds),
      words,
      found.table.anchorAt(place) ?? '',
    ]);
  }
  print(homeTable.toString());
  print(`\nMinutes from (down) to (across), ${found.load ?? 'hands free'}, pace ${found.pace}`);
  const byPair = new Map(found.pairs.map(({ from, to, seconds }) => [`${from} ${to}`, seconds]));
  // A terminal takes about a dozen columns; more places come in several tables.
  for (let first = 0; first < places.length; first += 12) {
    const columns = places.slice(first, first + 12);
    const table = plainTable(['', ...columns]);
    for (const from of places) table.push([from, ...columns.map((to) => minutes(byPair.get(`${from} ${to}`)))]);
    print(table.toString());
  }
  for (const { arm, transfers } of arms) {
    print(`\n${arm}, minutes empty / loaded`);
    const table = plainTable(['from', 'to', 'empty', 'loaded']);
    for (const { from, to, emptyS, loadedS } of transfers) table.push([from, to, minutes(emptyS), minutes(loadedS)]);
    print(table.toString());
  }
  for (const { what, value } of found.table.defaults) print(`\ndefault  ${what}: ${value}`);
}

function transfersOf(
  campaign: Campaign,
  id: string,
): { from: string; to: string; emptyS: number | null; loadedS: number | null }[] {
  const arm = campaign.arms.find((one) => one.id === id);
  if (arm === undefined) return [];
  const table = armTransfers(arm);
  const poses = arm.poses.map((pose) => pose.id);
  return poses.flatMap((from) =>
    poses
      .filter((to) => to !== from)
      .map((to) => ({
        from,
        to,
        emptyS: table.secondsBetween(from, to, false),
        loadedS: table.secondsBetween(from, to, true),
      })),
  );
}

function minutes(seconds: number | null | undefined): string {
  if (seconds === undefined) return '·';
  return seconds === null ? '—' : String(Math.round(seconds / 6) / 10);
}

function collect(value: string, before: readonly string[]): readonly string[] {
  return [...before, value];
}

function plainTable(head: string[]): Table.Table {
  const chars = { mid: '', 'left-mid': '', 'mid-mid': '', 'right-mid': '' };
  return new Table({ head, chars, style: { head: [], border: [] } });
}
