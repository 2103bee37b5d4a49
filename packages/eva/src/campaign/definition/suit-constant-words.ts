/** How the constants of a suit are called in the text: the words of their names, without the unit, which stands with the figure. */
import { SUIT_CONSTANTS, type SuitConstant } from '../../suit/suit-constants.ts';
import { parseQuantity } from '@handrail/quantity/quantity';
import { Fault } from '@handrail/quantity/fault';
import type { SecondaryOxygen } from '../../suit/suit-specification.ts';
import { decimal, quantity, type ValueType } from './value-type.ts';

export interface ConstantWord {
  readonly type: ValueType;
  readonly unit: string;
  readonly about: string;
  readonly of:
    | { readonly part: 'primary'; readonly constant: SuitConstant }
    | { readonly part: 'secondary'; readonly constant: keyof SecondaryOxygen };
}

const SUFFIXES: Readonly<Record<string, string>> = {
  'm³': 'M3',
  Pa: 'Pa',
  K: 'K',
  'kg/s': 'KgPerS',
  kg: 'Kg',
  'J/kg': 'JPerKg',
  W: 'W',
  J: 'J',
  '1': '',
};

/** oxygenStartPressurePa, "Pa" → oxygen-start-pressure. */
function wordsOf(constant: string, unit: string): string {
  const name = constant.slice(0, constant.length - (SUFFIXES[unit] as string).length);
  return name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}

function typeOf(unit: string, min: number, max: number): ValueType {
  if (unit === '1') return decimal(min, max);
  const read = parseQuantity(`1 ${unit}`);
  if (!read.ok) throw new Fault('campaign/bad-definition', `there is no unit ${unit}`, { values: { unit } });
  return quantity(read.dimension, `${min} ${unit}`, `${max} ${unit}`);
}

const SECONDARY: Readonly<Record<string, readonly [keyof SecondaryOxygen, SuitConstant | null, string]>> = {
  'secondary-volume': ['volumeM3', 'oxygenVolumeM3', 'volume of the second oxygen pack'],
  'secondary-start-pressure': ['startPressurePa', 'oxygenStartPressurePa', 'its pressure when full, absolute'],
  'secondary-reserve-pressure': ['reservePressurePa', 'oxygenReservePressurePa', 'its pressure that may not be used'],
  'secondary-temperature': ['temperatureK', 'oxygenTemperatureK', 'temperature of its oxygen'],
  'secondary-flow': ['flowKgPerS', null, 'the flow at which it runs out'],
};

export const CONSTANT_WORDS: ReadonlyMap<string, ConstantWord> = new Map<string, ConstantWord>([
  ...(Object.keys(SUIT_CONSTANTS) as SuitConstant[]).map((constant): readonly [string, ConstantWord] => {
    const { unit, min, max, about } = SUIT_CONSTANTS[constant];
    return [wordsOf(constant, unit), { type: typeOf(unit, min, max), unit, about, of: { part: 'primary', constant } }];
  }),
  ...Object.entries(SECONDARY).map(([word, [constant, like, about]]): readonly [string, ConstantWord] => {
    const { unit, min, max } = like === null ? { unit: 'kg/s', min: 1e-7, max: 0.01 } : SUIT_CONSTANTS[like];
    return [word, { type: typeOf(unit, min, max), unit, about, of: { part: 'secondary', constant } }];
  }),
]);

/** The word of an engine's constant; null: no such constant. */
export function wordOfConstant(part: ConstantWord['of']['part'], constant: string): string | null {
  for (const [word, { of }] of CONSTANT_WORDS) if (of.part === part && of.constant === constant) return word;
  return null;
}
