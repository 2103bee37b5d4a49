/** Colours only where a person looks at a terminal that has them; a file or another program gets the words alone. */
import pc from 'picocolors';

type Colours = ReturnType<typeof pc.createColors>;

export function coloursOf(stream: { readonly isTTY?: boolean | undefined }, env = process.env): Colours {
  const wanted = stream.isTTY === true && (env['NO_COLOR'] ?? '') === '' && env['TERM'] !== 'dumb';
  return pc.createColors(wanted);
}

/** The word always says it too. */
export function severityWord(severity: string, colours: Colours): string {
  if (severity === 'error') return colours.red(severity);
  if (severity === 'warning') return colours.yellow(severity);
  if (severity === 'unknown') return colours.magenta(severity);
  return colours.cyan(severity);
}
