/**
 * One file from text to nodes with places. Syntax errors are problems, as many as there are: after the first, each top-level
 * node is parsed alone.
 */
import {
  type Document,
  type Entry,
  getLocation,
  type Identifier,
  InvalidKdlError,
  type Node,
  parse,
  type Value,
} from '@bgotink/kdl';
import type { ProblemList } from '../problem/problem.ts';
import { scanStructure, type Structure } from './scan-structure.ts';
import { SourceFile } from './source-file.ts';
import { lineAround, pathAround, plainWords } from './syntax-words.ts';
import type { SourceEntry, SourceNode } from './source-node.ts';

/** task > stint > with > step is four; nobody writes more than a few. */
export const DEEPEST_NESTING = 32;

export interface ParsedFile {
  readonly source: SourceFile;
  /** With comments and layout; null when the file has a syntax error. */
  readonly document: Document | null;
  readonly nodes: readonly SourceNode[];
  /** Characters handed to the parser, the second look at a broken file included: the measure of its work. */
  readonly parsedCharacters: number;
}

export function parseFile(name: string, text: string, problems: ProblemList): ParsedFile {
  const source = new SourceFile(name, text);
  const structure = scanStructure(text, DEEPEST_NESTING);
  if (structure.tooDeepAt !== null) {
    problems.add(
      'too-deep',
      source.span(structure.tooDeepAt, structure.tooDeepAt + 1),
      `braces nest ${structure.deepest} deep`,
      { expected: `at most ${DEEPEST_NESTING}` },
    );
    return { source, document: null, nodes: [], parsedCharacters: 0 };
  }
  const document = parseKdl(text);
  if (document instanceof InvalidKdlError) {
    return { source, document: null, ...parsePieces(source, structure, document, problems) };
  }
  return {
    source,
    document,
    nodes: document.nodes.map((node) => sourceNode(node, source, 0)),
    parsedCharacters: text.length,
  };
}

/** The parser throws its own error for text that is not KDL; a few endings of a text make it trip over itself instead. */
function parseKdl(text: string): Document | InvalidKdlError {
  try {
    return parse(text, { storeLocations: true });
  } catch (error) {
    if (error instanceof InvalidKdlError) return error;
    return new InvalidKdlError('this text ends in the middle of a word or a value', { cause: error });
  }
}

/** What can still be read of a broken file, and every syntax error in it. */
function parsePieces(
  source: SourceFile,
  structure: Structure,
  whole: InvalidKdlError,
  problems: ProblemList,
): Pick<ParsedFile, 'nodes' | 'parsedCharacters'> {
  const nodes: SourceNode[] = [];
  let parsedCharacters = source.text.length;
  let broken = 0;
  let from = 0;
  for (const end of structure.pieceEnds) {
    parsedCharacters += end - from;
    const piece = parseKdl(source.text.slice(from, end));
    if (piece instanceof InvalidKdlError) {
      broken++;
      for (const one of piece.flat()) addSyntaxProblem(one, source, structure, from, end, problems);
      if (broken > 100) break;
    } else for (const node of piece.nodes) nodes.push(sourceNode(node, source, from));
    from = end;
  }
  if (broken === 0)
    for (const one of whole.flat()) addSyntaxProblem(one, source, structure, 0, source.text.length, problems);
  return { nodes, parsedCharacters };
}

function addSyntaxProblem(
  error: InvalidKdlError,
  source: SourceFile,
  structure: Structure,
  from: number,
  end: number,
  problems: ProblemList,
): void {
  // Errors inside a string carry no token: their place stands only in the message.
  const written = / at (\d+):(\d+)$/.exec(error.message);
  const base = source.span(from, from);
  let offset = end;
  if (error.start !== undefined) offset = from + error.start.offset;
  else if (written !== null) {
    const line = Number(written[1]);
    offset = source.offset(base.line + line - 1, Number(written[2]) + (line === 1 ? base.column - 1 : 0));
  }
  const message = error.message.replace(/ at (\d+:\d+|end of input)$/, '');
  // A brace that is never closed is noticed at the end of the file, and missing somewhere after it was opened.
  const at =
    message === 'Invalid node children' && structure.unclosedAt !== null ? structure.unclosedAt : Math.min(offset, end);
  const path = pathAround(source.text, at);
  if (path !== null) {
    problems.add('syntax', source.span(path.from, path.to), `${path.text} needs quotes: it has a "/" in it`, {
      expected: `"${path.text}"`,
    });
  } else problems.add('syntax', source.span(at, at), plainWords(message, lineAround(source.text, at)));
}

function sourceNode(node: Node, source: SourceFile, base: number): SourceNode {
  const nameSpan = spanOf(node.name, source, base);
  const last = node.entries.at(-1);
  const start = (getLocation(node.name)?.start.offset ?? 0) + base;
  const end = (getLocation(last ?? node.name)?.end.offset ?? 0) + base;
  return {
    name: node.name.name,
    nameSpan,
    span: source.span(start, end),
    entries: node.entries.map((entry) => sourceEntry(entry, source, base)),
    children: node.children === null ? [] : node.children.nodes.map((child) => sourceNode(child, source, base)),
    annotation: node.tag?.name ?? null,
    template: null,
  };
}

function sourceEntry(entry: Entry, source: SourceFile, base: number): SourceEntry {
  const written = entry.value.representation;
  return {
    name: entry.name?.name ?? null,
    nameSpan: entry.name === null ? null : spanOf(entry.name, source, base),
    value: entry.value.value,
    valueSpan: spanOf(entry.value, source, base),
    quoted: written !== undefined && /^#*"/.test(written),
    annotation: entry.value.tag?.name ?? null,
  };
}

function spanOf(part: Value | Identifier, source: SourceFile, base: number): ReturnType<SourceFile['span']> {
  const location = getLocation(part);
  return location === undefined
    ? source.span(base, base)
    : source.span(base + location.start.offset, base + location.end.offset);
}
