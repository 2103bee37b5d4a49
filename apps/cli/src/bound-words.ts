/** What stands before a margin: where somewhere no way home is known, the least that is known is no more than a bound. */
export function boundWords(marginS: number, isWhole: boolean): string {
  if (marginS < 0) return isWhole ? 'short by ' : 'short by at least ';
  return isWhole ? '' : 'at most ';
}
