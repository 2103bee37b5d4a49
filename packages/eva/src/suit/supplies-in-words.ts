/** A person's supplies in sentences: the same in terminal and page, each sum so that it can be done again by hand. */
import { formatDuration, formatPet } from '@handrail/quantity/time';
import type { PersonSupplies } from './eva-supplies.ts';
import { SUPPLY_CASES, type SupplyCase } from './supply-case.ts';
import { petOfLimit, type SupplyName } from './supply-curve.ts';
import { type SumWords, sumWords, supplyWords } from './supply-words.ts';

/** The figures of one supply in one case, rounded so that they add up. */
export function suppliesSum({ use, sums }: PersonSupplies, supply: SupplyName, supplyCase: SupplyCase): SumWords {
  const { start, reserve } = use.curves[supply].traces[supplyCase];
  return sumWords(supply, { start, used: use.end[supply][supplyCase].used, reserve }, sums[supplyCase][supply]);
}

/** "oxygen, likely: body 0.351 kg + leakage 0.011 kg = 0.362 kg used; …". */
export function sumSentence(reading: PersonSupplies, supply: SupplyName, supplyCase: SupplyCase): string {
  const words = suppliesSum(reading, supply, supplyCase);
  const parts = words.parts.map(({ what, amount }) => `${what} ${amount}`).join(' + ');
  return (
    `${supplyWords(supply)}, ${supplyCase}: ${parts} = ${words.used} used; ` +
    `${words.start} − ${words.used} = ${words.left} left; ${words.left} − ${words.reserve} reserve = ${words.margin}`
  );
}

/** PET of the reserve, to the minute before it; where it is not reached, how far was looked. */
export function reservePetWords({ use, span }: PersonSupplies, supply: SupplyName, supplyCase: SupplyCase): string {
  return petWords(petOfLimit(use.curves[supply], supplyCase), span.beyondS);
}

function petWords(petS: number | null, beyondS: number): string {
  return petS === null ? `not within ${formatDuration(beyondS)} after` : formatPet(Math.floor(petS / 60) * 60);
}

export function firstReserveSentence({ use, span }: PersonSupplies): string {
  const parts = SUPPLY_CASES.map((supplyCase) => {
    const first = use.limiting[supplyCase];
    return `${supplyCase} ${first === null ? petWords(null, span.beyondS) : `${supplyWords(first.supply)} at PET ${petWords(first.petS, span.beyondS)}`}`;
  });
  return `first reserve reached: ${parts.join(', ')}`;
}

/** A sentence for each effort that warns or cannot be told; one where none does. */
export function inspiredSentences({ use, suit }: PersonSupplies): readonly string[] {
  const level = `${suit.specification.constants.carbonDioxideWarningPa.likely} Pa`;
  const told = new Map<string, string>();
  for (const { startS, effort, inspiredPa, reason, warns } of use.inspired) {
    if (warns === 'no' || told.has(effort)) continue;
    told.set(
      effort,
      inspiredPa === null
        ? `CO2 breathed in at "${effort}", first at PET ${formatPet(startS)}: cannot tell: ${reason ?? 'not measured'}`
        : `CO2 breathed in at "${effort}", first at PET ${formatPet(startS)}: ${Math.round(inspiredPa.likely)} Pa likely, ${Math.round(inspiredPa.worst)} Pa worst; work must slow above ${level}`,
    );
  }
  if (told.size > 0) return [...told.values()];
  return [`CO2 breathed in stays below ${level}, one deviation above the mean included`];
}

export function heatSentence({ use }: PersonSupplies): string {
  const parts = SUPPLY_CASES.map((supplyCase) => {
    const { peakJ, limitAtS } = use.heatStorage[supplyCase];
    return `${supplyCase} ${Math.round(peakJ / 1000)} kJ${limitAtS === null ? '' : `, the limit at PET ${formatPet(limitAtS)}`}`;
  });
  return `heat stored in the body at most: ${parts.join('; ')}; limit ${Math.round(use.heatStorage.worst.limitJ / 1000)} kJ`;
}

export function breakthroughSentence({ use, span }: PersonSupplies): string {
  const { worst, likely } = use.breakthroughAtS;
  return `CO2 starts to pass the absorber: worst ${petWords(worst, span.beyondS)}, likely ${petWords(likely, span.beyondS)}`;
}

export function secondaryOxygenSentence({ secondaryS }: PersonSupplies): string {
  if (secondaryS === null) return 'no second oxygen pack';
  return `second oxygen pack lasts ${formatDuration(secondaryS.worst)} worst, ${formatDuration(secondaryS.likely)} likely, ${formatDuration(secondaryS.best)} best`;
}
