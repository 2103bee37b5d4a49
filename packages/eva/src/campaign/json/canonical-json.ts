/**
 * The campaign as plain data that stands for its meaning: no comments, no layout, properties in the order of their names, the
 * version node left out, files one after the other. Two texts that differ in nothing else have the same canonical form.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { nodeByName } from '../definition/node-by-name.ts';
import { splitTitle } from '../text/split-title.ts';
import type { Scalar, SourceNode } from '../text/source-node.ts';

export interface CanonicalNode {
  readonly node: string;
  readonly title?: string;
  readonly arguments?: readonly Scalar[];
  readonly properties?: Readonly<Record<string, Scalar>>;
  readonly children?: readonly CanonicalNode[];
}

export function canonicalNode(source: SourceNode): CanonicalNode {
  const { title, arguments: written } = splitTitle(nodeByName(source.name), source.entries);
  const args = written.map((entry) => entry.value);
  const properties = source.entries
    .flatMap((entry) => (entry.name === null ? [] : [[entry.name, entry.value] as const]))
    .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  return {
    node: source.name,
    ...(title === null ? {} : { title }),
    ...(args.length > 0 ? { arguments: args } : {}),
    ...(properties.length > 0 ? { properties: Object.fromEntries(properties) } : {}),
    ...(source.children.length > 0 ? { children: source.children.map(canonicalNode) } : {}),
  };
}

/** SHA-256, hex, of the canonical form. */
export function documentHash(nodes: readonly SourceNode[]): string {
  const canonical = nodes.filter((node) => node.name !== 'handrail').map(canonicalNode);
  return bytesToHex(sha256(utf8ToBytes(JSON.stringify({ format: 'handrail-campaign', version: 1, nodes: canonical }))));
}
