/**
 * A look at the text before it is parsed, in one loop without recursion: how deep braces nest and where each top-level node
 * ends. The parser recurses per brace, so that depth must be known first; and after a syntax error the pieces between
 * top-level nodes are parsed one by one, so that one broken node does not hide the mistakes of the next.
 */
export interface Structure {
  readonly deepest: number;
  /** Offset of the brace that first exceeds `depthLimit`; null: none does. */
  readonly tooDeepAt: number | null;
  /** Offsets just after each top-level node, ascending; the last is the length of the text. */
  readonly pieceEnds: readonly number[];
  /** The outermost brace that is never closed; null: all are. */
  readonly unclosedAt: number | null;
}

export function scanStructure(text: string, depthLimit: number): Structure {
  const pieceEnds: number[] = [];
  const open: number[] = [];
  let deepest = 0;
  let tooDeepAt: number | null = null;
  let at = 0;
  while (at < text.length) {
    const char = text[at];
    if (char === '{') {
      open.push(at);
      if (open.length > deepest) deepest = open.length;
      if (open.length > depthLimit && tooDeepAt === null) tooDeepAt = at;
      at++;
    } else if (char === '}') {
      open.pop();
      at++;
    } else if (char === '"') {
      at = afterString(text, at, 0);
    } else if (char === '#' && /["#]/.test(text[at + 1] ?? '')) {
      at = afterRawString(text, at);
    } else if (char === '/' && text[at + 1] === '/') {
      at = endOfLine(text, at);
    } else if (char === '/' && text[at + 1] === '*') {
      at = afterComment(text, at);
    } else if (char === '\\') {
      at = afterContinuation(text, at);
    } else {
      if (open.length === 0 && (char === '\n' || char === ';')) pieceEnds.push(at + 1);
      at++;
    }
  }
  if (pieceEnds.at(-1) !== text.length) pieceEnds.push(text.length);
  return { deepest, tooDeepAt, pieceEnds, unclosedAt: open[0] ?? null };
}

function endOfLine(text: string, from: number): number {
  const end = text.indexOf('\n', from);
  return end < 0 ? text.length : end;
}

/** A string that is not closed on its line ends there, so that the rest of the file is still looked at. */
function afterString(text: string, from: number, hashes: number): number {
  const triple = text.startsWith('"""', from);
  const close = (triple ? '"""' : '"') + '#'.repeat(hashes);
  let at = from + (triple ? 3 : 1);
  while (at < text.length) {
    if (hashes === 0 && text[at] === '\\') at += 2;
    else if (text.startsWith(close, at)) return at + close.length;
    else if (!triple && text[at] === '\n') return at;
    else at++;
  }
  return text.length;
}

function afterRawString(text: string, from: number): number {
  let at = from;
  while (text[at] === '#') at++;
  return text[at] === '"' ? afterString(text, at, at - from) : at;
}

function afterComment(text: string, from: number): number {
  let depth = 1;
  let at = from + 2;
  while (at < text.length && depth > 0) {
    if (text[at] === '/' && text[at + 1] === '*') {
      depth++;
      at += 2;
    } else if (text[at] === '*' && text[at + 1] === '/') {
      depth--;
      at += 2;
    } else at++;
  }
  return at;
}

/** A backslash joins the next line to this one. */
function afterContinuation(text: string, from: number): number {
  let at = from + 1;
  while (text[at] === ' ' || text[at] === '\t' || text[at] === '\r') at++;
  if (text[at] === '/' && text[at + 1] === '/') at = endOfLine(text, at);
  return text[at] === '\n' ? at + 1 : from + 1;
}
