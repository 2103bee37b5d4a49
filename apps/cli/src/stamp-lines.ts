/** The parts of a stamp in lines for the terminal: ways home by mode, the supplies with least to spare, the level, the age of data. */
import type { Stamp } from '@handrail/eva/proof/claim/prove';
import { supplyWords } from '@handrail/eva/suit/supply-words';
import { formatDuration, formatPet } from '@handrail/quantity/time';
import { boundWords } from './bound-words.ts';

export function stampLines({ parts }: Stamp): readonly string[] {
  if (parts === null) return [];
  const percent = `${Math.round(parts.quantile * 100)} %`;
  const ways = parts.margins.map(({ eva, mode, leastS, atPetS, limit, committedS, unknownS }) => {
    const margin =
      leastS === null || atPetS === null
        ? 'cannot be told'
        : `${boundWords(leastS, committedS + unknownS === 0)}${formatDuration(Math.abs(leastS))} at PET ${formatPet(atPetS)}`;
    const to = limit === null ? 'no limit is stated' : `to PET ${formatPet(limit.petS)}, ${limit.cause}`;
    const gaps = [
      ...(committedS > 0 ? [`no safe stop in reach of somebody for ${formatDuration(committedS)}`] : []),
      ...(unknownS > 0 ? [`unknown for ${formatDuration(unknownS)}`] : []),
    ];
    return `${eva}: way home, ${mode} (${percent}): least margin ${margin}, ${to}${gaps.map((gap) => `; ${gap}`).join('')}`;
  });
  const tightest = new Map<string, (typeof parts.supplies)[number]>();
  for (const one of parts.supplies) {
    const key = `${one.eva}: ${one.person}`;
    const before = tightest.get(key);
    if (before === undefined || (one.lastsUntilS ?? Infinity) < (before.lastsUntilS ?? Infinity))
      tightest.set(key, one);
  }
  const supplies = [...tightest].map(([who, { supply, lastsUntilS, neededUntilS }]) => {
    const lasts = lastsUntilS === null ? 'beyond what was computed' : `until PET ${formatPet(Math.floor(lastsUntilS))}`;
    return `${who}: first to reach its reserve, at ${percent} or more: ${supplyWords(supply)}, ${lasts}; needed until PET ${formatPet(neededUntilS)}`;
  });
  const ages = parts.dataAge.map(({ eva, days }) => `${eva} ${Math.abs(days).toFixed(1)} d`);
  return [
    ...ways,
    ...supplies,
    ...(ages.length === 0 ? [] : [`age of the orbit's elements at the end: ${ages.join(', ')}`]),
    ...parts.level.missing.slice(0, 4).map((words) => `for input level ${parts.level.level + 1}: ${words}`),
  ];
}
