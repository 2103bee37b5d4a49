/** Where text goes: answers to stdout, progress and complaints to stderr. */
import pc from 'picocolors';

export function print(text: string): void {
  process.stdout.write(text.endsWith('\n') ? text : `${text}\n`);
}

export function complain(text: string): void {
  process.stderr.write(text.endsWith('\n') ? text : `${text}\n`);
}

export function printJson(value: unknown): void {
  print(JSON.stringify(value, null, 2));
}

/** Colours only on a terminal; the word always says it too. */
export function severityWord(severity: string): string {
  if (severity === 'error') return pc.red(severity);
  if (severity === 'warning') return pc.yellow(severity);
  if (severity === 'unknown') return pc.magenta(severity);
  return pc.cyan(severity);
}
