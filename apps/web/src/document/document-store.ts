/** The document in hand. It changes by pure changes only, each of which can be taken back; nothing else writes to it. */
import { createStore } from 'zustand/vanilla';
import { applyChange, type Change, type WorkingCopy } from './working-copy.ts';

interface Step {
  readonly label: string;
  readonly atMs: number;
  readonly undo: Change;
  readonly redo: Change;
}

export interface SavedVersion {
  readonly number: number;
  readonly author: string;
  readonly atUtcMs: number;
  readonly message: string;
  readonly copy: WorkingCopy;
}

export interface DocumentState {
  /** null: no campaign is open. */
  readonly campaignId: string | null;
  readonly copy: WorkingCopy;
  /** Grows with every change; results name the revision that they are of. */
  readonly revision: number;
  readonly saved: SavedVersion | null;
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

/** Typing within this time is one step. */
const ONE_STEP_MS = 1200;
const MOST_STEPS = 500;

const EMPTY: DocumentState = {
  campaignId: null,
  copy: { text: '', timeline: null },
  revision: 0,
  saved: null,
  past: [],
  future: [],
};

export const documentStore = createStore<DocumentState>()(() => EMPTY);

/** Opens a campaign: what was open before is left, with its history. */
export function openDocument(campaignId: string | null, saved: SavedVersion | null, copy?: WorkingCopy): void {
  documentStore.setState((was) => ({
    campaignId,
    saved,
    copy: copy ?? saved?.copy ?? EMPTY.copy,
    revision: was.revision + 1,
    past: [],
    future: [],
  }));
}

/** @param joins steps of this label that follow closely become one step: typing */
export function change(label: string, made: Change, joins = false): void {
  const was = documentStore.getState();
  const { copy, inverse } = applyChange(was.copy, made);
  if (copy.text === was.copy.text && copy.timeline === was.copy.timeline) return;
  const atMs = Date.now();
  const last = was.past.at(-1);
  const isJoined = joins && last?.label === label && atMs - last.atMs < ONE_STEP_MS;
  const step: Step = isJoined
    ? {
        label,
        atMs,
        undo: { ...last.undo, edits: [...inverse.edits, ...last.undo.edits] },
        redo: { ...last.redo, edits: [...last.redo.edits, ...made.edits] },
      }
    : { label, atMs, undo: inverse, redo: made };
  const past = [...(isJoined ? was.past.slice(0, -1) : was.past), step].slice(-MOST_STEPS);
  documentStore.setState({ copy, revision: was.revision + 1, past, future: [] });
}

export function undo(): string | null {
  const was = documentStore.getState();
  const step = was.past.at(-1);
  if (step === undefined) return null;
  const { copy } = applyChange(was.copy, step.undo);
  documentStore.setState({
    copy,
    revision: was.revision + 1,
    past: was.past.slice(0, -1),
    future: [step, ...was.future],
  });
  return step.label;
}

export function redo(): string | null {
  const was = documentStore.getState();
  const [step, ...future] = was.future;
  if (step === undefined) return null;
  const { copy } = applyChange(was.copy, step.redo);
  documentStore.setState({ copy, revision: was.revision + 1, past: [...was.past, { ...step, atMs: 0 }], future });
  return step.label;
}

/** The server has acknowledged this version of what is in hand; what was changed since stays changed. */
export function markSaved(saved: SavedVersion): void {
  documentStore.setState({ saved });
}

/** Something is in hand that no version holds. */
export function hasUnsaved({ copy, saved }: DocumentState): boolean {
  return saved === null ? copy.text !== '' : copy.text !== saved.copy.text || copy.timeline !== saved.copy.timeline;
}
