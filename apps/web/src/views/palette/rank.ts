import type { Findable } from './findables.ts';

/** Those that have every word; the ones whose title begins with it first, then by the order they came in. */
export function rank(all: readonly Findable[], words: string): readonly Findable[] {
  const wanted = words.toLowerCase().split(/\s+/).filter(Boolean);
  const first = wanted[0];
  if (first === undefined) return all;
  return all
    .flatMap((one, index) => {
      const text = `${one.title} ${one.sort} ${one.more}`.toLowerCase();
      if (!wanted.every((word) => text.includes(word))) return [];
      const title = one.title.toLowerCase();
      const weight = title.startsWith(first) ? 0 : title.includes(` ${first}`) ? 1 : title.includes(first) ? 2 : 3;
      return [{ one, weight, index }];
    })
    .toSorted((a, b) => a.weight - b.weight || a.index - b.index)
    .map(({ one }) => one);
}
