/**
 * Takes the pictures of docs/pictures: of the briefing page, from out/fulmar.html (run npm start first), and of every view of the app
 * at 1280 and 800 pixels, the demo planned and open. Light at 1280, dark at 800.
 *
 *   npx tsx tools/take-pictures.ts
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { plannedApp } from '../tests/support/planned-app.ts';
import { settled } from '../tests/support/served-app.ts';

const VIEWS: Readonly<Record<string, string>> = {
  plan: 'eva=pump&at=2:10&pick=stint:swap-pump/free-old-pump',
  'orbit-rows': 'eva=pump&rows=orbits',
  vehicle: 'eva=pump&at=2:10&vehicle=open',
  text: 'view=text&line=150',
  findings: 'view=findings',
  requests: 'view=requests',
  tables: 'view=tables&page=hardware',
  versions: 'view=versions',
  agree: 'view=agree',
  people: 'view=people',
  help: 'view=help',
};
const folder = join(import.meta.dirname, '..', 'docs', 'pictures', 'app');
mkdirSync(folder, { recursive: true });
const app = await plannedApp();
for (const [width, colorScheme] of [
  [1280, 'light'],
  [800, 'dark'],
] as const) {
  const { page } = app.person;
  await page.emulateMedia({ colorScheme });
  await page.setViewportSize({ width, height: width === 1280 ? 860 : 1000 });
  for (const [view, query] of Object.entries(VIEWS)) {
    await page.goto(`${app.server.address}/campaigns/fulmar?${query}`);
    if (view === 'plan' || view === 'orbit-rows' || view === 'vehicle') await settled(page);
    else await page.locator('main [tabindex], main table').first().waitFor();
    if (view === 'vehicle') await page.getByTestId('vehicle').scrollIntoViewIfNeeded();
    // Fonts, and the first frame of the drawing.
    await page.waitForTimeout(1500);
    await page.screenshot({ path: join(folder, `${view}-${width}.png`) });
  }
  await page.goto(app.server.address);
  await page.getByRole('heading', { name: 'Campaigns' }).waitFor();
  await page.screenshot({ path: join(folder, `start-${width}.png`) });
}
const briefing = await app.browser.newPage({ viewport: { width: 1280, height: 1000 }, colorScheme: 'light' });
const pictures = join(folder, '..');
await briefing.goto(`file://${join(import.meta.dirname, '..', 'out', 'fulmar.html')}`);
await briefing.locator('#eva-pump .arrangement.home').screenshot({ path: join(pictures, 'home-chart.png') });
for (const width of [1280, 800]) {
  await briefing.setViewportSize({ width, height: 1000 });
  await briefing.locator('#eva-pump').scrollIntoViewIfNeeded();
  await briefing.screenshot({ path: join(pictures, `page-${width}.png`) });
}
await app.end();
