/** Every view at both widths, light and dark: no violation that axe-core knows of, nothing that scrolls sideways. [AXE] */
import { AxeBuilder } from '@axe-core/playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type PlannedApp, plannedApp } from '../../support/planned-app.ts';
import { type Person, personAt, settled } from '../../support/served-app.ts';

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

let app: PlannedApp;
const people = new Map<string, Person>();

beforeAll(async () => {
  app = await plannedApp();
  people.set('1280 light', app.person);
  people.set(
    '800 dark',
    await personAt(app.browser, app.server, 'ana', { viewport: { width: 800, height: 900 }, colorScheme: 'dark' }),
  );
}, 120_000);
afterAll(() => app?.end());

describe.each(['1280 light', '800 dark'])('at %s', (how) => {
  test.each([...VIEWS, 'start'])('%s', async (view) => {
    const { page } = people.get(how) as Person;
    await page.goto(view === 'start' ? app.server.address : `${app.server.address}/campaigns/fulmar?${view}`);
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
    await page.goto(`${app.server.address}/campaigns/fulmar`);
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
