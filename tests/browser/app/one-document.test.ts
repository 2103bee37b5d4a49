/** Text, list, sheet, findings and chart are surfaces of one document, with one undo. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type App, appWith, type Person, personAt, settled } from '../../support/served-app.ts';
import { SMALL_CAMPAIGN } from '../../support/small-campaign.ts';

let app: App;
let ana: Person;

beforeAll(async () => {
  app = await appWith({ 'small.kdl': SMALL_CAMPAIGN });
  ana = await personAt(app.browser, app.server, 'ana');
  const { page } = ana;
  await page.goto(`${app.server.address}/campaigns/small`);
  await page.getByText('3 tasks with 3 stints wait').waitFor();
  await page.keyboard.press('Control+Enter');
  await page.getByText('A plan is offered').first().waitFor({ timeout: 30_000 });
  await page.keyboard.press('Control+Alt+Enter');
  await settled(page);
});
afterAll(() => app?.end());

const lineOf = (words: string): number => SMALL_CAMPAIGN.split('\n').findIndex((line) => line.includes(words)) + 1;

test('the text offers the hardware that is declared', async () => {
  const { page } = ana;
  await page.goto(`${app.server.address}/campaigns/small?view=text&line=${lineOf('demate j1 j2')}`);
  await page.locator('.cm-activeLine').getByText('demate').waitFor();
  await page.keyboard.press('End');
  await page.keyboard.type(' j');
  await page.keyboard.press('Control+Space');
  await page.locator('.cm-tooltip-autocomplete').getByText('j2').waitFor();
  await page.keyboard.press('Escape');
});

test('what is wrong is marked at its place, said beside it, and mended in one step', async () => {
  const { page } = ana;
  await page.keyboard.type('9');
  await page.getByRole('button', { name: /error: .*j9/ }).waitFor();
  expect(await page.locator('.cm-lintRange-error').count()).toBeGreaterThan(0);
  expect(await page.getByRole('link', { name: /Findings/ }).innerText()).toContain('1');
  // Typing is one step of the document's own undo, in whatever view it is taken back.
  await page.getByRole('link', { name: 'Requests' }).click();
  await page.keyboard.press('Control+z');
  await page.getByRole('link', { name: 'Text' }).click();
  await page.getByText('The text reads without a problem').waitFor();
});

test('the status of a request is an edit of the text', async () => {
  const { page } = ana;
  await page.getByRole('link', { name: 'Requests' }).click();
  await page.getByLabel('Status of Pump power off').selectOption('agreed');
  await page.getByRole('link', { name: 'Text' }).click();
  await page.locator('.cm-content').getByText('agreed').waitFor();
});

test('the cut rule moves by keyboard, writes pins, and is undone', async () => {
  const { page } = ana;
  await page.getByRole('link', { name: 'Plan', exact: true }).click();
  const rule = page.getByRole('slider', { name: 'Cut rule' });
  expect(await rule.getAttribute('aria-valuenow')).toBe('3');
  await rule.focus();
  await page.keyboard.press('ArrowUp');
  await expect.poll(() => rule.getAttribute('aria-valuenow')).toBe('2');
  await page.keyboard.press('ArrowUp');
  await expect.poll(() => rule.getAttribute('aria-valuenow')).toBe('1');
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect.poll(() => rule.getAttribute('aria-valuenow')).toBe('3');
});

test('the cut rule is drawn with the pointer', async () => {
  const { page } = ana;
  // The list moves when the verdict above it gets another line; the pointer goes by what was drawn then.
  await settled(page);
  const rule = page.getByRole('slider', { name: 'Cut rule' });
  const from = await rule.boundingBox();
  const to = await page.locator('[data-task="look-mast"]').boundingBox();
  if (from === null || to === null) throw new Error('the list is not drawn');
  await page.mouse.move(from.x + 40, from.y + from.height / 2);
  await page.mouse.down();
  await page.mouse.move(to.x + 40, to.y + 2, { steps: 5 });
  await page.mouse.up();
  await expect.poll(() => rule.getAttribute('aria-valuenow')).toBe('1');
  await page.keyboard.press('Control+z');
  await expect.poll(() => rule.getAttribute('aria-valuenow')).toBe('3');
});

test('planning minutes are edited in the sheet; the plan stays until it is planned again', async () => {
  const { page } = ana;
  await page.getByRole('button', { name: 'Look at the mast' }).click();
  const minutes = page.getByLabel('Planning minutes of Look and report');
  await minutes.fill('25');
  await minutes.press('Enter');
  await settled(page);
  await page.getByRole('link', { name: 'Findings' }).click();
  await page
    .getByText(/Look and report/)
    .first()
    .waitFor();
  await page.keyboard.press('Control+z');
});

test('a finding is waived with a reason and an end, as a line of the text', async () => {
  const { page } = ana;
  await page.getByRole('link', { name: 'Findings' }).click();
  // The plan in hand does not take the minutes that the text now states.
  await page.keyboard.press('Control+Shift+z');
  const card = page.getByRole('listitem').filter({ hasText: 'look-mast/look' }).first();
  await card.getByRole('button', { name: 'Waive …' }).click();
  await page.getByLabel('Why it may stand').fill('Walked through in the tank');
  await page.getByLabel('Who says so').fill('ana');
  await page.getByRole('button', { name: /^Write the waiver/ }).click();
  await page.getByRole('link', { name: 'Text' }).click();
  await page.getByText('The text reads without a problem').waitFor();
  await page.keyboard.press('Control+End');
  await page.locator('.cm-content').getByText('Walked through in the tank').waitFor();
});

test('the address carries view, EVA, minute and selection to somebody else', async () => {
  const { page } = ana;
  await page.getByRole('link', { name: 'Plan', exact: true }).click();
  await page.getByRole('button', { name: 'Free the cables' }).click();
  await expect.poll(() => page.url()).toContain('free-cables');
  const link = page.url();
  const other = await personAt(app.browser, app.server, 'ana');
  await other.page.goto(link);
  await other.page.getByTestId('sheet').getByText('Open the connectors').first().waitFor();
  expect(other.page.url()).toBe(link);
  await other.context.close();
  expect(ana.trouble).toEqual([]);
});
