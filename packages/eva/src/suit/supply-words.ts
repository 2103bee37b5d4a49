/** Supplies and their amounts in words, the same in terminal, page and findings. */
import type { SupplyName } from './supply-curve.ts';

const WORDS: Readonly<Record<SupplyName, string>> = {
  oxygen: 'oxygen',
  'carbon-dioxide': 'CO2 absorber',
  water: 'feed water',
  battery: 'battery',
};

export function supplyWords(supply: SupplyName): string {
  return WORDS[supply];
}

/** "0.182 kg", "410 Wh". */
export function amountWords(supply: SupplyName, amount: number): string {
  return stepsWords(supply, Math.round(amount / STEP[supply]));
}

/** What is shown: whole grams, whole watt-hours. */
const STEP: Readonly<Record<SupplyName, number>> = { oxygen: 1e-3, 'carbon-dioxide': 1e-3, water: 1e-3, battery: 3600 };

function stepsWords(supply: SupplyName, steps: number): string {
  return supply === 'battery' ? `${steps} Wh` : `${(steps / 1000).toFixed(3)} kg`;
}

export interface SumWords {
  readonly parts: readonly { readonly what: string; readonly amount: string }[];
  readonly start: string;
  readonly used: string;
  readonly left: string;
  readonly reserve: string;
  readonly margin: string;
}

/**
 * A sum as it is shown, so that it adds up when it is done again by hand: start, parts and reserve are rounded, the largest part takes what
 * rounding leaves, and left and margin follow from what is shown. Each differs from the exact figure by at most two units of the last place.
 */
export function sumWords(
  supply: SupplyName,
  amounts: { readonly start: number; readonly used: number; readonly reserve: number },
  lines: readonly { readonly what: string; readonly amount: number }[],
): SumWords {
  const steps = (amount: number): number => Math.round(amount / STEP[supply]);
  const start = steps(amounts.start);
  const used = steps(amounts.used);
  const reserve = steps(amounts.reserve);
  const rounded = lines.map(({ amount }) => steps(amount));
  const largest = rounded.indexOf(Math.max(...rounded));
  const rest = used - rounded.reduce((sum, one) => sum + one, 0);
  const words = (count: number): string => stepsWords(supply, count);
  return {
    parts: lines.map(({ what }, index) => ({
      what,
      amount: words((rounded[index] ?? 0) + (index === largest ? rest : 0)),
    })),
    start: words(start),
    used: words(used),
    left: words(start - used),
    reserve: words(reserve),
    margin: words(start - used - reserve),
  };
}
