// Takes the pictures of docs/pictures from out/fulmar.html (run npm start first): needs Chromium.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { root } from './ensure-installed.mjs';

const folder = join(root, 'docs', 'pictures');
mkdirSync(folder, { recursive: true });
const browser = await chromium.launch({
  executablePath: process.env.HANDRAIL_CHROMIUM ?? '/usr/bin/chromium',
  args: [
    '--no-sandbox',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
  ],
});
const page = await browser.newPage({ viewport: { width: 1280, height: 1000 }, colorScheme: 'light' });
await page.goto(`file://${join(root, 'out', 'fulmar.html')}`);
await page.locator('#eva-pump .arrangement.home').screenshot({ path: join(folder, 'home-chart.png') });
for (const width of [1280, 800]) {
  await page.setViewportSize({ width, height: 1000 });
  await page.locator('#eva-pump').scrollIntoViewIfNeeded();
  await page.screenshot({ path: join(folder, `page-${width}.png`) });
}
await browser.close();
