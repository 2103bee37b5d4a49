/** The home chart under a hand and under the keyboard, a plan asked for and taken, the vehicle at a minute, tables in place. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type PlannedApp, plannedApp } from '../../support/planned-app.ts';
import { settled } from '../../support/served-app.ts';

let app: PlannedApp;
let page: Page;
beforeAll(async () => {
  app = await plannedApp();
  ({ page } = app.person);
}, 120_000);
afterAll(() => app?.end());

const chart = () => page.getByTestId('home-chart');
const boxes = () => chart().locator('button[aria-label*="PET"]');
const startOf = async (title: string): Promise<string> =>
  /PET ([\d:]+) to/.exec(
    (await chart().locator(`button[aria-label*="${title}"]`).first().getAttribute('aria-label')) ?? '',
  )?.[1] ?? '';

/** A stint with room to be dragged: the longest of the EVA. Choosing it by focus shows where it is drawn. */
async function widest(): Promise<{ readonly title: string; readonly x: number; readonly y: number }> {
  const seconds = (clock: string): number =>
    clock.split(':').reduce((sum, part) => sum * 60 + Number(part), 0) * (clock.split(':').length === 2 ? 60 : 1);
  const labels = await boxes().evaluateAll((all) => all.map((one) => one.getAttribute('aria-label') ?? ''));
  const [longest] = labels
    .map((label) => {
      const [, title = '', from = '', to = ''] = /: (.*), PET ([\d:]+) to ([\d:]+)/.exec(label) ?? [];
      return { label, title, durationS: seconds(to) - seconds(from) };
    })
    .toSorted((a, b) => b.durationS - a.durationS);
  if (longest === undefined) throw new Error('no stint is drawn');
  await chart().getByLabel(longest.label, { exact: true }).focus();
  const box = await page.getByTestId('chosen-stint').boundingBox();
  if (box === null) throw new Error(`${longest.title} is not drawn`);
  return { title: longest.title, x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

describe('the home chart', () => {
  test('draws every stint of the EVA and gives each a target for the keyboard', async () => {
    await app.open();
    const rows = await boxes().count();
    expect(rows).toBeGreaterThan(15);
    expect(await chart().locator('canvas').getAttribute('data-drawn')).toBe(String(rows));
  });

  test('a stint dragged along time moves when it is dropped, and the replay has judged it within a moment', async () => {
    const { title, x, y } = await widest();
    const before = await startOf(title);
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 20, y, { steps: 4 });
    await page.mouse.move(x + 48, y, { steps: 6 });
    await chart()
      .getByText(/nothing breaks|error/)
      .waitFor();
    await page.mouse.up();
    await expect.poll(() => startOf(title)).not.toBe(before);
    await expect.poll(() => chart().getAttribute('data-checked-ms')).not.toBeNull();
    process.stdout.write(
      `replay of a dropped stint shown after ${await chart().getAttribute('data-checked-ms')} ms (100 wanted)\n`,
    );
    await page.keyboard.press('Control+z');
    await expect.poll(() => startOf(title)).toBe(before);
  });

  test('Escape drops nothing', async () => {
    const { title, x, y } = await widest();
    const before = await startOf(title);
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 60, y, { steps: 6 });
    await page.keyboard.press('Escape');
    await page.mouse.up();
    expect(await startOf(title)).toBe(before);
  });

  test('by keys alone: choose, a minute later, give away, take back', async () => {
    await app.open();
    await page.keyboard.press('n');
    await page.keyboard.press('ArrowRight');
    const sheet = page.getByTestId('sheet');
    const title = (await sheet.locator('h2').innerText()).replace(/^\d+\s*/, '');
    const before = await startOf(title);
    await page.keyboard.press('Alt+ArrowRight');
    await expect.poll(() => startOf(title)).not.toBe(before);
    await page.keyboard.press('Control+z');
    await expect.poll(() => startOf(title)).toBe(before);
  });

  test('the wheel zooms about the pointer and the whole EVA comes back', async () => {
    const drawn = async () => Number(await chart().locator('canvas').getAttribute('data-drawn'));
    const whole = await drawn();
    const box = await chart().boundingBox();
    await page.mouse.move((box?.x ?? 0) + 300, (box?.y ?? 0) + 150);
    for (let turn = 0; turn < 6; turn++) await page.mouse.wheel(0, -240);
    await expect.poll(drawn).toBeLessThan(whole);
    await page.getByRole('button', { name: 'Whole' }).click();
    await expect.poll(drawn).toBe(whole);
  });
});

describe('planning', () => {
  test('is done when it is asked for, offered beside the plan in hand, and left without a trace', async () => {
    await app.open();
    const before = await boxes().evaluateAll((all) => all.map((one) => one.getAttribute('aria-label')));
    await page.keyboard.press('Control+Shift+Enter');
    await page
      .getByText(/A plan is offered|offered/)
      .first()
      .waitFor({ timeout: 60_000 });
    expect(await boxes().evaluateAll((all) => all.map((one) => one.getAttribute('aria-label')))).toEqual(before);
    await page.getByRole('button', { name: /Leave/ }).first().click();
    expect(await boxes().evaluateAll((all) => all.map((one) => one.getAttribute('aria-label')))).toEqual(before);
  }, 90_000);
});

describe('the vehicle', () => {
  test('stands at the selected minute, in 3-D, as a plan drawing and as a table', async () => {
    await app.open('vehicle=open&at=2:00');
    const vehicle = page.getByTestId('vehicle');
    await vehicle.waitFor();
    await expect.poll(() => vehicle.getByText(/PET 2:00/).count()).toBeGreaterThan(0);
    await vehicle.getByRole('button', { name: 'Table' }).click();
    await vehicle.getByRole('rowheader', { name: 'EV1' }).waitFor();
    expect(await vehicle.getByText(/\d+ pieces/).count()).toBe(1);
    await vehicle.getByRole('button', { name: 'Plan drawing' }).click();
    await vehicle.getByText('From above').waitFor();
    const { violations } = await new AxeBuilder({ page }).include('[data-testid="vehicle"]').analyze();
    expect(
      violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(' ')).join(', ')}`),
    ).toEqual([]);
  });

  test('a worksite’s view is kept as a sentence of the text', async () => {
    const vehicle = page.getByTestId('vehicle');
    await vehicle.getByRole('button', { name: 'Plan drawing' }).click();
    await vehicle.getByLabel('View of a worksite').selectOption('core-top');
    await vehicle.getByRole('button', { name: 'Keep this view' }).click();
    await page.getByRole('link', { name: 'Text' }).click();
    await page.keyboard.press('Control+z');
    await page.getByRole('link', { name: 'Plan' }).click();
    await settled(page);
  });
});

/** One triangle as a binary glTF 2.0 file: head, JSON, numbers. [GLTF2] 4.4 */
function oneTriangle(): Buffer {
  const numbers = Buffer.from(new Float32Array([0, 0, 0, 4, 0, 0, 0, 4, 0]).buffer);
  const words = JSON.stringify({
    asset: { version: '2.0' },
    scene: 0,
    scenes: [{ nodes: [0] }],
    nodes: [{ mesh: 0 }],
    meshes: [{ primitives: [{ attributes: { POSITION: 0 } }] }],
    accessors: [{ bufferView: 0, componentType: 5126, count: 3, type: 'VEC3', min: [0, 0, 0], max: [4, 4, 0] }],
    bufferViews: [{ buffer: 0, byteLength: numbers.length }],
    buffers: [{ byteLength: numbers.length }],
  });
  const json = Buffer.from(words.padEnd(Math.ceil(words.length / 4) * 4, ' '));
  const chunk = (sort: number, data: Buffer): Buffer => {
    const head = Buffer.alloc(8);
    head.writeUInt32LE(data.length, 0);
    head.writeUInt32LE(sort, 4);
    return Buffer.concat([head, data]);
  };
  const body = Buffer.concat([chunk(0x4e4f534a, json), chunk(0x004e4942, numbers)]);
  const head = Buffer.alloc(12);
  head.write('glTF', 0, 'ascii');
  head.writeUInt32LE(2, 4);
  head.writeUInt32LE(12 + body.length, 8);
  return Buffer.concat([head, body]);
}

describe('a body’s drawing', () => {
  test('is taken from a .glb file, kept by the server and drawn in the place of its boxes', async () => {
    await app.open('vehicle=open');
    await page.getByText('Drawings of bodies').click();
    const asked = page.waitForResponse(
      (answer) => answer.url().endsWith('/models/core.glb') && answer.request().method() === 'GET' && answer.ok(),
    );
    await page
      .getByLabel('Its drawing')
      .setInputFiles({ name: 'core.glb', mimeType: 'model/gltf-binary', buffer: oneTriangle() });
    await page.getByText('core.glb is the drawing of core').first().waitFor();
    expect(Buffer.compare(await (await asked).body(), oneTriangle())).toBe(0);
  });
});

describe('a stint', () => {
  test('is split after a sentence, in text and plan, and made whole again by undo', async () => {
    await app.open();
    const before = await boxes().count();
    const splits = page.getByRole('button', { name: /^Split "/ });
    for (let tries = 0; tries < 40; tries++) {
      await page.keyboard.press('n');
      if ((await splits.count()) > 0) {
        await splits.first().click();
        if ((await page.getByText('is two stints now').count()) > 0) break;
      }
    }
    await page.getByText('is two stints now').first().waitFor();
    await expect.poll(() => boxes().count()).toBe(before + 1);
    await page.keyboard.press('Control+z');
    await expect.poll(() => boxes().count()).toBe(before);
  });
});

describe('the tables', () => {
  test('a cell is edited in place, what does not fit is refused with the reason, undo takes it back', async () => {
    await app.open();
    await page.getByRole('link', { name: 'Tables' }).click();
    await page.getByRole('button', { name: 'Hardware', exact: true }).click();
    const cell = page.locator('input[aria-label^="mass of"]').first();
    const was = await cell.inputValue();
    await cell.fill('12 bananas');
    await cell.press('Enter');
    await page
      .getByRole('alert')
      .getByText(/12 bananas/)
      .waitFor();
    expect(await cell.inputValue()).toBe(was);
    await cell.fill('3 kg');
    await cell.press('Enter');
    await expect.poll(() => page.locator('input[aria-label^="mass of"]').first().inputValue()).toBe('3 kg');
    await page.getByRole('link', { name: 'Plan' }).click();
    await page.keyboard.press('Control+z');
  });

  test('a pasted sheet says what it would change before it does', async () => {
    await page.getByRole('link', { name: 'Tables' }).click();
    await page.getByRole('button', { name: 'Objectives' }).click();
    await page.getByRole('button', { name: /Take in a sheet/ }).click();
    await page.getByLabel('Paste rows here').fill('id\ttitle\trank\nnew-one\tA new objective\t77\n');
    await page.getByText('0 rows would change, 1 would be new').waitFor();
    await page.getByRole('button', { name: 'Take it in' }).click();
    await page.locator('input[value="new-one"]').waitFor();
  });
});

test('the page called nothing an error', () => {
  expect(app.person.trouble).toEqual([]);
});
