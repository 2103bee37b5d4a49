/** What is edited, versioned and undone: the campaign's text and the plan in hand. Pure; the store keeps it. */
import { applyEdit, type TextEdit } from '@handrail/eva/campaign/edit/text-edit';
import type { Timeline } from '@handrail/eva/timeline/timeline';

export interface WorkingCopy {
  readonly text: string;
  readonly timeline: Timeline | null;
}

/** Edits of the text, one after another; and, where the plan changes, the plan. */
export interface Change {
  readonly edits: readonly TextEdit[];
  readonly timeline?: Timeline | null;
}

/** The text has one file; its name stands in the places of findings. */
export const FILE_NAME = 'campaign.kdl';

/**
 * @returns the copy after the change, and the change that takes it back
 * @throws Fault `campaign/edit-out-of-date` when an edit was made from another text
 */
export function applyChange(
  copy: WorkingCopy,
  change: Change,
): { readonly copy: WorkingCopy; readonly inverse: Change } {
  let files = [{ name: FILE_NAME, text: copy.text }] as readonly { readonly name: string; readonly text: string }[];
  const back: TextEdit[] = [];
  for (const edit of change.edits) {
    const applied = applyEdit(files, edit);
    files = applied.files;
    back.unshift(applied.inverse);
  }
  const text = files[0]?.text ?? '';
  const timeline = change.timeline === undefined ? copy.timeline : change.timeline;
  const inverse: Change = change.timeline === undefined ? { edits: back } : { edits: back, timeline: copy.timeline };
  return { copy: { text, timeline }, inverse };
}

/** One edit that makes one text of another: what is equal at both ends stays. */
export function editBetween(before: string, after: string): TextEdit | null {
  if (before === after) return null;
  let from = 0;
  while (from < before.length && from < after.length && before[from] === after[from]) from++;
  let tail = 0;
  while (tail < before.length - from && tail < after.length - from && before.at(-1 - tail) === after.at(-1 - tail))
    tail++;
  return {
    file: FILE_NAME,
    at: from,
    remove: before.slice(from, before.length - tail),
    insert: after.slice(from, after.length - tail),
  };
}
