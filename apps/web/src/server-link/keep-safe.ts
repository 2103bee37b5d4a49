/** Puts the working copy by: in the browser at once, on the server a little later. Neither is a version; a version has a message. */
import { documentStore, hasUnsaved } from '../document/document-store.ts';
import { api } from './api.ts';
import { mayWrite, serverStore } from './server-store.ts';
import { putBy, type PutBy, putByAtOnce } from './shelf.ts';

const SHELF_MS = 250;
const SERVER_MS = 2000;

let shelfDue: ReturnType<typeof setTimeout> | undefined;
let serverDue: ReturnType<typeof setTimeout> | undefined;

let titleNow: () => string = () => '';

export function keepSafe(titleOf: () => string): void {
  titleNow = titleOf;
  documentStore.subscribe((now, was) => {
    if (now.revision === was.revision && now.saved === was.saved) return;
    clearTimeout(shelfDue);
    shelfDue = setTimeout(() => void flushNow(), SHELF_MS);
    clearTimeout(serverDue);
    serverDue = setTimeout(() => void flushToServer(), SERVER_MS);
  });
  // The page may be put away without a word: this is the last moment that is sure to come.
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') leaveSafe();
  });
  window.addEventListener('pagehide', leaveSafe);
}

function leaveSafe(): void {
  const entry = inHand();
  if (entry !== null) putByAtOnce(entry);
  void flushNow();
}

function inHand(): PutBy | null {
  const { campaignId, copy, saved } = documentStore.getState();
  return campaignId === null ? null : { campaignId, title: titleNow(), copy, saved, atMs: Date.now() };
}

/** Puts what is in hand by on the browser's shelf, now. */
export async function flushNow(): Promise<void> {
  clearTimeout(shelfDue);
  const entry = inHand();
  if (entry === null) return;
  await putBy(entry);
  serverStore.setState({ draftAtMs: Date.now() });
}

async function flushToServer(): Promise<void> {
  const state = documentStore.getState();
  if (state.campaignId === null || state.saved === null || !mayWrite(serverStore.getState())) return;
  try {
    if (hasUnsaved(state)) {
      const { text, timeline } = state.copy;
      await api.keepDraft(state.campaignId, { parent: state.saved.number, text, timeline });
    } else await api.dropDraft(state.campaignId);
  } catch {
    // It stays on the browser's shelf, and goes with the next change or save.
  }
}
