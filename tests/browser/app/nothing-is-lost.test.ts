/** What a person has done is there after a reload, without the server, and after the server was killed in the middle. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import {
  addAccount,
  type App,
  appWith,
  type Person,
  personAt,
  settled,
  startServer,
} from '../../support/served-app.ts';
import { SMALL_CAMPAIGN } from '../../support/small-campaign.ts';

let app: App;
let ana: Person;

beforeAll(async () => {
  app = await appWith({ 'small.kdl': SMALL_CAMPAIGN });
  ana = await personAt(app.browser, app.server, 'ana');
  await addAccount(ana, app.server, 'ben', ['planner']);
});
afterAll(() => app?.end());

async function write(person: Person, words: string): Promise<void> {
  await person.page.getByRole('link', { name: 'Text' }).click();
  const editor = person.page.getByLabel('Campaign text');
  await editor.click();
  await person.page.keyboard.press('Control+End');
  await person.page.keyboard.type(words);
}

const textOf = (person: Person): Promise<string> =>
  person.page.locator('.cm-content').evaluate((element) => (element as HTMLElement).innerText);

test('what was typed is there after a reload that comes at once', async () => {
  await ana.page.goto(`${app.server.address}/campaigns/small?view=text`);
  await ana.page.getByLabel('Campaign text').waitFor();
  await write(ana, '// kept through a reload');
  // Sooner than the browser's shelf is written on its own: leaving the page writes it.
  await ana.page.reload();
  await ana.page.getByLabel('Campaign text').click();
  await ana.page.keyboard.press('Control+End');
  expect(await textOf(ana)).toContain('// kept through a reload');
  expect(await ana.page.getByTestId('save-state').getAttribute('data-unsaved')).toBe('true');
});

test('a draft follows its person to another browser', async () => {
  await ana.page.waitForTimeout(2500);
  const elsewhere = await personAt(app.browser, app.server, 'ana');
  await elsewhere.page.goto(`${app.server.address}/campaigns/small?view=text`);
  await elsewhere.page.getByLabel('Campaign text').click();
  await elsewhere.page.keyboard.press('Control+End');
  expect(await textOf(elsewhere)).toContain('// kept through a reload');
  await elsewhere.context.close();
});

test('with the server killed the page works on, survives a reload, and saves when the server is back', async () => {
  // The page keeps itself for later, after it has come up.
  await ana.page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  const { port } = new URL(app.server.address);
  await app.server.kill();
  await ana.page.getByTestId('away').waitFor({ timeout: 15_000 });
  await write(ana, '\n// written without a server');
  await ana.page.waitForTimeout(600);
  await ana.page.reload();
  await ana.page.getByLabel('Campaign text').waitFor({ timeout: 15_000 });
  await ana.page.getByLabel('Campaign text').click();
  await ana.page.keyboard.press('Control+End');
  expect(await textOf(ana)).toContain('// written without a server');

  app.server = await startServer(app.folder, Number(port));
  await ana.page.getByTestId('away').waitFor({ state: 'detached', timeout: 30_000 });
  await ana.page.keyboard.press('Control+s');
  await ana.page.getByLabel('What is this version for?').fill('Kept through everything');
  await ana.page.keyboard.press('Enter');
  await ana.page.getByRole('cell', { name: 'Kept through everything' }).waitFor();
  const saved = await ana.context.request.get(`${app.server.address}/api/campaigns/small`);
  const { head } = (await saved.json()) as { readonly head: { readonly text: string; readonly number: number } };
  expect(head.text).toContain('// kept through a reload\n// written without a server');
  expect(head.number).toBe(2);
});

test('a plan made without a server is kept too', async () => {
  await ana.page.getByRole('link', { name: 'Plan', exact: true }).click();
  await ana.page.keyboard.press('Control+Enter');
  await ana.page.getByText('A plan is offered').first().waitFor({ timeout: 30_000 });
  await ana.page.keyboard.press('Control+Alt+Enter');
  await settled(ana.page);
  await ana.page.reload();
  await settled(ana.page);
  expect(await ana.page.getByTestId('verdict').innerText()).toContain('both in at PET');
  expect(ana.trouble).toEqual([]);
});
