/** The briefing page of the plan in hand, made here and opened in a window of its own, to read and to print. */
import { page } from '@handrail/eva/brief/page';
import { briefOf } from '@handrail/eva/judge/brief-of';
import { judgeTimeline } from '@handrail/eva/judge/judge-timeline';
import { openCampaign } from '@handrail/eva/judge/open-campaign';
import { documentStore } from '../document/document-store.ts';
import { FILE_NAME } from '../document/working-copy.ts';
import { serverStore } from '../server-link/server-store.ts';
import { tell } from '../session/session-store.ts';

export async function openBriefing(): Promise<void> {
  // The window is opened at once: later the browser takes it for an advertisement.
  const sheet = window.open('', '_blank');
  const { text, timeline } = documentStore.getState().copy;
  const { opened } = openCampaign([{ name: FILE_NAME, text }]);
  if (sheet === null || opened === null || timeline === null) {
    sheet?.close();
    tell(sheet === null ? 'The browser did not let a window open' : 'There is no plan to brief: the text has errors');
    return;
  }
  const madeUtcMs = Date.now();
  const [style, script] = await Promise.all(
    ['/briefing/page-style.css', '/briefing/page-script.js'].map(async (path) => (await fetch(path)).text()),
  );
  const findings = judgeTimeline(opened, timeline, madeUtcMs);
  const program = serverStore.getState().session?.program ?? '';
  const words = page(briefOf(opened, { timeline, findings, program, madeUtcMs }), {
    style: style ?? '',
    script: script ?? '',
  });
  sheet.location.href = URL.createObjectURL(new Blob([words], { type: 'text/html' }));
}
