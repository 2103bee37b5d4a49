/** Opens a campaign: the newest version, and what was in hand here when the page was last left. */
import type { Timeline } from '@handrail/eva/timeline/timeline';
import type { VersionWhole } from '@handrail/wire/api/api-types';
import {
  change,
  documentStore,
  hasUnsaved,
  markSaved,
  openDocument,
  type SavedVersion,
} from '../document/document-store.ts';
import { editBetween } from '../document/working-copy.ts';
import { look, tell } from '../session/session-store.ts';
import { api, ApiFault, OfflineFault } from './api.ts';
import { serverStore } from './server-store.ts';
import { takeOff } from './shelf.ts';

export function savedOf(version: VersionWhole): SavedVersion {
  const { number, author, atUtcMs, message, text } = version;
  return { number, author, atUtcMs, message, copy: { text, timeline: version.timeline } };
}

let leaveLive: (() => void) | null = null;

/** No longer follows what others do with what was open. */
export function leaveLiveLink(): void {
  leaveLive?.();
  leaveLive = null;
}

export async function openOnServer(id: string): Promise<void> {
  leaveLiveLink();
  const kept = await takeOff(id).catch(() => null);
  try {
    const { head } = await api.campaign(id);
    const saved = savedOf(head);
    const draft = kept ?? (await draftOf(id));
    const hasDraft =
      draft !== null &&
      (draft.copy.text !== draft.saved?.copy.text || draft.copy.timeline !== draft.saved?.copy.timeline);
    if (!hasDraft || isSame(draft.copy, saved.copy)) openDocument(id, saved);
    else if (draft.saved === null || draft.saved.number === saved.number) {
      openDocument(id, saved, draft.copy);
      tell('Your changes since the last version are here as you left them.');
    } else {
      // Somebody saved meanwhile: the changes stay on the version they were made on, and both are shown.
      openDocument(id, draft.saved, draft.copy);
      serverStore.setState({ conflict: head });
    }
    serverStore.setState({ isReached: true });
    follow(id);
  } catch (cause) {
    if (cause instanceof OfflineFault && kept !== null) {
      openDocument(id, kept.saved, kept.copy);
      serverStore.setState({ isReached: false });
      tell(
        'The server cannot be reached: this is what the browser kept. Work on; it is saved when the server is back.',
      );
      follow(id);
      return;
    }
    throw cause;
  }
}

async function draftOf(id: string): Promise<{ copy: SavedVersion['copy']; saved: SavedVersion | null } | null> {
  const draft = await api.draft(id).catch(() => null);
  if (draft === null) return null;
  const parent = await api.version(id, draft.parent).catch(() => null);
  return {
    copy: { text: draft.text, timeline: draft.timeline },
    saved: parent === null ? null : savedOf(parent),
  };
}

/** Follows what others do with it, and notices when the server goes and comes back. */
function follow(id: string): void {
  leaveLive = api.live(
    id,
    (event) => {
      if (event.kind === 'presence') serverStore.setState({ people: event.people });
      if (event.kind === 'approval') {
        const { by, decision, number } = event.approval;
        serverStore.setState((was) => ({ approvalsSeen: was.approvalsSeen + 1 }));
        tell(`${by} on version ${number}: ${decision}`);
      }
      if (event.kind === 'version') void meet(id, event.version.number);
    },
    (isReached) => {
      const was = serverStore.getState().isReached;
      serverStore.setState({ isReached });
      if (isReached && !was) {
        tell('The server is back.');
        void meetHead(id);
      }
    },
  );
}

async function meetHead(id: string): Promise<void> {
  const opened = await api.campaign(id).catch(() => null);
  if (opened !== null) await meet(id, opened.head.number);
}

/** Another version stands on the server: taken over where nothing is changed here, else shown beside what is in hand. */
async function meet(id: string, number: number): Promise<void> {
  const state = documentStore.getState();
  if (state.campaignId !== id || (state.saved !== null && state.saved.number >= number)) return;
  const version = await api.version(id, number);
  const saved = savedOf(version);
  const now = documentStore.getState();
  if (now.campaignId !== id || (now.saved !== null && now.saved.number >= number)) return;
  if (isSame(now.copy, saved.copy)) markSaved(saved);
  else if (!hasUnsaved(now)) {
    openDocument(id, saved);
    tell(`${version.author} saved version ${number}: ${version.message}. It is what you see now.`);
  } else serverStore.setState({ conflict: version });
}

/** Saves what is in hand as a version. Where another was saved meanwhile, both are shown and nothing is written. */
export async function saveVersion(message: string): Promise<boolean> {
  const { campaignId, copy, saved } = documentStore.getState();
  if (campaignId === null || saved === null) return false;
  serverStore.setState({ saving: 'running', savingWords: 'saving' });
  try {
    const { text, timeline } = copy;
    const version = await api.save(campaignId, { parent: saved.number, text, timeline, message });
    markSaved({ ...savedOf(version), copy });
    serverStore.setState({ saving: 'nothing', savingWords: '', conflict: null });
    tell(`Saved as version ${version.number}.`);
    return true;
  } catch (cause) {
    const words = cause instanceof Error ? cause.message : String(cause);
    const head = cause instanceof ApiFault && cause.status === 409 ? cause.body.head : null;
    if (head !== null) {
      serverStore.setState({ saving: 'nothing', savingWords: '', conflict: head });
      look({ view: 'versions' });
      tell('Somebody saved another version meanwhile. Nothing was written over: choose.');
    } else {
      const isOffline = cause instanceof OfflineFault;
      serverStore.setState({ saving: 'failed', savingWords: words, ...(isOffline ? { isReached: false } : {}) });
      tell(
        isOffline
          ? 'The server cannot be reached. Your work is kept in this browser; save again when it is back.'
          : `Not saved: ${words}`,
      );
    }
    return false;
  }
}

/** Settles a conflict: what is in hand goes on, now on top of the other version. */
export function keepMine(): void {
  const { conflict } = serverStore.getState();
  if (conflict === null) return;
  markSaved(savedOf(conflict));
  serverStore.setState({ conflict: null });
  tell(`Your work goes on, on top of version ${conflict.number}. Save to make it the newest.`);
}

/** Settles a conflict: the other version is taken; what was in hand comes back by undo. */
export function takeTheirs(): void {
  const { conflict } = serverStore.getState();
  if (conflict === null) return;
  const saved = savedOf(conflict);
  const edit = editBetween(documentStore.getState().copy.text, saved.copy.text);
  change(`Take version ${conflict.number}`, { edits: edit === null ? [] : [edit], timeline: saved.copy.timeline });
  markSaved(saved);
  serverStore.setState({ conflict: null });
  tell(`Version ${conflict.number} is in hand. Undo brings back what you had.`);
}

/** Settles a conflict: pieces of both; the step can be undone, and is saved as a version when the person says so. */
export function keepMerged(text: string, timeline: Timeline | null): void {
  const { conflict } = serverStore.getState();
  if (conflict === null) return;
  const edit = editBetween(documentStore.getState().copy.text, text);
  change(`Merge with version ${conflict.number}`, { edits: edit === null ? [] : [edit], timeline });
  markSaved(savedOf(conflict));
  serverStore.setState({ conflict: null });
  tell(`The merge is in hand, on top of version ${conflict.number}. Save to make it the newest.`);
}

function isSame(a: SavedVersion['copy'], b: SavedVersion['copy']): boolean {
  return a.text === b.text && JSON.stringify(a.timeline) === JSON.stringify(b.timeline);
}
