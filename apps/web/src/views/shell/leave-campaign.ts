import { openDocument } from '../../document/document-store.ts';
import { flushNow } from '../../server-link/keep-safe.ts';
import { leaveLiveLink } from '../../server-link/open-campaign.ts';
import { serverStore } from '../../server-link/server-store.ts';

/** Back to the list of campaigns. What is in hand is put by first. */
export async function leaveCampaign(): Promise<void> {
  await flushNow();
  leaveLiveLink();
  serverStore.setState({ conflict: null, people: [] });
  openDocument(null, null);
  history.pushState(null, '', '/');
}
