/** `handrail routes FILE… [FROM TO]`: the way between two places, or minutes home and all travel times as tables. */
import { findRoutes } from '@handrail/eva/vehicle/find-routes';
import { armTransfers } from '@handrail/eva/vehicle/arm-transfers';
import { minutesHome } from '@handrail/eva/vehicle/minutes-home';
import type { Campaign } from '@handrail/eva/campaign/campaign';
import { formatDuration } from '@handrail/quantity/time';
import type { AnswerBody } from '@handrail/wire/answer/define-answer';
import { routes } from '@handrail/wire/answers/routes';
import type { Command } from 'commander';
import { EXIT } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { loadCampaign } from '../load-campaign.ts';
import { print } from '../terminal/output.ts';
import { printAnswer } from '../terminal/print-answer.ts';
import { tableText } from '../terminal/table-text.ts';
import { textWidth, wrapText } from '../terminal/wrap-text.ts';

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
  const code = route === null ? EXIT.findings : EXIT.fine;
  const laden = load === null ? '' : ` with ${load}`;
  if (asJson) {
    const swaps = (route?.swaps ?? []).map(({ at, anchor }) => ({ at: route?.path[at] ?? from, anchor }));
    printAnswer(routes, code, {
      campaign: campaign.id,
      pace,
      load,
      defaults: table.defaults,
      asked: { from, to, seconds: route === null ? null : route.seconds * pace, path: route?.path ?? null, swaps },
      home: [],
      pairs: [],
      arms: [],
    });
  } else if (route === null) print(`no way from ${from} to ${to}${laden}, as the hardware stands`);
  else {
    const swaps = route.swaps.map(({ at, anchor }) => `; tether to ${anchor} at ${route.path[at] ?? ''}`).join('');
    print(`${from} to ${to}: ${formatDuration(route.seconds * pace)}${laden}${pace === 1 ? '' : `, pace ${pace}`}`);
    print(`  ${wrapText(`${route.path.join(' → ')}${swaps}`, textWidth(), 2)}`);
  }
  if (code !== EXIT.fine) throw new ExitError(code);
}

function printTables(campaign: Campaign, question: Question, asJson: boolean): void {
  const found = findRoutes(campaign, question);
  const answer: AnswerBody<typeof routes> = {
    campaign: campaign.id,
    pace: found.pace,
    load: found.load,
    defaults: found.table.defaults,
    asked: null,
    home: minutesHome(campaign, found.pace, {}, found.table),
    pairs: found.pairs.map(({ from, to, seconds, route }) => ({ from, to, seconds, path: route?.path ?? null })),
    arms: campaign.arms.map((arm) => ({ arm: arm.id, transfers: transfersOf(campaign, arm.id) })),
  };
  if (asJson) {
    printAnswer(routes, EXIT.fine, answer);
    return;
  }
  const places = campaign.vehicle.places.map((place) => place.id);
  if (places.length === 0) {
    print('no places are given (level 0): travel counts as nothing');
    return;
  }
  const anchored = answer.home.some(({ place }) => found.table.anchorAt(place) !== null);
  print(`Home, hands free, pace ${found.pace}`);
  print(
    tableText(
      ['place', 'home', 'the sum', ...(anchored ? ['anchor'] : [])],
      answer.home.map(({ place, seconds, words }) => [
        place,
        seconds === null ? 'no way' : formatDuration(seconds),
        words,
        ...(anchored ? [found.table.anchorAt(place) ?? ''] : []),
      ]),
    ),
  );
  print(`\nMinutes from (down) to (across), ${found.load ?? 'hands free'}, pace ${found.pace}; — no way`);
  print(pairTables(places, answer.pairs).join('\n'));
  for (const { arm, transfers } of answer.arms) {
    print(`\n${arm}, minutes empty and loaded; — no way`);
    print(
      tableText(
        ['from', 'to', 'empty', 'loaded'],
        transfers.map(({ from, to, emptyS, loadedS }) => [from, to, minutes(emptyS), minutes(loadedS)]),
        { aligns: ['left', 'left', 'right', 'right'] },
      ),
    );
  }
  for (const { what, value } of answer.defaults) print(`\ndefault  ${wrapText(`${what}: ${value}`, textWidth(), 9)}`);
}

/** As many places across as the terminal takes; more places come in several tables. */
function pairTables(
  places: readonly string[],
  pairs: readonly { readonly from: string; readonly to: string; readonly seconds: number | null }[],
): readonly string[] {
  const byPair = new Map(pairs.map(({ from, to, seconds }) => [`${from} ${to}`, seconds]));
  const border = 3;
  const first = Math.max(...places.map((place) => place.length)) + border + 1;
  const tables: string[] = [];
  for (let at = 0; at < places.length; ) {
    const columns: string[] = [];
    let width = first;
    for (const place of places.slice(at)) {
      width += Math.max(place.length, 4) + border;
      if (columns.length > 0 && width > textWidth()) break;
      columns.push(place);
    }
    at += columns.length;
    tables.push(
      tableText(
        ['', ...columns],
        places.map((from) => [from, ...columns.map((to) => minutes(byPair.get(`${from} ${to}`)))]),
        { aligns: ['left', ...columns.map(() => 'right' as const)] },
      ),
    );
  }
  return tables;
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
  return seconds === null ? '—' : (seconds / 60).toFixed(1);
}

function collect(value: string, before: readonly string[]): readonly string[] {
  return [...before, value];
}
