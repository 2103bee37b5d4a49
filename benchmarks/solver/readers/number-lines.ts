/** The numbers on each line of a table, words and signs around them left out; lines without a number are dropped. */
export function numberLines(text: string): number[][] {
  return text
    .split(/\r?\n/)
    .map((line) => (line.match(/-?\d+(\.\d+)?/g) ?? []).map(Number))
    .filter((numbers) => numbers.length > 0);
}
