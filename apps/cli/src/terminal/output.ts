/** Where text goes: answers to stdout, progress and complaints to stderr. */
import { textWidth, wrapText } from './wrap-text.ts';

/** Prose is wrapped between words where a person reads it in a terminal; a file gets its lines as they are. */
export function print(text: string): void {
  printRaw(process.stdout.isTTY ? wrapProse(text, textWidth()) : text);
}

/** For what another program reads, or a person copies: nothing is wrapped. */
export function printRaw(text: string): void {
  process.stdout.write(text.endsWith('\n') ? text : `${text}\n`);
}

export function complain(text: string): void {
  process.stderr.write(text.endsWith('\n') ? text : `${text}\n`);
}

let isAnswered = false;

/** Something has been printed as JSON: a second object behind it would make both unreadable. */
export function hasAnswered(): boolean {
  return isAnswered;
}

export function printJson(value: unknown): void {
  isAnswered = true;
  printRaw(JSON.stringify(value, null, 2));
}

/** Tables fit already; a line in colours is longer than it looks. */
export function wrapProse(text: string, width: number): string {
  return text
    .split('\n')
    .map((line) => {
      // oxlint-disable-next-line no-control-regex
      if (line.length <= width || /[│┌└├\u001b]/.test(line)) return line;
      const indent = line.length - line.trimStart().length;
      return line.slice(0, indent) + wrapText(line.trimStart(), width, indent + 2);
    })
    .join('\n');
}
