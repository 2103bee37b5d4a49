/** The briefing page of the plan in hand, made beside the page and opened in a window of its own, to read and to print. */
import { documentStore } from '../document/document-store.ts';
import { serverStore } from '../server-link/server-store.ts';
import { tell } from '../session/session-store.ts';
import { provingWorker } from '../workers/connect.ts';

export async function openBriefing(): Promise<void> {
  // The window is opened at once: later the browser takes it for an advertisement.
  const sheet = window.open('', '_blank');
  const { text, timeline } = documentStore.getState().copy;
  if (sheet === null || timeline === null) {
    sheet?.close();
    tell(sheet === null ? 'The browser did not let a window open' : 'There is no plan to brief');
    return;
  }
  const [style = '', script = ''] = await Promise.all(
    ['/briefing/page-style.css', '/briefing/page-script.js'].map(async (path) => (await fetch(path)).text()),
  );
  const program = serverStore.getState().session?.program ?? '';
  const words = await provingWorker().briefing({
    text,
    timeline,
    assets: { style, script },
    program,
    madeUtcMs: Date.now(),
  });
  if (words === null) {
    sheet.close();
    tell('There is no plan to brief: the text has errors');
    return;
  }
  sheet.location.href = URL.createObjectURL(new Blob([words], { type: 'text/html' }));
}
