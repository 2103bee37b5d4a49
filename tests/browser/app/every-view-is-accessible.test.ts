/** Every view at both widths, light and dark: no violation that axe-core knows of, nothing that scrolls sideways. [AXE] */
import { AxeBuilder } from '@axe-core/playwright';
import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  dropPage,
  folderWith,
  launchBrowser,
  type Person,
  personAt,
  type Server,
  settled,
  startServer,
} from '../../support/served-app.ts';
import { FULMAR, plannedFulmar } from '../../support/planned-fulmar.ts';

const VIEWS = [
  'view=plan',
  'view=plan&rows=orbits',
  'view=plan&chart=table',
  'view=plan&pick=stint:swap-pump/free-old-pump',
  'view=text',
  'view=findings',
  'view=requests',
  'view=tables',
  'view=versions',
  'view=agree',
  'view=people',
  'view=help',
  'view=help&page=node+stint',
];

let browser: Browser;
let server: Server;
const folder = folderWith({ 'fulmar.kdl': readFileSync(FULMAR, 'utf8') });
const people = new Map<string, Person>();

beforeAll(async () => {
  browser = await launchBrowser();
  server = await startServer(folder.path);
  const ana = await personAt(browser, server, 'ana');
  people.set('1280 light', ana);
  const opened = await ana.context.request.get(`${server.address}/api/campaigns/fulmar`);
  const { head } = (await opened.json()) as { readonly head: { readonly number: number; readonly text: string } };
  const saved = await ana.context.request.post(`${server.address}/api/campaigns/fulmar/versions`, {
    data: { parent: head.number, text: head.text, timeline: plannedFulmar().timeline, message: 'Planned' },
    headers: { 'x-handrail': '1' },
  });
  expect(saved.status()).toBe(201);
  people.set(
    '800 dark',
    await personAt(browser, server, 'ana', { viewport: { width: 800, height: 900 }, colorScheme: 'dark' }),
  );
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await server?.kill();
  folder.drop();
  dropPage();
});

describe.each(['1280 light', '800 dark'])('at %s', (how) => {
  test.each([...VIEWS, 'start'])('%s', async (view) => {
    const { page } = people.get(how) as Person;
    await page.goto(view === 'start' ? server.address : `${server.address}/campaigns/fulmar?${view}`);
    if (view === 'start') await page.getByRole('heading', { name: 'Campaigns' }).waitFor();
    else if (view.startsWith('view=plan')) await settled(page);
    else await page.locator('main [tabindex], main table').first().waitFor();
    const sideways = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(sideways).toBeLessThanOrEqual(0);
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(
      violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(' ')).join(', ')}`),
    ).toEqual([]);
  });

  test('palette and key sheet', async () => {
    const { page } = people.get(how) as Person;
    await page.goto(`${server.address}/campaigns/fulmar`);
    await settled(page);
    for (const key of ['Control+k', '?']) {
      await page.keyboard.press(key);
      await page.getByRole('dialog').waitFor();
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(
        violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(' ')).join(', ')}`),
      ).toEqual([]);
      await page.keyboard.press('Escape');
      await page.getByRole('dialog').waitFor({ state: 'detached' });
    }
  });
});
