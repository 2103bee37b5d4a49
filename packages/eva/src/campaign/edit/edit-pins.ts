/** Pins as edits of the text: a drag in the chart, a key, a menu all end here. */
import type { Pin } from '../campaign.ts';
import type { ParsedFile } from '../text/parse-file.ts';
import { formatPet } from '@handrail/quantity/time';
import { findPaths, insertNode, type NodePath, nodeAt, pathOfSpan, removeNode } from './edit-document.ts';
import type { TextEdit } from './text-edit.ts';
import { writeName } from './write-value.ts';

type Without<T> = T extends unknown ? Omit<T, 'span'> : never;
export type NewPin = Without<Pin>;

/** The line of campaign text that says this pin. */
export function writePin(pin: NewPin): string {
  switch (pin.kind) {
    case 'person':
      return `pin ${writeName(pin.stint)} person=${writeName(pin.person)}${pin.role === 'partner' ? ' role=partner' : ''}`;
    case 'start':
      return `pin ${writeName(pin.stint)} start="${formatPet(pin.petS)}"`;
    case 'order':
      return `pin ${writeName(pin.first)} before=${writeName(pin.then)}`;
    case 'eva':
      return `pin ${writeName(pin.task)} eva=${writeName(pin.eva)}`;
    default:
      return `pin ${writeName(pin.task)} out=#true`;
  }
}

/** Adds a pin below the last one of the file, or at its end. */
export function addPin(file: ParsedFile, pin: NewPin): TextEdit {
  const last = pinPaths(file).at(-1);
  return insertNode(file, writePin(pin), last === undefined ? 'end' : { after: last });
}

/** Takes away the pin that stands in this line; null: no pin does. */
export function removePin(file: ParsedFile, pin: Pin): TextEdit | null {
  const path = pathOfSpan(file, pin.span);
  return path === null || nodeAt(file, path).name.name !== 'pin' ? null : removeNode(file, path);
}

/**
 * Some pins taken away and others put in, from one reading of the text.
 * @returns edits to be applied one after another, from the end of the text to its start
 */
export function replacePins(file: ParsedFile, dropped: readonly Pin[], added: readonly NewPin[]): readonly TextEdit[] {
  const gone = new Set(dropped.map((pin) => pathOfSpan(file, pin.span)?.join('.')));
  // What is put in stands below the last pin that stays.
  const last = pinPaths(file).findLast((path) => !gone.has(path.join('.')));
  const where = last === undefined ? 'end' : ({ after: last } as const);
  const puts = added.map((pin) => insertNode(file, writePin(pin), where));
  const cuts = dropped.flatMap((pin) => removePin(file, pin) ?? []);
  // At one place: first what goes; then the last that comes, so that they stand in their order.
  return [...joinCuts(file, cuts), ...puts.reverse()].sort((a, b) => b.at - a.at);
}

/** Two pins of one line may both claim the `;` between them: cuts that overlap become one. */
function joinCuts(file: ParsedFile, cuts: readonly TextEdit[]): readonly TextEdit[] {
  const joined: TextEdit[] = [];
  for (const cut of cuts.toSorted((a, b) => a.at - b.at)) {
    const last = joined.at(-1);
    const end = last === undefined ? -1 : last.at + last.remove.length;
    if (last === undefined || cut.at >= end) joined.push(cut);
    else {
      const to = Math.max(end, cut.at + cut.remove.length);
      joined[joined.length - 1] = { ...last, remove: file.source.text.slice(last.at, to) };
    }
  }
  return joined;
}

function pinPaths(file: ParsedFile): readonly NodePath[] {
  return findPaths(file, (node) => node.name.name === 'pin').filter((path) => path.length === 1);
}
