/** Where text goes: answers to stdout, progress and complaints to stderr. */

export function print(text: string): void {
  process.stdout.write(text.endsWith('\n') ? text : `${text}\n`);
}

export function complain(text: string): void {
  process.stderr.write(text.endsWith('\n') ? text : `${text}\n`);
}

export function printJson(value: unknown): void {
  print(JSON.stringify(value, null, 2));
}
