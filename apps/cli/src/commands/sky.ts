/** `handrail sky FILE…`: orbit, age of the elements, day and night, coverage and weak-field passes of every EVA. */
import type { Campaign } from '@handrail/eva/campaign/campaign';
import { MODEL_WORDS } from '@handrail/eva/sky/campaign/fill-computed-windows';
import { type EvaSky, skyReport } from '@handrail/eva/sky/campaign/sky-report';
import { formatDuration, formatPet, formatUtc } from '@handrail/quantity/time';
import { sky } from '@handrail/wire/answers/sky';
import type { Command } from 'commander';
import { EXIT } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { loadCampaign } from '../load-campaign.ts';
import { skyAnswer } from '../sky-answers.ts';
import { clockWithSeconds, degrees, percent } from '../sky-words.ts';
import { print } from '../terminal/output.ts';
import { printAnswer } from '../terminal/print-answer.ts';
import { tableText } from '../terminal/table-text.ts';

export function register(program: Command): void {
  program
    .command('sky')
    .description('orbit, day and night, coverage and weak-field passes of every EVA')
    .argument('<files...>', 'campaign text')
    .option('--json', 'the same as JSON')
    .action((files: string[], options: { readonly json?: boolean }) => {
      const { campaign } = loadCampaign(...files);
      const orbit = campaign.sky.orbit?.elements;
      if (orbit === undefined) {
        throw new ExitError(
          EXIT.cannotTell,
          'no orbit is stated, so nothing can be said of the sky: write orbit { … }',
        );
      }
      const evas = skyReport(campaign);
      if (options.json === true) {
        printAnswer(sky, EXIT.fine, skyAnswer(campaign, orbit, evas));
        return;
      }
      print(
        `${orbit.name}: ${MODEL_WORDS[orbit.kind]}, elements of ${formatUtc(orbit.epochUtcMs)}, period ${formatDuration(evas[0]?.periodS ?? 0)}`,
      );
      for (const eva of evas) print(`\n${evaText(campaign, eva)}`);
    });
}

function evaText(campaign: Campaign, during: EvaSky): string {
  const { eva, age, radio, field } = during;
  const parts = [
    `EVA ${eva.title} (${eva.id}), PET 0 ${formatUtc(eva.egressUtcMs)}, shown to ${formatUtc(during.endUtcMs)}`,
    `elements ${Math.abs(age.ageDays).toFixed(1)} d ${age.ageDays < 0 ? 'before their epoch' : 'old'}: ±${age.alongTrackErrorKm.toFixed(0)} km along the track, ±${during.padS.toFixed(during.padS < 10 ? 1 : 0)} s in time by the end`,
    ...age.basis.map((line) => `  ${line}`),
    `beta ${degrees(during.betaRad[0])} to ${degrees(during.betaRad[1])}; ${percent(during.litFraction)} of the time in sunlight`,
    nightTable(during),
  ];
  if (radio === null) parts.push('coverage: nothing to talk to is stated');
  else
    parts.push(
      `coverage ${percent(radio.coveredFraction)}; ${radio.notes.join('; ')}`,
      contactTable(during),
      gapTable(during),
    );
  if (field === null) parts.push('weak field: no region is stated');
  else {
    const limit =
      field.limitS === null ? 'no limit is stated' : `the limit for one EVA is ${formatDuration(field.limitS)}`;
    const threshold = campaign.sky.fieldRegion?.thresholdNt ?? 0;
    parts.push(
      `weak field under ${threshold} nT, a proxy: ${formatDuration(field.insideS)} inside; ${limit}\n  ${field.note}`,
      fieldTable(during),
    );
  }
  return parts.join('\n');
}

function nightTable(during: EvaSky): string {
  if (during.nights.length === 0) return 'no night in this EVA';
  const head = ['sunset UTC', 'dark from', 'dark to', 'sunrise', 'night', 'dark'];
  const rows: string[][] = [];
  for (const night of during.nights) {
    rows.push([
      clockOr(night.sunsetUtcMs, 'before'),
      clockOr(night.darkFromUtcMs, night.umbraS > 0 ? 'before' : 'never'),
      clockOr(night.darkToUtcMs, night.umbraS > 0 ? 'after' : 'never'),
      clockOr(night.sunriseUtcMs, 'after'),
      formatDuration(night.nightS),
      formatDuration(night.umbraS),
    ]);
  }
  return tableText(head, rows);
}

const CAUSE_WORDS = { earth: 'the Earth', mask: 'the mask', 'own-vehicle': 'the vehicle itself' } as const;

function contactTable(during: EvaSky): string {
  const head = ['partner', 'AOS UTC', 'LOS UTC', 'PET', 'for', 'lost behind'];
  const rows: string[][] = [];
  for (const contact of during.radio?.contacts ?? []) {
    rows.push([
      contact.partner,
      clockOr(contact.aosUtcMs, 'before'),
      clockOr(contact.losUtcMs, 'after'),
      petOf(during, contact.startUtcMs),
      formatDuration((contact.endUtcMs - contact.startUtcMs) / 1000),
      contact.losCause === null ? '' : CAUSE_WORDS[contact.losCause],
    ]);
  }
  return tableText(head, rows);
}

const GAP_WORDS = {
  handover: 'handover',
  'own-vehicle': 'the vehicle itself hides it',
  'none-in-view': 'nobody in view',
} as const;

function gapTable(during: EvaSky): string {
  const gaps = during.radio?.gaps ?? [];
  if (gaps.length === 0) return 'no gap in coverage';
  const head = ['gap: LOS UTC', 'AOS UTC', 'PET', 'for', 'chiefly'];
  const rows: string[][] = [];
  for (const gap of gaps) {
    rows.push([
      clockOr(gap.losUtcMs, 'before'),
      clockOr(gap.aosUtcMs, 'after'),
      petOf(during, gap.startUtcMs),
      formatDuration((gap.endUtcMs - gap.startUtcMs) / 1000),
      GAP_WORDS[gap.cause],
    ]);
  }
  return tableText(head, rows);
}

function fieldTable(during: EvaSky): string {
  const passes = during.field?.passes ?? [];
  if (passes.length === 0) return 'no pass in this EVA';
  const head = ['in UTC', 'out UTC', 'PET', 'for', 'weakest'];
  const rows: string[][] = [];
  for (const pass of passes) {
    rows.push([
      clockWithSeconds(pass.startUtcMs),
      clockWithSeconds(pass.endUtcMs),
      petOf(during, pass.startUtcMs),
      formatDuration((pass.endUtcMs - pass.startUtcMs) / 1000),
      `${Math.round(pass.weakestNt)} nT`,
    ]);
  }
  return tableText(head, rows);
}

function clockOr(utcMs: number | null, otherwise: string): string {
  return utcMs === null ? otherwise : clockWithSeconds(utcMs);
}

function petOf(during: EvaSky, utcMs: number): string {
  return formatPet(Math.round((utcMs - during.eva.egressUtcMs) / 60_000) * 60);
}
