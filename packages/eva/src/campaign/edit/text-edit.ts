/**
 * An edit of a campaign text: one stretch replaced by another. All other bytes stay, so comments and layout survive. Applying
 * one gives the edit that takes it back.
 */
import { Fault } from '@handrail/quantity/fault';

export interface CampaignText {
  readonly name: string;
  readonly text: string;
}

export interface TextEdit {
  /** Name of the file. */
  readonly file: string;
  /** UTF-16 offset. */
  readonly at: number;
  readonly remove: string;
  readonly insert: string;
}

/**
 * @returns the files after the edit, and the edit that takes it back
 * @throws Fault `campaign/edit-out-of-date` when the text at that place is not what the edit removes
 */
export function applyEdit(
  files: readonly CampaignText[],
  edit: TextEdit,
): { readonly files: readonly CampaignText[]; readonly inverse: TextEdit } {
  const file = files.find((one) => one.name === edit.file);
  if (file === undefined || !file.text.startsWith(edit.remove, edit.at) || edit.at > file.text.length) {
    throw new Fault('campaign/edit-out-of-date', `the edit of ${edit.file} does not fit its text`, {
      values: { file: edit.file, at: edit.at, remove: edit.remove },
      advice: 'make the edit again from the text as it is now',
    });
  }
  const text = file.text.slice(0, edit.at) + edit.insert + file.text.slice(edit.at + edit.remove.length);
  return {
    files: files.map((one) => (one === file ? { name: one.name, text } : one)),
    inverse: { file: edit.file, at: edit.at, remove: edit.insert, insert: edit.remove },
  };
}
