/** What the parser complains of, in words for the person who wrote the text. */

/** `task/stint` or `subject/rule` without quotes, where the slash ends the word for the parser. */
export function pathAround(
  text: string,
  at: number,
): { readonly from: number; readonly to: number; readonly text: string } | null {
  let from = at;
  let to = at;
  while (from > 0 && /[A-Za-z0-9/-]/.test(text[from - 1] as string)) from--;
  while (to < text.length && /[A-Za-z0-9/-]/.test(text[to] as string)) to++;
  const path = text.slice(from, to);
  return /^[A-Za-z][A-Za-z0-9-]*\/[A-Za-z][A-Za-z0-9-]*$/.test(path) ? { from, to, text: path } : null;
}

export function lineAround(text: string, at: number): string {
  const from = text.lastIndexOf('\n', Math.max(0, at - 1)) + 1;
  const end = text.indexOf('\n', at);
  return text.slice(from, end < 0 ? text.length : end);
}

/** An odd number of quotes: a text was begun and not ended, and all after it is read inside out. */
function quoteMissing(line: string): boolean {
  const quotes = line.replaceAll('\\\\', '').replaceAll('\\"', '').split('"').length - 1;
  return quotes % 2 === 1;
}

/** The parser speaks of tokens; a lead of spacewalks speaks of words, quotes and braces. */
export function plainWords(message: string, line: string): string {
  const token = /^Unexpected token ("(?:[^"\\]|\\.)*")/.exec(message);
  if (token !== null) {
    const written = JSON.parse(token[1] as string) as string;
    if (written === '}') return 'a brace is closed that was not opened';
    if (quoteMissing(line)) return 'a quote is opened on this line and not closed';
    if (written === '') return 'something is missing at the end of this node';
    return `${written.length > 20 ? 'this text' : JSON.stringify(written)} cannot stand here; text with spaces or signs needs quotes`;
  }
  const character = /^[Uu]nexpected character ("(?:[^"\\]|\\.)*")/.exec(message);
  if (character !== null && quoteMissing(line)) return 'a quote is opened on this line and not closed';
  if (character !== null) return `${character[1]} cannot stand here; text with spaces or signs needs quotes`;
  if (message === 'Invalid node children') return 'a brace is opened and not closed: "}" is missing';
  const keyword = /^[Ii]nvalid keyword "(\w+)"/.exec(message)?.[1];
  if (keyword !== undefined) return `"${keyword}" is written #${keyword}, or in quotes where text is meant`;
  if (message === 'Expected a value') return 'a value is missing after "="';
  if (message.startsWith('Unexpected EOF inside string')) return 'a quote is opened and not closed';
  if (message.startsWith('Strings with single quotes cannot contain')) return 'a quote is not closed on its line';
  if (message.startsWith('Unexpected EOF in multiline comment')) return 'a comment is opened with /* and not closed';
  if (message.startsWith('An unexpected error occurred')) return 'this text is not KDL';
  return message.charAt(0).toLowerCase() + message.slice(1);
}
