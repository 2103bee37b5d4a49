import type { ProofSink } from '../model/answer.ts';

/** As many letters as an argument list takes without trouble. */
const LETTERS_AT_ONCE = 8192;

/** A proof kept in memory as the bytes that came in, which the collector of garbage has no reason to walk through; lines are made of them when they are read. */
export class KeptLines implements ProofSink, Iterable<string> {
  /** How many lines there are. */
  length = 0;
  private readonly kept: Uint8Array[] = [];

  write(text: Uint8Array, lines: number): void {
    this.kept.push(text);
    this.length += lines;
  }

  /** The text in pieces of whole lines. */
  pieces(): readonly Uint8Array[] {
    return this.kept;
  }

  *[Symbol.iterator](): Generator<string, void> {
    for (const piece of this.kept) {
      const lines = lettersOf(piece).split('\n');
      // After the last line end stands nothing, unless a file was cut off there.
      if (lines.at(-1) === '') lines.pop();
      yield* lines;
    }
  }
}

function lettersOf(bytes: Uint8Array): string {
  let letters = '';
  for (let at = 0; at < bytes.length; at += LETTERS_AT_ONCE) {
    letters += String.fromCharCode(...bytes.subarray(at, at + LETTERS_AT_ONCE));
  }
  return letters;
}
