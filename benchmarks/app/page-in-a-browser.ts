/**
 * The page in a real browser, on this machine: how long until the plan's verdict is there, and what drawing a chart of 500 stints
 * costs while it is moved, beside an empty canvas of the same size in the same run. What is asserted: all 500 are drawn.
 */
import type { Page } from 'playwright-core';
import { appWith, personAt, settled } from '../../tests/support/served-app.ts';

const OPENINGS = 20;
const STINTS = 500;
const FRAMES = 120;

const rows = Array.from({ length: STINTS }, (_, index) => index);
const text = [
  'handrail 1',
  'campaign long "A long EVA"',
  'eva one egress="2031-09-14T11:40:00Z"',
  ...rows.map((row) => `task t${row} "Piece ${row}" { stint s who=EV${(row % 2) + 1} { minutes 1 } }`),
  '',
].join('\n');
const timeline = {
  format: 'handrail-timeline',
  version: 1,
  campaign: 'long',
  documentHash: '0'.repeat(64),
  library: { id: 'standard', version: '1' },
  evas: [
    {
      eva: 'one',
      petZeroUtcMs: Date.UTC(2031, 8, 14, 11, 40),
      tasks: rows.map((row) => `t${row}`),
      stints: rows.map((row) => {
        const startS = Math.floor(row / 2) * 60;
        return { stint: `t${row}/s`, startS, endS: startS + 60, assigned: [`EV${(row % 2) + 1}`], stepEndsS: [] };
      }),
      passages: [],
      moves: [],
      holds: [],
      joins: [],
      bothInS: STINTS * 30,
      wall: null,
      claim: { status: 'written by hand', levels: [], seed: 0, conflicts: 0 },
    },
  ],
  leftOut: [],
};

const app = await appWith({ 'long.kdl': text, 'long.timeline.json': JSON.stringify(timeline) });
const { browser, server } = app;
try {
  const { page } = await personAt(browser, server, 'ana');
  const taken: number[] = [];
  for (let opening = 0; opening < OPENINGS; opening++) {
    const began = performance.now();
    await page.goto(`${server.address}/`);
    await page.getByRole('heading', { name: 'Campaigns' }).waitFor();
    taken.push(performance.now() - began);
  }
  taken.sort((a, b) => a - b);
  console.log(
    `first page interactive: median of ${OPENINGS} ${Math.round(taken[OPENINGS / 2] ?? 0)} ms (1000 wanted), longest ${Math.round(taken.at(-1) ?? 0)} ms`,
  );

  await page.goto(`${server.address}/campaigns/long`);
  await settled(page);
  const drawn = Number(await page.getByTestId('home-chart').locator('canvas').getAttribute('data-drawn'));
  if (drawn !== STINTS) throw new Error(`${drawn} stints are drawn, ${STINTS} are planned`);
  const chart = await framesWhile(page, true);
  const empty = await framesWhile(page, false);
  console.log(
    `chart of ${STINTS} stints while it is moved: ${chart.toFixed(1)} ms a frame; an empty canvas ${empty.toFixed(1)} ms; ratio ${(chart / empty).toFixed(2)}`,
  );
} finally {
  await app.end();
}

/** Mean milliseconds between frames while the chart, or an empty canvas laid over it, is redrawn in each. */
function framesWhile(page: Page, isChart: boolean): Promise<number> {
  return page.evaluate(
    async ([frames, onChart]) => {
      const canvas = document.querySelector<HTMLCanvasElement>('[data-testid="home-chart"] canvas');
      if (canvas === null) throw new Error('no chart');
      const blank = document.createElement('canvas');
      blank.width = canvas.width;
      blank.height = canvas.height;
      const pen = blank.getContext('2d');
      const box = canvas.getBoundingClientRect();
      const began = performance.now();
      for (let frame = 0; frame < frames; frame++) {
        if (onChart) {
          const deltaY = frame % 40 < 20 ? -40 : 40;
          canvas.dispatchEvent(
            new WheelEvent('wheel', {
              deltaY,
              clientX: box.x + box.width / 2,
              clientY: box.y + 50,
              bubbles: true,
              cancelable: true,
            }),
          );
        } else pen?.clearRect(0, 0, blank.width, blank.height);
        await new Promise((resolve) => requestAnimationFrame(resolve));
      }
      return (performance.now() - began) / frames;
    },
    [FRAMES, isChart] as const,
  );
}
