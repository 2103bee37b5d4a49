/**
 * `handrail supplies FILE… TIMELINE`: what each person has used and has left of oxygen, absorber, water and battery, by effort, with bands,
 * sums that can be redone by hand, and the PET at which each reserve is reached. It plans nothing.
 */
import type { Campaign } from '@handrail/eva/campaign/campaign';
import { evaSupplies, type PersonSupplies, type SuppliesReading } from '@handrail/eva/suit/eva-supplies';
import {
  breakthroughSentence,
  firstReserveSentence,
  heatSentence,
  inspiredSentences,
  reservePetWords,
  secondaryOxygenSentence,
  suppliesSum,
  sumSentence,
} from '@handrail/eva/suit/supplies-in-words';
import { suitWall } from '@handrail/eva/suit/supplies-wall';
import { byCase, SUPPLY_CASES } from '@handrail/eva/suit/supply-case';
import { petOfLimit, SUPPLY_NAMES } from '@handrail/eva/suit/supply-curve';
import { amountWords, supplyWords } from '@handrail/eva/suit/supply-words';
import { formatDuration, formatPet } from '@handrail/quantity/time';
import type { AnswerBody } from '@handrail/wire/answer/define-answer';
import { supplies } from '@handrail/wire/answers/supplies';
import type { Command } from 'commander';
import { EXIT, type ExitCode } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { loadCampaign } from '../load-campaign.ts';
import { loadTimeline } from '../load-timeline.ts';
import { print } from '../terminal/output.ts';
import { printAnswer } from '../terminal/print-answer.ts';
import { tableText } from '../terminal/table-text.ts';

const CAUTION = "Planning aid: it never replaces the suit maker's data, and the flight surgeon prevails.";
const TIMELINE = /\.(json|txt)$/;

interface SuppliesOptions {
  readonly eva?: string;
  readonly json?: boolean;
}

export function register(program: Command): void {
  program
    .command('supplies')
    .description('oxygen, CO2 absorber, water and battery of each person over a timeline')
    .argument('<files...>', 'campaign text, and the timeline (.json, or .txt by hand)')
    .option('--eva <id>', 'this EVA alone')
    .option('--json', 'the same as JSON')
    .action((files: string[], options: SuppliesOptions) => {
      const [timelineFile, ...more] = files.filter((file) => TIMELINE.test(file));
      if (more.length > 0) throw new ExitError(EXIT.badInput, 'one timeline at a time');
      const { campaign, library } = loadCampaign(...files.filter((file) => !TIMELINE.test(file)));
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
        printAnswer(supplies, code, {
          campaign: campaign.id,
          documentHash: campaign.documentHash,
          caution: CAUTION,
          evas: evas.map(({ readings, ...eva }) => ({
            ...eva,
            people: readings.map((reading) => onTheWire(campaign, reading)),
          })),
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

type OnTheWire = AnswerBody<typeof supplies>['evas'][number]['people'][number];

function onTheWire(campaign: Campaign, reading: SuppliesReading): OnTheWire {
  if (!reading.known) return reading;
  const { use, sums } = reading;
  return {
    known: true,
    person: reading.person,
    suit: reading.suit.id,
    fromS: reading.span.startS,
    toS: reading.span.endS,
    byEffort: reading.byEffort,
    supplies: SUPPLY_NAMES.map((supply) => ({
      supply,
      unit: use.curves[supply].unit,
      end: byCase((supplyCase) => ({
        start: use.curves[supply].traces[supplyCase].start,
        reserve: use.curves[supply].traces[supplyCase].reserve,
        ...use.end[supply][supplyCase],
        reserveAtS: petOfLimit(use.curves[supply], supplyCase),
        parts: sums[supplyCase][supply],
      })),
    })),
    limiting: use.limiting,
    breakthroughAtS: use.breakthroughAtS,
    heatStorage: use.heatStorage,
    inspired: use.inspired.filter(({ warns }) => warns !== 'no'),
    secondaryS: reading.secondaryS,
    wall: wallOf(campaign, reading.person),
  };
}

function wallOf(campaign: Campaign, id: string): ReturnType<typeof suitWall> {
  const person = campaign.people.find((candidate) => candidate.id === id);
  return person === undefined ? null : suitWall(campaign, person);
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
  const wall = wallOf(campaign, reading.person);
  const lines = [
    ...SUPPLY_NAMES.map((supply) => sumSentence(reading, supply, 'likely')),
    firstReserveSentence(reading),
    ...(wall === null ? [] : [`wall of the suit, as planning takes it: PET ${formatPet(wall.petS)} (${wall.cause})`]),
    breakthroughSentence(reading),
    ...inspiredSentences(reading),
    heatSentence(reading),
    secondaryOxygenSentence(reading),
  ];
  for (const line of lines) print(`  ${line}`);
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

function supplyTable(reading: PersonSupplies): string {
  const rows = SUPPLY_NAMES.flatMap((supply) =>
    SUPPLY_CASES.map((supplyCase) => {
      const words = suppliesSum(reading, supply, supplyCase);
      return [
        supplyCase === 'worst' ? supplyWords(supply) : '',
        supplyCase,
        words.start,
        words.used,
        words.left,
        words.reserve,
        words.margin,
        reservePetWords(reading, supply, supplyCase),
      ];
    }),
  );
  return tableText(['supply', 'case', 'start', 'used', 'left', 'reserve', 'margin', 'reserve at PET'], rows);
}
