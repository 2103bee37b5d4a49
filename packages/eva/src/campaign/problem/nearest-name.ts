/**
 * The valid name that a misspelt one most likely stands for: least edit distance (insertions, deletions, substitutions and
 * swaps of neighbours count one each), at most a third of the letters wrong. null where nothing is that near.
 */
export function nearestName(written: string, names: Iterable<string>): string | null {
  if (written.length === 0 || written.length > 60) return null;
  const lower = written.toLowerCase();
  const most = Math.max(1, Math.floor(written.length / 3));
  let best: string | null = null;
  let bestDistance = most + 1;
  for (const name of names) {
    if (Math.abs(name.length - written.length) >= bestDistance) continue;
    const distance = editDistance(lower, name.toLowerCase(), bestDistance);
    if (distance < bestDistance || (distance === bestDistance && best !== null && name < best)) {
      best = name;
      bestDistance = distance;
    }
  }
  return bestDistance <= most ? best : null;
}

/** For a message: the nearest name, or else the list of what would do. `none` stands for an empty list. */
export function nearestOrAll(
  written: string,
  names: readonly string[],
  none: string,
): { readonly nearest: string } | { readonly expected: string } {
  const nearest = nearestName(written, names);
  return nearest === null ? { expected: names.length === 0 ? none : names.join(', ') } : { nearest };
}

/** Optimal string alignment distance; gives up with `limit` once it cannot be below it. */
export function editDistance(a: string, b: string, limit = Number.POSITIVE_INFINITY): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    let least = i;
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let distance = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        distance = Math.min(distance, (beforeLast[j - 2] ?? 0) + 1);
      }
      row.push(distance);
      least = Math.min(least, distance);
    }
    if (least > limit) return limit + 1;
    beforeLast = last;
    last = row;
  }
  return last[b.length] ?? 0;
}
