/** The self-contained page as its reader meets it: in a real browser, from a file, without a network. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import { page as pageText } from '@handrail/eva/brief/page';
import { CAUTION } from '@handrail/eva/brief/brief-input';
import { replayTimeline } from '@handrail/eva/proof/replay/replay-timeline';
import { ruleFacts } from '@handrail/eva/rules/rule-facts';
import { runRules } from '@handrail/eva/rules/run-rules';
import { evaSupplies } from '@handrail/eva/suit/eva-supplies';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { wayHomeSurface } from '@handrail/eva/wayhome/way-home-surface';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launchBrowser } from '../support/browser.ts';
import { plannedFulmar } from '../support/planned-fulmar.ts';

const ASSETS = join(import.meta.dirname, '..', '..', 'apps', 'cli', 'src', 'page');

let folder: string;
let file: string;
let browser: Browser;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'handrail-page-'));
  file = join(folder, 'fulmar.html');
  const { campaign, hardware, timeline } = plannedFulmar();
  const facts = ruleFacts(campaign, hardware, standardLibrary, timeline);
  const travel = new Map(facts.evas.map((eva) => [eva.eva.eva, eva.travel] as const));
  const textOf = (shown: Timeline): string =>
    pageText(
      {
        campaign,
        hardware,
        kinds: standardLibrary.kinds,
        timeline: shown,
        findings: [...replayTimeline(campaign, hardware, timeline), ...runRules(facts, 0)],
        supplies: new Map(shown.evas.map((eva) => [eva.eva, evaSupplies(campaign, standardLibrary, eva)] as const)),
        homeSeconds: (eva, place, pace) => travel.get(eva)?.homeSeconds(place, pace) ?? null,
        wayHome: (eva) => wayHomeSurface(campaign, hardware, standardLibrary, timeline, eva),
        program: 'test',
        madeUtcMs: Date.UTC(2031, 8, 1),
      },
      {
        style: readFileSync(join(ASSETS, 'page-style.css'), 'utf8'),
        script: readFileSync(join(ASSETS, 'page-script.js'), 'utf8'),
      },
    );
  writeFileSync(file, textOf(timeline));
  // The checker looks at each of thousands of elements: one EVA has every sort of them.
  oneEva = join(folder, 'one-eva.html');
  writeFileSync(oneEva, textOf({ ...timeline, evas: timeline.evas.slice(1, 2) }));
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

let oneEva: string;

interface Opened {
  readonly context: BrowserContext;
  readonly page: Page;
  readonly trouble: string[];
}

async function open(options: { width?: number; dark?: boolean; script?: boolean; of?: string } = {}): Promise<Opened> {
  const context = await browser.newContext({
    viewport: { width: options.width ?? 1280, height: 900 },
    colorScheme: options.dark === true ? 'dark' : 'light',
    javaScriptEnabled: options.script ?? true,
  });
  const page = await context.newPage();
  const trouble: string[] = [];
  page.on('pageerror', (error) => trouble.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') trouble.push(message.text());
  });
  page.on('request', (request) => {
    if (!request.url().startsWith('file:')) trouble.push(`asked the network for ${request.url()}`);
  });
  await page.goto(`file://${options.of ?? file}`);
  return { context, page, trouble };
}

describe('the briefing page', () => {
  test.each([
    ['light', false],
    ['dark', true],
  ])(
    'has nothing that an accessibility checker objects to (%s)',
    async (_, dark) => {
      const { context, page, trouble } = await open({ dark, of: oneEva });
      for (const details of await page.locator('details').all())
        await details.evaluate((element) => element.setAttribute('open', ''));
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map((violation) => `${violation.id}: ${violation.nodes[0]?.html.slice(0, 160)}`)).toEqual([]);
      await page.getByRole('button', { name: 'Orbit rows' }).click();
      const rows = await new AxeBuilder({ page }).analyze();
      expect(rows.violations.map((violation) => `${violation.id}: ${violation.nodes[0]?.html.slice(0, 160)}`)).toEqual(
        [],
      );
      expect(trouble).toEqual([]);
      await context.close();
    },
    300_000,
  );

  test('carries the caution first, and says what the posts rest on', async () => {
    const { context, page } = await open();
    await expect(page.locator('.caution-banner').innerText()).resolves.toContain('not flight-certified');
    const first = await page.locator('.caution-banner').boundingBox();
    expect(first?.y).toBeLessThan(300);
    await expect(page.locator('figcaption').first().innerText()).resolves.toContain(
      'a joint plan that was found and walked',
    );
    await context.close();
  });

  test('shows the sheet of a stint that is chosen with the keyboard alone', async () => {
    const { context, page } = await open();
    const marks = page.locator('#eva-pump .home a.work');
    await marks.first().focus();
    await page.keyboard.press('ArrowRight');
    const stint = await page.evaluate(() => document.activeElement?.getAttribute('data-stint'));
    const shown = page.locator('#eva-pump .sheet:not([hidden])');
    await expect(shown.count()).resolves.toBe(1);
    await expect(shown.getAttribute('data-stint')).resolves.toBe(stint);
    await page.keyboard.press('Enter');
    await expect(page.evaluate(() => document.activeElement?.className)).resolves.toContain('sheet');
    await context.close();
  });

  test.each([1280, 800])('does not scroll sideways at %i px', async (width) => {
    const { context, page } = await open({ width });
    const overflow = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(overflow).toBeLessThanOrEqual(0);
    await context.close();
  });

  test('is whole without its script: every stint has its sheet, the chart its table', async () => {
    const { context, page } = await open({ script: false });
    const stints = await page
      .locator('#eva-mast .home a.work')
      .evaluateAll((links) => [...new Set(links.map((link) => link.getAttribute('href')))]);
    for (const href of stints) await expect(page.locator(href ?? 'nothing').count()).resolves.toBe(1);
    await expect(page.locator('#eva-mast .sheet:visible').count()).resolves.toBe(stints.length);
    await expect(page.locator('table.twin').count()).resolves.toBe(3);
    await context.close();
  });

  test('shows what is left of each supply as curves, as a table and as sums', async () => {
    const { context, page } = await open({ script: false, of: oneEva });
    const tables = page.locator('.supplies > table');
    await expect(tables.count()).resolves.toBe(2);
    await expect(tables.first().locator('tbody tr').count()).resolves.toBe(12);
    await expect(page.locator('.supply-curves path title').allInnerTexts()).resolves.toHaveLength(8);
    await page.locator('.supplies summary').first().click();
    await expect(page.locator('.supplies details').first().innerText()).resolves.toMatch(
      /oxygen, likely: body .* = .* used/,
    );
    await context.close();
  });

  test.each(['A4', 'Letter'])('prints on %s with the caution and the baseline on every page', async (format) => {
    const { context, page } = await open();
    const pdf = join(folder, `${format}.pdf`);
    await page.pdf({ path: pdf, format, preferCSSPageSize: false, printBackground: true });
    const pages = execFileSync('pdftotext', ['-layout', pdf, '-'], { encoding: 'utf8', maxBuffer: 1 << 26 })
      .split('\f')
      .filter((text) => text.trim() !== '');
    expect(pages.length).toBeGreaterThan(3);
    for (const [index, text] of pages.entries()) {
      // Lines of the foot may break anywhere.
      const flat = text.replace(/\s+/g, '');
      expect(flat, `page ${index + 1}`).toContain('notflight-certified');
      expect(flat, `page ${index + 1}`).toMatch(/baseline[0-9a-f]{12}/);
    }
    await context.close();
  });

  test('escapes what the campaign says', () => {
    expect(readFileSync(file, 'utf8')).not.toMatch(/<script>[^<]*alert/);
    expect(CAUTION).toContain('flight surgeon');
  });
});
