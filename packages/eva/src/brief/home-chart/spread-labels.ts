/** Moves label positions apart to at least `gap`, keeping their order (given top-most last) and staying within [top, bottom]. */
export function spreadLabels(wanted: readonly number[], gap: number, top: number, bottom: number): readonly number[] {
  const order = wanted.map((y, index) => ({ y, index })).sort((a, b) => a.y - b.y);
  const placed: number[] = [];
  let least = top;
  for (const entry of order) {
    const y = Math.max(entry.y, least);
    placed.push(y);
    least = y + gap;
  }
  let most = bottom;
  for (let at = placed.length - 1; at >= 0; at--) {
    placed[at] = Math.min(placed[at] as number, most);
    most = (placed[at] as number) - gap;
  }
  const result: number[] = wanted.map(() => 0);
  order.forEach((entry, at) => {
    result[entry.index] = placed[at] as number;
  });
  return result;
}
