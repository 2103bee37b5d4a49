/** The first question to the server: who is this, and what is to be shown first. Without a server, what the browser kept. */
import type { SessionAnswer } from '@handrail/wire/api/api-types';
import { campaignOfPath, linkOf } from '../session/deep-link.ts';
import { sessionStore, tell } from '../session/session-store.ts';
import { api, OfflineFault } from './api.ts';
import { openOnServer } from './open-campaign.ts';
import { serverStore } from './server-store.ts';

const KEY = 'handrail-session';

export async function startSession(): Promise<void> {
  try {
    await enter(await api.session());
  } catch (cause) {
    if (!(cause instanceof OfflineFault)) throw cause;
    const kept = localStorage.getItem(KEY);
    serverStore.setState({ isReached: false });
    if (kept === null) {
      tell('The server cannot be reached, and this browser has kept nothing yet. Start it, then load the page again.');
      return;
    }
    await enter(JSON.parse(kept) as SessionAnswer);
  }
}

/** Takes a session in, and opens what the address or the server names. */
export async function enter(session: SessionAnswer): Promise<void> {
  serverStore.setState({ session });
  if (session.user === null) {
    localStorage.removeItem(KEY);
    return;
  }
  localStorage.setItem(KEY, JSON.stringify(session));
  const asked = campaignOfPath(location.pathname) ?? session.first;
  if (asked === null) return;
  try {
    await openOnServer(asked);
    history.replaceState(null, '', linkOf(asked, sessionStore.getState()));
  } catch (cause) {
    tell(`${asked} cannot be opened: ${cause instanceof Error ? cause.message : String(cause)}`);
  }
}

export async function leave(): Promise<void> {
  await api.logout();
  localStorage.removeItem(KEY);
  location.assign('/');
}
