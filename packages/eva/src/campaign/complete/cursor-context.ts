/**
 * Where in the text a cursor stands, found without parsing, since the text is broken while somebody writes it: which nodes it
 * is inside of, what the present node already says, and the word that has been begun.
 */
export interface CursorContext {
  /** Names of the enclosing nodes, outermost first. */
  readonly inside: readonly string[];
  /** Name of the node being written; null: its name is still to come, or being written. */
  readonly node: string | null;
  /** Arguments that stand before the cursor, without quotes. */
  readonly arguments: readonly string[];
  /** Properties that stand before the cursor. */
  readonly properties: Readonly<Record<string, string>>;
  /** The property whose value is being written; null: none. */
  readonly property: string | null;
  /** What has been written of the present word, without its quote; its first character is at `from`. */
  readonly begun: string;
  readonly from: number;
  /** In a comment nothing is offered. */
  readonly inComment: boolean;
}

interface OpenNode {
  name: string | null;
  args: string[];
  properties: Record<string, string>;
}

const WORD_END = /[\s{};="()\\]/;

export function cursorContext(text: string, offset: number): CursorContext {
  const end = Math.min(Math.max(0, offset), text.length);
  const inside: string[] = [];
  let node: OpenNode = { name: null, args: [], properties: {} };
  let property: string | null = null;
  let at = 0;
  const answer = (begun: string, from: number, inComment = false): CursorContext => ({
    inside,
    node: node.name,
    arguments: node.args,
    properties: node.properties,
    property,
    begun,
    from,
    inComment,
  });
  const finish = (): void => {
    node = { name: null, args: [], properties: {} };
    property = null;
  };
  while (at < end) {
    const char = text[at] as string;
    if (char === '/' && (text[at + 1] === '/' || text[at + 1] === '*')) {
      const close = text[at + 1] === '/' ? text.indexOf('\n', at) : text.indexOf('*/', at + 2) + 2;
      const after = close < 2 ? text.length : close;
      if (after > end || (text[at + 1] === '/' && after >= end)) return answer('', end, true);
      at = after;
    } else if (char === '\n' || char === ';') {
      finish();
      at++;
    } else if (char === '{') {
      inside.push(node.name ?? '');
      finish();
      at++;
    } else if (char === '}') {
      inside.pop();
      finish();
      at++;
    } else if (char === '=') {
      // The word before it was the name of a property, not a value.
      property = node.args.pop() ?? '';
      at++;
    } else if (/\s/.test(char)) {
      property = null;
      at++;
    } else if (char === '\\') {
      const line = text.indexOf('\n', at);
      at = line < 0 ? end : line + 1;
    } else {
      const quoted = char === '"';
      const from = quoted ? at + 1 : at;
      let stop = from;
      while (
        stop < text.length &&
        (quoted ? text[stop] !== '"' && text[stop] !== '\n' : !WORD_END.test(text[stop] as string))
      ) {
        stop += quoted && text[stop] === '\\' ? 2 : 1;
      }
      if (stop >= end || (quoted && end <= stop)) {
        // In a list of ids in one text, the last of them is the word.
        const written = text.slice(from, end);
        const last = quoted ? written.lastIndexOf(' ') + 1 : 0;
        return answer(written.slice(last), from + last);
      }
      const word = text.slice(from, stop);
      at = quoted && text[stop] === '"' ? stop + 1 : Math.max(stop, at + 1);
      if (property !== null) {
        node.properties[property] = word;
        property = null;
      } else if (node.name === null) node.name = word;
      else node.args.push(word);
    }
  }
  return answer('', end);
}
