/** The view of a worksite as a sentence of the text, so that everybody opens it with the same eyes. */
import type { Campaign } from '@handrail/eva/campaign/campaign';
import { findPaths, insertNode, pathOfSpan, setProperty } from '@handrail/eva/campaign/edit/edit-document';
import { ProblemList } from '@handrail/eva/campaign/problem/problem';
import { parseFile } from '@handrail/eva/campaign/text/parse-file';
import type { Vector3 } from '@handrail/quantity/vector';
import { change, documentStore } from '../document/document-store.ts';
import { FILE_NAME } from '../document/working-copy.ts';
import { tell } from '../session/session-store.ts';

export function keepView(campaign: Campaign, placeId: string, fromM: Vector3): void {
  const file = parseFile(FILE_NAME, documentStore.getState().copy.text, new ProblemList());
  const place = campaign.vehicle.places.find(({ id }) => id === placeId);
  const path = file.document === null || place === undefined ? null : pathOfSpan(file, place.span);
  if (place === undefined || path === null) {
    tell('The text has a syntax error: mend it first');
    return;
  }
  const words = fromM.map((metres) => `${Math.round(metres * 10) / 10} m`);
  const [own] = findPaths(file, (node) => node.name.name === 'seen-from').filter(
    (one) => one.length === path.length + 1 && path.every((at, index) => one[index] === at),
  );
  const edits =
    own === undefined
      ? [insertNode(file, `seen-from x="${words[0]}" y="${words[1]}" z="${words[2]}"`, { inside: path })]
      : (['z', 'y', 'x'] as const).map((axis, index) => setProperty(file, own, axis, words[2 - index] ?? '0 m'));
  change(`View of ${place.title}`, { edits: [...edits].sort((a, b) => b.at - a.at) });
  tell(`This is now the view of ${place.title}`);
}
