/** `handrail light FILE…`: when each worksite lies in sunlight, in the vehicle's own shadow or in night, for every EVA. */
import type { Campaign } from '@handrail/eva/campaign/campaign';
import {
  type LightReport,
  lightReport,
  type PlaceLight,
  type PlaceLightSpan,
} from '@handrail/eva/sky/campaign/light-report';
import { formatDuration, formatPet, formatUtc } from '@handrail/quantity/time';
import { light } from '@handrail/wire/answers/light';
import type { Command } from 'commander';
import { EXIT } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { loadCampaign } from '../load-campaign.ts';
import { lightAnswer } from '../sky-answers.ts';
import { clockWithSeconds, degrees, percent } from '../sky-words.ts';
import { print } from '../terminal/output.ts';
import { printAnswer } from '../terminal/print-answer.ts';
import { tableText } from '../terminal/table-text.ts';

interface LightOptions {
  readonly place?: string;
  readonly eva?: string;
  readonly json?: boolean;
}

export function register(program: Command): void {
  program
    .command('light')
    .description('sunlight, own shadow and night at the worksites, with the height of the Sun')
    .argument('<files...>', 'campaign text')
    .option('--place <id>', 'this place alone; without: the share of light of every place')
    .option('--eva <id>', 'this EVA alone')
    .option('--json', 'the same as JSON')
    .action((files: string[], options: LightOptions) => {
      const { campaign } = loadCampaign(...files);
      const report = reportOf(campaign, options);
      if (options.json === true) {
        printAnswer(light, EXIT.fine, lightAnswer(campaign, report));
      } else if (options.place === undefined) print(shareTable(campaign, report));
      else print(report.places.map((place) => spanTable(campaign, place)).join('\n\n'));
      if (options.json !== true) {
        for (const [eva, notes] of report.notes) print(`${eva}: ${notes.join('; ')}`);
        if (report.unknown.length > 0) print(`no position, so nothing is known of: ${report.unknown.join(', ')}`);
        print('patches shorter than 10 s may be missed; the Sun counts as its centre');
      }
    });
}

/** @throws ExitError with code 2 for an unknown id, 4 where what light needs is not stated */
function reportOf(campaign: Campaign, { place, eva }: LightOptions): LightReport {
  const unknown = (what: string, id: string, known: readonly string[]): ExitError =>
    new ExitError(EXIT.badInput, `there is no ${what} "${id}"; the campaign has ${known.join(', ')}`);
  const places = campaign.vehicle.places.map(({ id }) => id);
  const evas = campaign.evas.map(({ id }) => id);
  if (place !== undefined && !places.includes(place)) throw unknown('place', place, places);
  if (eva !== undefined && !evas.includes(eva)) throw unknown('EVA', eva, evas);
  const asked = eva === undefined ? campaign : { ...campaign, evas: campaign.evas.filter(({ id }) => id === eva) };
  const report = lightReport(asked, place === undefined ? null : new Set([place]));
  if (report === null) {
    const lacks = campaign.sky.orbit === null ? 'orbit { … }' : 'attitude law=…';
    throw new ExitError(EXIT.cannotTell, `light at a worksite needs an orbit and an attitude: write ${lacks}`);
  }
  if (report.places.length === 0)
    throw new ExitError(EXIT.cannotTell, `no position is stated for ${report.unknown.join(', ')}`);
  return report;
}

function shareTable(campaign: Campaign, report: LightReport): string {
  const evas = [...new Set(report.places.map(({ eva }) => eva))];
  const head = ['place in sunlight', ...evas, 'facing'];
  const rows: string[][] = [];
  for (const { id, title } of campaign.vehicle.places) {
    const shares = evas.map((eva) => report.places.find((one) => one.place === id && one.eva === eva));
    if (shares.some((one) => one === undefined)) continue;
    const facing = campaign.sky.worksites.find(({ name }) => name === id)?.normal ?? null;
    rows.push([
      `${title} (${id})`,
      ...shares.map((one) => percent(one?.litFraction ?? 0)),
      facing === null ? 'any side counts' : 'stated',
    ]);
  }
  return tableText(head, rows);
}

const STATE_WORDS: Readonly<Record<PlaceLightSpan['state'], string>> = {
  lit: 'sunlight',
  'earth-shadow': 'night',
  'own-shadow': 'own shadow',
  'facing-away': 'turned away',
};

function spanTable(campaign: Campaign, at: PlaceLight): string {
  const eva = campaign.evas.find(({ id }) => id === at.eva);
  const title = campaign.vehicle.places.find(({ id }) => id === at.place)?.title ?? at.place;
  const head = ['PET', 'UTC', 'for', 'light', 'Sun over the surface'];
  const rows: string[][] = [];
  for (const span of at.spans) {
    const height = span.sunElevationRad;
    rows.push([
      formatPet(Math.round((span.startUtcMs - at.startUtcMs) / 1000)),
      clockWithSeconds(span.startUtcMs),
      formatDuration((span.endUtcMs - span.startUtcMs) / 1000),
      `${STATE_WORDS[span.state]}${span.by === null ? '' : ` of ${span.by}`}`,
      height === null ? 'surface not stated' : height.map((rad) => degrees(rad, 0)).join(' > '),
    ]);
  }
  return `${title} (${at.place}), EVA ${eva?.title ?? at.eva}, PET 0 ${formatUtc(at.startUtcMs)}: ${percent(at.litFraction)} in sunlight\n${tableText(head, rows)}`;
}
