/** A stint cut in two between two of its sentences: the text keeps every word, the second part follows the first. */
import type { Campaign, Stint } from '../campaign.ts';
import { nodeByName } from '../definition/node-by-name.ts';
import type { ParsedFile } from '../text/parse-file.ts';
import type { SourceNode } from '../text/source-node.ts';
import { insertNode, pathOfSpan } from './edit-document.ts';
import type { TextEdit } from './text-edit.ts';
import { writeName, writeQuoted, writeValue } from './write-value.ts';

export interface StintSplit {
  /** To be applied one after another. */
  readonly edits: readonly TextEdit[];
  /** Key of the second part. */
  readonly second: string;
}

/**
 * Sentences of index `step` and on go to the second part; the minutes are shared by the planning figures of the sentences. What
 * rests on the whole stint (joins, orders, windows, written needs and leaves) cannot be shared out by rote: then it is refused.
 * @returns the edits, or why not
 */
export function splitStint(
  file: ParsedFile,
  campaign: Campaign,
  stint: Stint,
  step: number,
): StintSplit | { readonly refused: string } {
  const path = file.document === null ? null : pathOfSpan(file, stint.span);
  if (path === null) return { refused: 'the text has a syntax error: mend it first' };
  if (stint.template !== null) return { refused: `it comes from the template ${stint.template}: write it out first` };
  if (step <= 0 || step >= stint.steps.length) return { refused: 'a part would have no sentence' };
  const why = restsOnWhole(campaign, stint);
  if (why !== null) return { refused: why };
  const node = path.reduce<SourceNode | undefined>(
    (found, index, depth) => (depth === 0 ? file.nodes[index] : found?.children[index]),
    undefined,
  );
  if (node === undefined) return { refused: 'its place in the text is not found' };
  const { text } = file.source;
  const words = (one: SourceNode): string =>
    text.slice(file.source.offset(one.span.line, one.span.column)).slice(0, lengthOf(text, file, one));
  const sentences = node.children.filter(({ name }) => nodeByName(name) === null || name === 'safe-stop');
  const ownSentences = sentences.filter(({ name }) => name !== 'safe-stop');
  const firstMoved = ownSentences[step];
  if (firstMoved === undefined || ownSentences.length !== stint.steps.length)
    return { refused: 'sentences inside "with" are shared by hand' };
  const moved = sentences.slice(sentences.indexOf(firstMoved));
  const id = freeId(campaign, stint);
  const total = stint.duration.stepsS.reduce((sum, seconds) => sum + seconds, 0);
  const share = stint.duration.stepsS.slice(step).reduce((sum, seconds) => sum + seconds, 0) / Math.max(1, total);
  const entries = node.entries
    .filter(({ name }) => name !== null)
    .map(({ name, value }) => `${writeName(name ?? '')}=${writeValue(value)}`);
  const head = ['stint', writeName(id), writeQuoted(`${stint.title}, second part`), ...entries].join(' ');
  const minutes = node.children.find(({ name }) => name === 'minutes');
  const inner = [...moved.map(words), ...(minutes === undefined ? [] : [minutesWords(minutes, share)])];
  const indent = /[ \t]*$/.exec(text.slice(0, file.source.offset(node.span.line, node.span.column)))?.[0] ?? '';
  const second = `${head} {\n${inner.map((line) => `${indent}    ${line}`).join('\n')}\n${indent}}`;
  const edits: TextEdit[] = [insertNode(file, second, { after: path })];
  for (const one of moved) edits.push(cut(file, one));
  if (minutes !== undefined) {
    const at = file.source.offset(minutes.span.line, minutes.span.column);
    edits.push({
      file: file.source.name,
      at,
      remove: text.slice(at, at + lengthOf(text, file, minutes)),
      insert: minutesWords(minutes, 1 - share),
    });
  }
  return { edits: edits.sort((a, b) => b.at - a.at), second: `${stint.task}/${id}` };
}

function restsOnWhole(campaign: Campaign, stint: Stint): string | null {
  const others = campaign.tasks
    .flatMap((task) => task.stints)
    .filter(({ after }) => after.some((one) => one.stint === stint.key));
  if (others[0] !== undefined) return `"${others[0].title}" waits for its end: say by hand which part it waits for`;
  const join = campaign.tasks
    .flatMap((task) => task.joins)
    .find(({ releases, waits }) => releases === stint.key || waits === stint.key);
  if (join !== undefined) return `the join "${join.title}" is tied to it: say by hand to which part`;
  if (stint.windowUses.length > 0) return 'windows are asked for it: say by hand for which part';
  if (stint.needs.length + stint.leaves.length > 0)
    return 'needs or leaves are written for it: say by hand for which part';
  if (stint.after.length > 0) return 'it waits for another stint: say by hand which part does';
  const pin = campaign.pins.find(
    (one) =>
      ('stint' in one && one.stint === stint.key) ||
      ('first' in one && (one.first === stint.key || one.then === stint.key)),
  );
  if (pin !== undefined) return 'it is pinned: take its pins away first';
  const isShared =
    stint.roles.some(({ at, to }) => at !== to) || stint.roles.some(({ startOn, endOn }) => startOn !== endOn);
  return isShared ? 'it ends elsewhere than it begins: split it by hand' : null;
}

function freeId(campaign: Campaign, stint: Stint): string {
  const taken = new Set(campaign.tasks.flatMap((task) => task.stints.map(({ key }) => key)));
  for (let count = 2; ; count++) {
    const id = `${stint.id}-part-${count}`;
    if (!taken.has(`${stint.task}/${id}`)) return id;
  }
}

/** Rounded to tenths of a minute; never less than one. */
function minutesWords(minutes: SourceNode, share: number): string {
  const part = (value: unknown): unknown =>
    typeof value === 'number' ? Math.max(0.1, Math.round(value * share * 10) / 10) : value;
  return [
    'minutes',
    ...minutes.entries.map(
      ({ name, value }) => `${name === null ? '' : `${name}=`}${writeValue(part(value) as never)}`,
    ),
  ].join(' ');
}

/** A node ends with its last entry; none that is moved has a block of its own. */
function lengthOf(text: string, file: ParsedFile, node: SourceNode): number {
  const from = file.source.offset(node.span.line, node.span.column);
  const last = node.entries.at(-1);
  const span = last?.valueSpan ?? node.nameSpan;
  const end = file.source.offset(span.line, span.column) + span.length;
  return Math.min(text.length, end) - from;
}

/** A sentence with its line, where it has one for itself; else with the separator behind it. */
function cut(file: ParsedFile, node: SourceNode): TextEdit {
  const { text, name } = file.source;
  let from = file.source.offset(node.span.line, node.span.column);
  let to = from + lengthOf(text, file, node);
  const lineStart = text.lastIndexOf('\n', from - 1) + 1;
  const rest = /^[ \t]*;?[ \t]*(?:\/\/[^\n]*)?(?:\r?\n|$)/.exec(text.slice(to));
  if (text.slice(lineStart, from).trim() === '' && rest !== null) {
    from = lineStart;
    to += rest[0].length;
  } else to += /^[ \t]*;?[ \t]*/.exec(text.slice(to))?.[0].length ?? 0;
  return { file: name, at: from, remove: text.slice(from, to), insert: '' };
}
