/** The demo, planned and saved, open in a browser of its own. */
import { readFileSync } from 'node:fs';
import { FULMAR, plannedFulmar } from './planned-fulmar.ts';
import { type App, appWith, type Person, personAt, settled } from './served-app.ts';

export interface PlannedApp extends App {
  readonly person: Person;
  readonly open: (query?: string) => Promise<void>;
}

export async function plannedApp(): Promise<PlannedApp> {
  const app = await appWith({ 'fulmar.kdl': readFileSync(FULMAR, 'utf8') });
  const person = await personAt(app.browser, app.server, 'ana');
  const opened = await person.context.request.get(`${app.server.address}/api/campaigns/fulmar`);
  const { head } = (await opened.json()) as { readonly head: { readonly number: number; readonly text: string } };
  const saved = await person.context.request.post(`${app.server.address}/api/campaigns/fulmar/versions`, {
    data: { parent: head.number, text: head.text, timeline: plannedFulmar().timeline, message: 'Planned' },
    headers: { 'x-handrail': '1' },
  });
  if (!saved.ok()) throw new Error(await saved.text());
  const open = async (query = ''): Promise<void> => {
    await person.page.goto(`${app.server.address}/campaigns/fulmar${query === '' ? '' : `?${query}`}`);
    await settled(person.page);
  };
  return Object.assign(app, { person, open });
}
