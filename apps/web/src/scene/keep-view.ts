/** The view of a worksite as a sentence of the text, so that everybody opens it with the same eyes. */
import type { Campaign } from '@handrail/eva/campaign/campaign';
import { childPath, insertNode, pathOfSpan, setProperty } from '@handrail/eva/campaign/edit/edit-document';
import type { Vector3 } from '@handrail/quantity/vector';
import { change } from '../document/document-store.ts';
import { editableText } from '../document/editable-text.ts';
import { tell } from '../session/session-store.ts';

export function keepView(campaign: Campaign, placeId: string, fromM: Vector3): void {
  const file = editableText();
  const place = campaign.vehicle.places.find(({ id }) => id === placeId);
  const path = file === null || place === undefined ? null : pathOfSpan(file, place.span);
  if (file === null || place === undefined || path === null) return;
  const [x, y, z] = fromM.map((metres) => `${Math.round(metres * 10) / 10} m`) as [string, string, string];
  const own = childPath(file, path, 'seen-from');
  const edits =
    own === null
      ? [insertNode(file, `seen-from x="${x}" y="${y}" z="${z}"`, { inside: path })]
      : Object.entries({ x, y, z }).map(([axis, words]) => setProperty(file, own, axis, words));
  change(`View of ${place.title}`, { edits: edits.sort((a, b) => b.at - a.at) });
  tell(`This is now the view of ${place.title}`);
}
