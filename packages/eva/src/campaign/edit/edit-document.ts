/**
 * Edits of a campaign text: set or take away a property, insert a node, remove a node. Each is computed from the parsed text
 * and touches only the bytes that it must.
 */
import { type Document, type Entry, getLocation, type Node } from '@bgotink/kdl';
import { Fault } from '@handrail/quantity/fault';
import type { Span } from '../span.ts';
import type { ParsedFile } from '../text/parse-file.ts';
import type { Scalar, SourceNode } from '../text/source-node.ts';
import type { TextEdit } from './text-edit.ts';
import { writeName, writeValue } from './write-value.ts';

/** Indices from the top of the file: [3, 0] is the first child of the fourth node. */
export type NodePath = readonly number[];

/** @throws Fault `campaign/no-such-node` */
export function nodeAt(file: ParsedFile, path: NodePath): Node {
  let nodes = documentOf(file).nodes;
  let node: Node | undefined;
  for (const index of path) {
    node = nodes[index];
    nodes = node?.children?.nodes ?? [];
  }
  if (node === undefined) {
    throw new Fault('campaign/no-such-node', `${file.source.name} has no node ${path.join('.')}`, { values: { path } });
  }
  return node;
}

/** Paths of all nodes, outer before inner, for which `wanted` holds. */
export function findPaths(file: ParsedFile, wanted: (node: Node) => boolean): readonly NodePath[] {
  const found: NodePath[] = [];
  const walk = (nodes: readonly Node[], above: NodePath): void => {
    for (const [index, node] of nodes.entries()) {
      const path = [...above, index];
      if (wanted(node)) found.push(path);
      walk(node.children?.nodes ?? [], path);
    }
  };
  walk(documentOf(file).nodes, []);
  return found;
}

/** The node that a part of the campaign was read from, by the part's span; null: no node of this file begins there. */
export function pathOfSpan(file: ParsedFile, span: Span): NodePath | null {
  if (span.file !== file.source.name) return null;
  const walk = (nodes: readonly SourceNode[], above: NodePath): NodePath | null => {
    for (const [index, node] of nodes.entries()) {
      const path = [...above, index];
      if (node.span.line === span.line && node.span.column === span.column) return path;
      const inner = walk(node.children, path);
      if (inner !== null) return inner;
    }
    return null;
  };
  return walk(file.nodes, []);
}

/** The first child of this name; null: there is none. */
export function childPath(file: ParsedFile, path: NodePath, name: string): NodePath | null {
  const index = nodeAt(file, path).children?.nodes.findIndex((node) => node.name.name === name) ?? -1;
  return index < 0 ? null : [...path, index];
}

/** Sets a property; null takes it away. A new one goes behind the last value of the node. */
export function setProperty(file: ParsedFile, path: NodePath, name: string, value: Scalar): TextEdit {
  const node = nodeAt(file, path);
  const entry = node.entries.findLast((one) => one.name?.name === name);
  const { text } = file.source;
  if (entry === undefined) {
    const at = end(node.entries.at(-1) ?? node.name);
    return edit(file, at, at, value === null ? '' : ` ${writeName(name)}=${writeValue(value)}`);
  }
  if (value === null) {
    let from = start(entry);
    while (text[from - 1] === ' ' || text[from - 1] === '\t') from--;
    return edit(file, from, end(entry), '');
  }
  return edit(file, start(entry.value), end(entry.value), writeValue(value));
}

/**
 * Sets the index-th argument, or adds it behind the last one; null takes it away.
 * @param write how the value is written: a title keeps its quotes
 */
export function setArgument(
  file: ParsedFile,
  path: NodePath,
  index: number,
  value: Scalar,
  write: (value: Scalar) => string = writeValue,
): TextEdit {
  const node = nodeAt(file, path);
  const given = node.entries.filter((one) => one.name === null);
  const entry = given[index];
  const { text } = file.source;
  if (entry === undefined) {
    const at = end(given.at(-1) ?? node.name);
    return edit(file, at, at, value === null ? '' : ` ${write(value)}`);
  }
  if (value === null) {
    let from = start(entry);
    while (text[from - 1] === ' ' || text[from - 1] === '\t') from--;
    return edit(file, from, end(entry), '');
  }
  return edit(file, start(entry.value), end(entry.value), write(value));
}

/**
 * Inserts one node, given as text without indent or line end.
 * @param where after a node; or as the last inside one; or at the end of the file
 */
export function insertNode(
  file: ParsedFile,
  node: string,
  where: { readonly after: NodePath } | { readonly inside: NodePath } | 'end',
): TextEdit {
  const { text } = file.source;
  if (where === 'end') {
    const gap = text === '' || text.endsWith('\n') ? '' : lineEnd(text);
    return edit(file, text.length, text.length, `${gap}${node}${lineEnd(text)}`);
  }
  if ('after' in where) {
    const before = nodeAt(file, where.after);
    const indent = indentOf(text, start(before.name));
    const at = lineRest(text, end(before));
    // A node in the middle of a line is followed on that line; else on a line of its own, behind the comment that ends it.
    if (at === null) return edit(file, end(before), end(before), `; ${node}`);
    return edit(file, at, at, `${lineEnd(text)}${indent}${node}`);
  }
  const parent = nodeAt(file, where.inside);
  const outer = indentOf(text, start(parent.name));
  const inner = `${outer}${indentStep(file)}`;
  if (parent.children === null) {
    const at = end(parent.entries.at(-1) ?? parent.name);
    return edit(file, at, at, ` {${lineEnd(text)}${inner}${node}${lineEnd(text)}${outer}}`);
  }
  const brace = text.lastIndexOf('}', end(parent) - 1);
  const last = parent.children.nodes.at(-1);
  const oneLine = !text.slice(start(parent.name), brace).includes('\n');
  if (oneLine) {
    const back = trailingSpace(text, brace);
    const separator = last === undefined || text[back - 1] === ';' ? ' ' : '; ';
    return edit(file, back, brace, `${separator}${node} `);
  }
  const at = trailingSpace(text, brace);
  const step = last === undefined ? inner : indentOf(text, start(last.name));
  return edit(file, at, brace, `${lineEnd(text)}${step}${node}${text.slice(text.lastIndexOf('\n', brace), brace)}`);
}

/** Removes a node with its line, when it has one for itself. Comments above it stay. */
export function removeNode(file: ParsedFile, path: NodePath): TextEdit {
  const node = nodeAt(file, path);
  const { text } = file.source;
  let from = start(node.name);
  let to = end(node);
  const rest = lineRest(text, to);
  const lineStart = text.lastIndexOf('\n', from - 1) + 1;
  const alone = text.slice(lineStart, from).trim() === '' && rest !== null;
  if (alone) {
    from = lineStart;
    to = text[rest] === '\r' ? rest + 2 : Math.min(text.length, rest + 1);
    return edit(file, from, to, '');
  }
  const following = /^[ \t]*;[ \t]*/.exec(text.slice(to));
  if (following !== null) to += following[0].length;
  else while (from > 0 && /[ \t;]/.test(text[from - 1] as string)) from--;
  return edit(file, from, to, '');
}

function documentOf(file: ParsedFile): Document {
  if (file.document === null) {
    throw new Fault(
      'campaign/no-such-node',
      `${file.source.name} has syntax errors and cannot be edited by the program`,
      {
        advice: 'mend the syntax errors first',
      },
    );
  }
  return file.document;
}

type Located = Node | Entry | Node['name'] | Entry['value'];
function start(part: Located): number {
  return getLocation(part)?.start.offset ?? 0;
}
function end(part: Located): number {
  const location = getLocation(part);
  return location?.end.offset ?? 0;
}

function edit(file: ParsedFile, from: number, to: number, insert: string): TextEdit {
  return { file: file.source.name, at: from, remove: file.source.text.slice(from, to), insert };
}

/** Offset of the line's end when only space, `;` and a comment follow; null when another node does, or a block goes on. */
function lineRest(text: string, from: number): number | null {
  const rest = /[ \t]*;?[ \t]*(\/\/[^\n]*)?(?=\r?\n|$)/y;
  rest.lastIndex = from;
  const match = rest.exec(text);
  if (match === null) return null;
  const at = from + match[0].length;
  return match[0].endsWith('\r') ? at - 1 : at;
}

function indentOf(text: string, at: number): string {
  const lineStart = text.lastIndexOf('\n', at - 1) + 1;
  return /^[ \t]*/.exec(text.slice(lineStart, at))?.[0] ?? '';
}

/** The indent of the first indented line of the file; 4 spaces where there is none. */
function indentStep(file: ParsedFile): string {
  return /\n([ \t]+)\S/.exec(file.source.text)?.[1] ?? '    ';
}

function lineEnd(text: string): string {
  return text.includes('\r\n') ? '\r\n' : '\n';
}

function trailingSpace(text: string, at: number): number {
  let back = at;
  while (back > 0 && /[ \t\r\n]/.test(text[back - 1] as string)) back--;
  return back;
}
