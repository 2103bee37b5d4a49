import type { ProofSink } from '../model/answer.ts';

const LINES_IN_A_BLOCK = 1024;

/**
 * A proof kept in memory. A line comes in as the parts it was put together from; a thousand of them are made one text at a time, so
 * that what stays takes a byte a letter and nothing that the collector of garbage has to walk through.
 */
export class KeptLines implements ProofSink, Iterable<string> {
  /** How many lines there are. */
  length = 0;
  private readonly full: string[] = [];
  private open: string[] = [];

  write(line: string): void {
    this.length++;
    if (this.open.push(line) < LINES_IN_A_BLOCK) return;
    this.full.push(this.open.join('\n'));
    this.open = [];
  }

  /** The lines in pieces of many, each without a line end after its last. */
  *blocks(): Generator<string, void> {
    yield* this.full;
    if (this.open.length > 0) yield this.open.join('\n');
  }

  *[Symbol.iterator](): Generator<string, void> {
    for (const block of this.full) yield* block.split('\n');
    yield* this.open;
  }
}
