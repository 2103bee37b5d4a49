/** Lines that fit: words are kept whole where they can be, and nothing is ever cut off. */

/** Columns where the output goes to a file or another program. */
const ELSEWHERE = 100;
const NARROWEST = 40;

/** Columns to fill: those of the terminal. */
export function textWidth(columns: number | undefined = process.stdout.columns): number {
  return Math.max(NARROWEST, columns === undefined || columns === 0 ? ELSEWHERE : columns);
}

/**
 * @param text one paragraph
 * @param width columns of each line
 * @param indent columns left free before every line but the first; the first is taken to have them filled already
 */
export function wrapText(text: string, width: number, indent = 0): string {
  const room = Math.max(8, width - indent);
  return wrapLines(text, room).join(`\n${' '.repeat(indent)}`);
}

/** The lines of a paragraph, none longer than `room`. Spaces within a line stay as they are. */
export function wrapLines(text: string, room: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const piece of text.match(/\s*\S+/g) ?? ['']) {
    if (line === '' || line.length + piece.length <= room) line += line === '' ? piece.trimStart() : piece;
    else {
      lines.push(line);
      line = piece.trimStart();
    }
    while (line.length > room) {
      const at = breakIn(line, room);
      lines.push(line.slice(0, at).trimEnd());
      line = line.slice(at);
    }
  }
  return [...lines, line];
}

/** Behind the last stroke or hyphen of an overlong word, or where the room ends. */
function breakIn(word: string, room: number): number {
  const at = Math.max(word.lastIndexOf('/', room - 1), word.lastIndexOf('-', room - 1)) + 1;
  return at > room / 3 ? at : room;
}
