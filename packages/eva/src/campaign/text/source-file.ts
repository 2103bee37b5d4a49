/** One file of a campaign: its name, its text, and where its lines begin. */
import type { Span } from '../span.ts';

export interface CampaignFile {
  readonly name: string;
  readonly text: string | Uint8Array;
}

export class SourceFile {
  readonly name: string;
  readonly text: string;
  readonly #lineStarts: readonly number[];

  constructor(name: string, text: string) {
    this.name = name;
    this.text = text;
    const starts = [0];
    for (let at = 0; at < text.length; at++) {
      const code = text.charCodeAt(at);
      if (code === 10 || (code === 13 && text.charCodeAt(at + 1) !== 10)) starts.push(at + 1);
    }
    this.#lineStarts = starts;
  }

  /** Place of the UTF-16 units [from, to). A byte order mark takes no column. */
  span(from: number, to: number): Span {
    let low = 0;
    let high = this.#lineStarts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((this.#lineStarts[middle] as number) <= from) low = middle;
      else high = middle - 1;
    }
    const mark = low === 0 && this.text.charCodeAt(0) === 0xfeff ? 1 : 0;
    const column = Math.max(1, from - (this.#lineStarts[low] as number) + 1 - mark);
    return { file: this.name, line: low + 1, column, length: Math.max(0, to - from) };
  }

  /** Offset of a line and column, both from 1; clamped into the text. */
  offset(line: number, column: number): number {
    const start = this.#lineStarts[Math.min(Math.max(line, 1), this.#lineStarts.length) - 1] as number;
    return Math.min(this.text.length, start + Math.max(0, column - 1));
  }
}
