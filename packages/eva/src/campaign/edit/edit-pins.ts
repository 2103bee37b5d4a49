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

function pinPaths(file: ParsedFile): readonly NodePath[] {
  return findPaths(file, (node) => node.name.name === 'pin').filter((path) => path.length === 1);
}
