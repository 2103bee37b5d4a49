/** The demo, planned and saved, open in a browser of its own. */
import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { FULMAR, plannedFulmar } from './planned-fulmar.ts';
import {
  dropPage,
  folderWith,
  launchBrowser,
  type Person,
  personAt,
  type Server,
  settled,
  startServer,
} from './served-app.ts';

export interface PlannedApp {
  readonly browser: Browser;
  readonly server: Server;
  readonly person: Person;
  readonly open: (query?: string) => Promise<void>;
  readonly end: () => Promise<void>;
}

export async function plannedApp(): Promise<PlannedApp> {
  const folder = folderWith({ 'fulmar.kdl': readFileSync(FULMAR, 'utf8') });
  const browser = await launchBrowser();
  const server = await startServer(folder.path);
  const person = await personAt(browser, server, 'ana');
  const opened = await person.context.request.get(`${server.address}/api/campaigns/fulmar`);
  const { head } = (await opened.json()) as { readonly head: { readonly number: number; readonly text: string } };
  const saved = await person.context.request.post(`${server.address}/api/campaigns/fulmar/versions`, {
    data: { parent: head.number, text: head.text, timeline: plannedFulmar().timeline, message: 'Planned' },
    headers: { 'x-handrail': '1' },
  });
  if (!saved.ok()) throw new Error(await saved.text());
  return {
    browser,
    server,
    person,
    open: async (query = '') => {
      await person.page.goto(`${server.address}/campaigns/fulmar${query === '' ? '' : `?${query}`}`);
      await settled(person.page);
    },
    end: async () => {
      await browser.close();
      await server.kill();
      folder.drop();
      dropPage();
    },
  };
}
