/** Two people in two browsers on one campaign: nobody's work is written over, and each sees what the other does. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { addAccount, type App, appWith, type Person, personAt } from '../../support/served-app.ts';
import { SMALL_CAMPAIGN } from '../../support/small-campaign.ts';

let app: App;
let ana: Person;
let ben: Person;

beforeAll(async () => {
  app = await appWith({ 'small.kdl': SMALL_CAMPAIGN });
  ana = await personAt(app.browser, app.server, 'ana');
  await addAccount(ana, app.server, 'ben', ['planner', 'approver']);
  ben = await personAt(app.browser, app.server, 'ben');
  for (const person of [ana, ben]) {
    await person.page.goto(`${app.server.address}/campaigns/small?view=text`);
    await person.page.getByLabel('Campaign text').waitFor();
  }
});
afterAll(() => app?.end());

async function write(person: Person, words: string): Promise<void> {
  await person.page.getByRole('link', { name: 'Text' }).click();
  await person.page.getByLabel('Campaign text').click();
  await person.page.keyboard.press('Control+End');
  await person.page.keyboard.type(words);
}
async function save(person: Person, message: string): Promise<void> {
  await person.page.keyboard.press('Control+s');
  await person.page.getByLabel('What is this version for?').fill(message);
  await person.page.keyboard.press('Enter');
}
const head = async (): Promise<{ readonly number: number; readonly text: string }> => {
  const answer = await ana.context.request.get(`${app.server.address}/api/campaigns/small`);
  return ((await answer.json()) as { readonly head: { readonly number: number; readonly text: string } }).head;
};

test('each sees that the other is there, and where', async () => {
  await ana.page.getByTestId('others').getByText('ben').waitFor();
  await ben.page.getByTestId('others').getByText('ana').waitFor();
});

test('what the other saved is taken over, and said, where nothing is changed here', async () => {
  await write(ana, '// by ana');
  await save(ana, 'A line by ana');
  await ben.page.getByTestId('notice').getByText('ana saved version 2').waitFor();
  await ben.page.getByText('// by ana').waitFor();
  expect(await ben.page.getByTestId('save-state').getAttribute('data-unsaved')).toBe('false');
});

test('where both changed something, both stand side by side and nothing is written over', async () => {
  await write(ben, '\n// by ben, not saved yet');
  await write(ana, '\n// again by ana');
  await save(ana, 'A second line by ana');
  await ben.page.getByTestId('conflict').getByText('ana saved version 3').waitFor();
  // Typing goes on; saving is refused until a choice is made.
  expect((await head()).number).toBe(3);
  await ben.page.getByRole('button', { name: 'See both' }).click();
  const choice = ben.page.getByTestId('conflict-choice');
  await choice.getByText('// again by ana').waitFor();
  await choice.getByText('// by ben, not saved yet').waitFor();
});

test('pieces of both are merged and saved, on top of the other version', async () => {
  const mine = ben.page.getByLabel('Yours: what will be kept');
  await mine.click();
  await ben.page.keyboard.press('Control+End');
  await ben.page.keyboard.type('\n// again by ana');
  await ben.page.getByRole('button', { name: 'Keep the merge' }).click();
  await ben.page.getByTestId('conflict').waitFor({ state: 'detached' });
  await save(ben, 'Both');
  await ben.page.getByRole('cell', { name: 'Both', exact: true }).waitFor();
  const { number, text } = await head();
  expect(number).toBe(4);
  expect(text).toContain('// by ben, not saved yet');
  expect(text).toContain('// again by ana');
  await ana.page.getByTestId('notice').getByText('ben saved version 4').waitFor();
});

test('any two versions are compared, and an old one is brought back as a new one', async () => {
  await ben.page.getByRole('combobox').nth(0).selectOption('1');
  await ben.page.getByRole('combobox').nth(1).selectOption('4');
  const changes = ben.page.getByTestId('line-changes');
  await changes.getByText('// by ben, not saved yet').waitFor();
  await ben.page
    .getByRole('row', { name: /^2 A line by ana/ })
    .getByRole('button', { name: 'Bring back' })
    .click();
  await ben.page.getByTestId('notice').getByText('Version 2 is back').waitFor();
  const { number, text } = await head();
  expect(number).toBe(5);
  expect(text).toBe(`${SMALL_CAMPAIGN}// by ana`);
});

test('an approver says agreed with a note on what is open, and everybody hears it', async () => {
  await ben.page.getByRole('link', { name: 'Not yet agreed' }).click();
  await ben.page.getByText('Requests not agreed (1)').waitFor();
  const agree = ben.page.getByRole('button', { name: /^Not agreed/ });
  expect(await agree.isDisabled()).toBe(true);
  await ben.page.getByLabel(/^Note/).fill('The power request is still open');
  await agree.click();
  await ana.page.getByTestId('notice').getByText('ben on version 5: not agreed').waitFor();
  expect([...ana.trouble, ...ben.trouble]).toEqual([]);
});
