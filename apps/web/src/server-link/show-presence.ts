/** Tells the others who have this campaign open where this person is, when it changes and now and then in between. */
import { documentStore, hasUnsaved } from '../document/document-store.ts';
import { sessionStore } from '../session/session-store.ts';
import { api } from './api.ts';
import { serverStore } from './server-store.ts';

const BEAT_MS = 20_000;
const CALM_MS = 800;

export function showPresence(): void {
  let told = '';
  let due: ReturnType<typeof setTimeout> | undefined;
  const say = (isBeat: boolean): void => {
    const { campaignId } = documentStore.getState();
    const { isReached, session } = serverStore.getState();
    if (campaignId === null || !isReached || session?.user == null) return;
    const at = whereabouts();
    if (at === told && !isBeat) return;
    told = at;
    void api.presence(campaignId, at).catch(() => {
      // The next beat says it.
    });
  };
  const soon = (): void => {
    clearTimeout(due);
    due = setTimeout(() => say(false), CALM_MS);
  };
  sessionStore.subscribe((now, was) => {
    if (now.view !== was.view || now.selection !== was.selection || now.evaId !== was.evaId) soon();
  });
  documentStore.subscribe(soon);
  setInterval(() => say(true), BEAT_MS);
}

function whereabouts(): string {
  const { view, selection, evaId } = sessionStore.getState();
  const at = selection === null ? (evaId ?? '') : selection.id;
  const editing = hasUnsaved(documentStore.getState()) ? ', editing' : '';
  return `${view}${at === '' ? '' : ` at ${at}`}${editing}`.slice(0, 200);
}
