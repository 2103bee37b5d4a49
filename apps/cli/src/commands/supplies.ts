/**
 * `handrail supplies FILE… TIMELINE.json`: what each person has used and has left of oxygen, absorber, water and battery, by effort, with
 * bands, sums that can be redone by hand, and the PET at which each reserve is reached. It plans nothing.
 */
import { formatDuration, formatPet } from '@handrail/quantity/time';
import { evaSupplies, type PersonSupplies, type SuppliesReading } from '@handrail/eva/suit/eva-supplies';
import { SUPPLY_CASES, type SupplyCase } from '@handrail/eva/suit/supply-case';
import { petOfLimit, SUPPLY_NAMES, type SupplyName } from '@handrail/eva/suit/supply-curve';
import { amountWords, sumWords, supplyWords } from '@handrail/eva/suit/supply-words';
import { suitWall } from '@handrail/eva/suit/supplies-wall';
import type { Campaign } from '@handrail/eva/campaign/campaign';
import type { Command } from 'commander';
import { EXIT, type ExitCode } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { loadCampaign } from '../load-campaign.ts';
import { loadTimeline } from '../load-timeline.ts';
import { print, printJson } from '../terminal/output.ts';
import { tableText } from '../terminal/table-text.ts';

const CAUTION = "Planning aid: it never replaces the suit maker's data, and the flight surgeon prevails.";

export function register(program: Command): void {
  program
    .command('supplies')
    .description('oxygen, CO2 absorber, water and battery of each person over a timeline')
    .argument('<files...>', 'campaign text, and the timeline (.json)')
    .option('--eva <id>', 'this EVA alone')
    .option('--json', 'the same as JSON')
    .action((files: string[], options: { readonly eva?: string; readonly json?: boolean }) => {
      const [timelineFile, ...more] = files.filter((file) => file.endsWith('.json'));
      if (more.length > 0) throw new ExitError(EXIT.badInput, 'one timeline at a time');
      const { campaign, library } = loadCampaign(...files.filter((file) => !file.endsWith('.json')));
      if (timelineFile === undefined) {
        throw new ExitError(
          EXIT.cannotTell,
          'without a timeline nobody knows what is used when: handrail plan FILE -o TIMELINE.json, then name it here',
        );
      }
      const timeline = loadTimeline(timelineFile, campaign);
      if (options.eva !== undefined && !timeline.evas.some(({ eva }) => eva === options.eva)) {
        throw new ExitError(EXIT.badInput, `the timeline has no EVA "${options.eva}"`);
      }
      const evas = timeline.evas
        .filter(({ eva }) => options.eva === undefined || eva === options.eva)
        .map((eva) => ({ eva: eva.eva, bothInS: eva.bothInS, readings: evaSupplies(campaign, library, eva) }));
      const code = exitCode(evas.flatMap(({ readings }) => readings));
      if (options.json === true) {
        printJson({
          campaign: campaign.id,
          documentHash: campaign.documentHash,
          exitCode: code,
          caution: CAUTION,
          evas,
        });
      } else {
        print(CAUTION);
        for (const { eva, readings } of evas) for (const reading of readings) printReading(campaign, eva, reading);
      }
      if (code !== EXIT.fine) throw new ExitError(code);
    });
}

/** Short in the likely case is an error; where nothing can be told of somebody, so is nothing of the whole. */
function exitCode(readings: readonly SuppliesReading[]): ExitCode {
  const isShort = (reading: SuppliesReading) =>
    reading.known && SUPPLY_NAMES.some((supply) => reading.use.end[supply].likely.margin < 0);
  if (readings.some(isShort)) return EXIT.findings;
  return readings.length === 0 || readings.some(({ known }) => !known) ? EXIT.cannotTell : EXIT.fine;
}

function printReading(campaign: Campaign, eva: string, reading: SuppliesReading): void {
  if (!reading.known) {
    print(`\nEVA ${eva} · ${reading.person}: cannot tell: ${reading.reason}`);
    return;
  }
  const { span, suit } = reading;
  print(
    `\nEVA ${eva} · ${reading.person} · ${suit.title}: off vehicle supplies from PET ${formatPet(span.startS)} to ${formatPet(span.endS)}, ${suit.specification.gasLaw} gas, energy by ${suit.specification.energyEquivalent}`,
  );
  print(effortTable(reading));
  print(supplyTable(reading));
  for (const supply of SUPPLY_NAMES) print(`  ${sumLine(reading, supply)}`);
  print(`  ${limitingLine(reading)}`);
  const person = campaign.people.find(({ id }) => id === reading.person);
  const wall = person === undefined ? null : suitWall(campaign, person);
  if (wall !== null) print(`  wall of the suit used in planning: PET ${formatPet(wall.petS)} (${wall.cause})`);
  for (const line of [...inspiredLines(reading), heatLine(reading), secondaryLine(reading)]) print(`  ${line}`);
}

function effortTable({ byEffort }: PersonSupplies): string {
  return tableText(
    ['effort (likely)', 'time', 'rate', 'oxygen', 'CO2', 'heat', 'battery'],
    byEffort.map((line) => [
      line.effort,
      formatDuration(line.durationS),
      `${Math.round(line.metabolicW)} W`,
      amountWords('oxygen', line.oxygenKg),
      amountWords('carbon-dioxide', line.carbonDioxideKg),
      `${Math.round(line.heatJ / 1000)} kJ`,
      amountWords('battery', line.batteryJ),
    ]),
  );
}

const CASE_WORDS: Readonly<Record<SupplyCase, string>> = { worst: 'worst', likely: 'likely', best: 'best' };

function supplyTable({ use, sums }: PersonSupplies): string {
  const rows = SUPPLY_NAMES.flatMap((supply) =>
    SUPPLY_CASES.map((supplyCase) => {
      const { start, reserve } = use.curves[supply].traces[supplyCase];
      const { used } = use.end[supply][supplyCase];
      const words = sumWords(supply, { start, used, reserve }, sums[supplyCase][supply]);
      return [
        supplyCase === 'worst' ? supplyWords(supply) : '',
        CASE_WORDS[supplyCase],
        words.start,
        words.used,
        words.left,
        words.reserve,
        words.margin,
        petWords(petOfLimit(use.curves[supply], supplyCase)),
      ];
    }),
  );
  return tableText(['supply', 'case', 'start', 'used', 'left', 'reserve', 'margin', 'reserve at PET'], rows);
}

function petWords(petS: number | null): string {
  return petS === null ? 'not within 8 h after' : formatPet(Math.floor(petS / 60) * 60);
}

function sumLine({ sums, use }: PersonSupplies, supply: SupplyName): string {
  const { start, reserve } = use.curves[supply].traces.likely;
  const words = sumWords(supply, { start, used: use.end[supply].likely.used, reserve }, sums.likely[supply]);
  const parts = words.parts.map(({ what, amount }) => `${what} ${amount}`).join(' + ');
  return (
    `${supplyWords(supply)}, likely: ${parts} = ${words.used} used; ` +
    `${words.start} − ${words.used} = ${words.left} left; ${words.left} − ${words.reserve} reserve = ${words.margin}`
  );
}

function limitingLine({ use }: PersonSupplies): string {
  const parts = SUPPLY_CASES.map((supplyCase) => {
    const first = use.limiting[supplyCase];
    return `${supplyCase} ${first === null ? 'none' : `${supplyWords(first.supply)} at PET ${petWords(first.petS)}`}`;
  });
  return `first reserve reached: ${parts.join(', ')}`;
}

/** One line for the stretches that warn or cannot be told; one where none does. */
function inspiredLines({ use, suit }: PersonSupplies): readonly string[] {
  const warning = suit.specification.constants.carbonDioxideWarningPa.likely;
  const told = use.inspired.filter(({ warns }) => warns !== 'no');
  if (told.length === 0) return [`CO2 breathed in stays below ${warning} Pa, one deviation above the mean included`];
  return told.map(({ startS, endS, effort, inspiredPa, reason }) =>
    inspiredPa === null
      ? `CO2 breathed in from PET ${formatPet(startS)} to ${formatPet(endS)} (${effort}): cannot tell: ${reason ?? ''}`
      : `CO2 breathed in from PET ${formatPet(startS)} to ${formatPet(endS)} (${effort}): ${Math.round(inspiredPa.likely)} Pa likely, ${Math.round(inspiredPa.worst)} Pa worst; work must slow above ${warning} Pa`,
  );
}

function heatLine({ use }: PersonSupplies): string {
  const parts = SUPPLY_CASES.map((supplyCase) => {
    const { peakJ, limitAtS } = use.heatStorage[supplyCase];
    return `${supplyCase} ${Math.round(peakJ / 1000)} kJ${limitAtS === null ? '' : `, the limit at PET ${formatPet(limitAtS)}`}`;
  });
  return `heat stored in the body at most: ${parts.join('; ')}; limit ${Math.round(use.heatStorage.worst.limitJ / 1000)} kJ`;
}

function secondaryLine({ secondaryS }: PersonSupplies): string {
  if (secondaryS === null) return 'no second oxygen pack';
  return `second oxygen pack lasts ${formatDuration(secondaryS.worst)} worst, ${formatDuration(secondaryS.likely)} likely`;
}
