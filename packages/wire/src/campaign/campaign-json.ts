/**
 * The campaign text as JSON for other programs, and back: node for node, in order, with comments. Layout (indents, blank
 * lines, where a line breaks) is not kept; the meaning and every word of the comments are.
 */
import { nodeByName } from '@handrail/eva/campaign/definition/node-by-name';
import { writeName, writeQuoted, writeValue } from '@handrail/eva/campaign/edit/write-value';
import { FORMAT_VERSION } from '@handrail/eva/campaign/format-version';
import type { ParsedFile } from '@handrail/eva/campaign/text/parse-file';
import type { Scalar, SourceNode } from '@handrail/eva/campaign/text/source-node';
import { splitTitle } from '@handrail/eva/campaign/text/split-title';
import { Fault } from '@handrail/quantity/fault';
import { commentsIn } from './comments-in.ts';

export const CAMPAIGN_FORMAT = 'handrail-campaign';

export interface CampaignJson {
  readonly format: typeof CAMPAIGN_FORMAT;
  readonly version: number;
  readonly files: readonly FileJson[];
}
export interface FileJson {
  readonly name: string;
  readonly nodes: readonly NodeJson[];
  /** Comments below the last node. */
  readonly comments?: readonly string[];
}
export interface NodeJson {
  readonly node: string;
  readonly title?: string;
  readonly arguments?: readonly Scalar[];
  readonly properties?: Readonly<Record<string, Scalar>>;
  readonly children?: readonly NodeJson[];
  readonly comments?: CommentsJson;
}
/** Each with its own signs: "// …", "/* … *\/", "/- …" for a node that is commented out. */
export interface CommentsJson {
  readonly before?: readonly string[];
  /** Between the values of the node. */
  readonly inside?: readonly string[];
  /** Behind it, on its line. */
  readonly after?: readonly string[];
  /** Below its last child. */
  readonly end?: readonly string[];
}

type Kdl = NonNullable<ParsedFile['document']>;
type KdlNode = Kdl['nodes'][number];

/** @throws Fault `wire/broken-text` when a file has a syntax error */
export function campaignToJson(files: readonly ParsedFile[]): CampaignJson {
  return {
    format: CAMPAIGN_FORMAT,
    version: FORMAT_VERSION,
    files: files.map((file) => {
      if (file.document === null) {
        throw new Fault('wire/broken-text', `${file.source.name} has a syntax error`, {
          values: { file: file.source.name },
          advice: 'mend it first: handrail check says where it is',
        });
      }
      const { nodes, trailing } = file.document;
      const below = commentsIn(trailing ?? '');
      return {
        name: file.source.name,
        nodes: nodes.map((node, at) => nodeJson(node, file.nodes[at] as SourceNode)),
        ...(below.length > 0 ? { comments: below } : {}),
      };
    }),
  };
}

function nodeJson(node: KdlNode, source: SourceNode): NodeJson {
  const { title, arguments: written } = splitTitle(nodeByName(source.name), source.entries);
  const properties = source.entries.flatMap((entry) =>
    entry.name === null ? [] : [[entry.name, jsonValue(entry.value)] as const],
  );
  const children = node.children?.nodes ?? [];
  const comments = {
    before: commentsIn(node.leading ?? ''),
    inside: [
      ...node.entries.flatMap((entry) => [entry.leading, entry.equals, entry.trailing]),
      node.beforeChildren,
    ].flatMap((space) => commentsIn(space ?? '')),
    after: commentsIn(node.trailing ?? ''),
    end: commentsIn(node.children?.trailing ?? ''),
  };
  const kept = Object.fromEntries(Object.entries(comments).filter(([, texts]) => texts.length > 0));
  return {
    node: source.name,
    ...(title === null ? {} : { title }),
    ...(written.length > 0 ? { arguments: written.map((entry) => jsonValue(entry.value)) } : {}),
    ...(properties.length > 0 ? { properties: Object.fromEntries(properties) } : {}),
    ...(children.length > 0
      ? { children: children.map((child, at) => nodeJson(child, source.children[at] as SourceNode)) }
      : {}),
    ...(Object.keys(kept).length > 0 ? { comments: kept } : {}),
  };
}

/** JSON has no infinity and no not-a-number; neither has a campaign that reads without problems. */
function jsonValue(value: Scalar): Scalar {
  return typeof value === 'number' && !Number.isFinite(value) ? null : value;
}

const INDENT = '    ';

/** The text of each file. What the JSON says wrongly is found when the text is read. */
export function campaignFromJson(json: CampaignJson): readonly { readonly name: string; readonly text: string }[] {
  return json.files.map((file) => ({
    name: file.name,
    text: [...file.nodes.flatMap((node) => nodeLines(node, '')), ...(file.comments ?? [])]
      .map((line) => `${line}\n`)
      .join(''),
  }));
}

function nodeLines(node: NodeJson, indent: string): readonly string[] {
  const { before = [], inside = [], after = [], end = [] } = node.comments ?? {};
  const parts = [
    writeName(node.node),
    ...(node.arguments ?? []).map(writeValue),
    ...(node.title === undefined ? [] : [writeQuoted(node.title)]),
    ...Object.entries(node.properties ?? {}).map(([name, value]) => `${writeName(name)}=${writeValue(value)}`),
    ...inside.filter((comment) => comment.startsWith('/*')),
  ];
  // A comment to the end of the line has no room inside a line; it goes above.
  const above = [...before, ...inside.filter((comment) => !comment.startsWith('/*'))];
  const tail = after.length === 0 ? '' : ` ${after.join(' ')}`;
  const children = node.children ?? [];
  const head = above.flatMap((comment) => comment.split('\n').map((line) => `${indent}${line.trim()}`));
  if (children.length === 0 && end.length === 0) return [...head, `${indent}${parts.join(' ')}${tail}`];
  return [
    ...head,
    `${indent}${parts.join(' ')} {`,
    ...children.flatMap((child) => nodeLines(child, indent + INDENT)),
    ...end.map((comment) => `${indent}${INDENT}${comment}`),
    `${indent}}${tail}`,
  ];
}
