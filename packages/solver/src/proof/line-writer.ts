import type { ProofSink } from '../model/answer.ts';

/** Bytes after which what is written goes to the sink. */
const FULL = 1 << 16;
/** More than a blank, an atom or a number takes. */
const ROOM = 32;

const ZERO = 48;
const BLANK = 32;
const LINE_END = 10;
const MINUS = 45;
const LESS = 60;
const EQUAL = 61;
const GREATER = 62;

/** Puts proof lines together as bytes, digit by digit: a proof has some fifty lines a conflict, and a text a line would cost more than finding them. */
export class LineWriter {
  private readonly sink: ProofSink;
  private bytes = new Uint8Array(2 * FULL);
  private size = 0;
  private lines = 0;

  constructor(sink: ProofSink) {
    this.sink = sink;
  }

  /** Letters of the ASCII range. */
  text(letters: string): void {
    const { length } = letters;
    this.makeRoom(length);
    for (let i = 0; i < length; i++) this.bytes[this.size++] = letters.charCodeAt(i);
  }

  /** A blank and a whole number. */
  word(value: number): void {
    this.makeRoom(ROOM);
    this.bytes[this.size++] = BLANK;
    this.digits(value);
  }

  /** A slash and a whole number. */
  argument(value: number): void {
    this.text('/');
    this.makeRoom(ROOM);
    this.digits(value);
  }

  /** A blank and "variable ≥ bound" or "variable ≤ -bound". */
  atom(side: number, bound: number): void {
    this.makeRoom(ROOM);
    this.bytes[this.size++] = BLANK;
    this.digits(side >> 1);
    this.bytes[this.size++] = (side & 1) === 0 ? GREATER : LESS;
    this.bytes[this.size++] = EQUAL;
    this.digits((side & 1) === 0 ? bound : -bound);
  }

  endLine(): void {
    this.makeRoom(1);
    this.bytes[this.size++] = LINE_END;
    this.lines++;
    if (this.size >= FULL) this.flush();
  }

  /** Give the sink what it has not got yet. Only between lines. */
  flush(): void {
    if (this.lines === 0) return;
    this.sink.write(this.bytes.slice(0, this.size), this.lines);
    this.size = 0;
    this.lines = 0;
  }

  private digits(value: number): void {
    const { bytes } = this;
    let rest = value;
    if (value < 0) {
      bytes[this.size++] = MINUS;
      rest = -value;
    }
    let end = this.size + 1;
    for (let power = 10; power <= rest; power *= 10) end++;
    this.size = end;
    do {
      const tenth = Math.floor(rest / 10);
      bytes[--end] = ZERO + rest - 10 * tenth;
      rest = tenth;
    } while (rest > 0);
  }

  private makeRoom(letters: number): void {
    if (this.size + letters <= this.bytes.length) return;
    const grown = new Uint8Array(2 * (this.bytes.length + letters));
    grown.set(this.bytes);
    this.bytes = grown;
  }
}
