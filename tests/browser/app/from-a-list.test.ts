/** The first quarter of an hour: a new server, a first account, a pasted list, a timeline. By keyboard alone from the list on. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type App, appWith, PASSWORD, settled } from '../../support/served-app.ts';

let app: App;
let page: Page;

beforeAll(async () => {
  app = await appWith({});
  page = await app.browser.newPage({ viewport: { width: 1280, height: 900 } });
});
afterAll(() => app?.end());

/** Tab until the focus is on something of this name. */
async function tabTo(name: RegExp): Promise<void> {
  for (let count = 0; count < 90; count++) {
    await page.keyboard.press('Tab');
    const words = await page.evaluate(() => {
      const at = document.activeElement;
      if (at === null) return '';
      const labels = at instanceof HTMLInputElement || at instanceof HTMLTextAreaElement ? at.labels : null;
      return `${at.getAttribute('aria-label') ?? ''} ${labels?.[0]?.textContent ?? ''} ${at.textContent ?? ''}`.trim();
    });
    if (name.test(words)) return;
  }
  throw new Error(`the focus never came to ${String(name)}`);
}

test('a new server asks for its first account, with the word that it printed', async () => {
  await page.goto(app.server.address);
  await page.getByLabel('Name').fill('ana');
  await page.getByLabel(/^Password/).fill(PASSWORD);
  await page.getByLabel(/word that the server printed/).fill('not it');
  await page.keyboard.press('Enter');
  await page
    .getByRole('alert')
    .getByText(/token|word/)
    .waitFor();
  await page.getByLabel(/word that the server printed/).fill(app.server.token ?? '');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Campaigns' }).waitFor();
});

test('the caution stands on the first screen', async () => {
  expect(await page.getByText('Planning aid, not flight-certified').count()).toBe(1);
});

test('a row that cannot be read is said with its number, and nothing is made of it', async () => {
  await page.getByLabel('The list').fill('who,what,minutes\nEV1,Fetch the bag,soon\n');
  await page.getByRole('button', { name: 'Make a campaign of it' }).click();
  await page.getByText('row 2: "soon" is not a time').waitFor();
});

test('from a pasted list to a plan in hand by keyboard alone', async () => {
  await page.getByLabel('The list').focus();
  await page.keyboard.press('Control+a');
  await page.keyboard.insertText(
    'who,what,minutes\nEV1,Fetch the bag,12\nEV2,Set up the restraint,15\nboth,Swap the box,55\n',
  );
  await tabTo(/^Title/);
  await page.keyboard.type('From the whiteboard');
  await tabTo(/Make a campaign of it/);
  await page.keyboard.press('Enter');
  await page.getByText('3 tasks with 3 stints wait').waitFor();
  await page.keyboard.press('Control+Enter');
  await page.getByText('A plan is offered').first().waitFor({ timeout: 30_000 });
  await page.keyboard.press('Control+Alt+Enter');
  await settled(page);
  expect(await page.getByTestId('verdict').innerText()).toMatch(/3 tasks, both in at PET/);
});

test('every stint is reached by arrow keys, moved, pinned and undone by keyboard', async () => {
  await page.keyboard.press('n');
  const sheet = page.getByTestId('sheet');
  await sheet.waitFor();
  const begins = async (): Promise<string> => (await sheet.getByText(/^PET/).innerText()).replace(/\s+/g, ' ');
  const before = await begins();
  await page.keyboard.press('Alt+ArrowRight');
  await expect.poll(begins).not.toBe(before);
  await page.keyboard.press('Control+z');
  await expect.poll(begins).toBe(before);
  await page.keyboard.press('s');
  await page
    .getByTestId('notice')
    .getByText(/^Pinned: start at PET/)
    .waitFor();
  await page.keyboard.press('Control+z');
});

test('the palette finds and does; the key sheet opens by "?" and closes by Esc', async () => {
  await page.keyboard.press('Control+k');
  await page.getByRole('searchbox').fill('go to findings');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Findings' }).waitFor();
  await page.keyboard.press('Alt+1');
  await page.getByTestId('verdict').waitFor();
  await page.keyboard.press('?');
  await page.getByRole('dialog').getByText('Plan the campaign').waitFor();
  await page.keyboard.press('Escape');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
});

test('"why" on the number in focus shows its sum, and Esc gives the focus back', async () => {
  await page
    .getByLabel(/^The three least margins/)
    .getByRole('button')
    .first()
    .focus();
  await page.keyboard.press('y');
  await page.getByTestId('why').waitFor();
  await page.keyboard.press('Escape');
  await page.getByTestId('why').waitFor({ state: 'detached' });
  expect(await page.evaluate(() => document.activeElement?.hasAttribute('data-why'))).toBe(true);
});
