/**
 * All pairs over 200 places × 10 anchors × 3 loads (hands free, two classes). First the answer, then the time.
 *
 * Answer 1, closed form: on a grid of m × n places a minute apart the sum of the distances of all ordered pairs is
 * n²·m(m² − 1)/3 + m²·n(n² − 1)/3 minutes (each coordinate is a path, whose sum over ordered pairs is k(k² − 1)/3).
 * Answer 2, with reels that end: hatch to the far corner is the closed form plus the least number of swaps, counted by hand.
 */
import { strict as assert } from 'node:assert';
import type { Campaign } from '@handrail/eva/campaign/campaign';
import { travelTable } from '@handrail/eva/vehicle/travel-table';
import { bareCampaign, outsidePerson, piece, place, rail, SPAN } from '../../tests/reference/routes/bare-campaign.ts';

const M = 10;
const N = 20;
const LOADS = [null, 'small', 'large'] as const;

/** Ten anchors along the middle of the long side, two columns apart; rails of 2 m. */
function grid(reelM: number): Campaign {
  const id = (row: number, column: number): string => `p${row}-${column}`;
  const rails = [];
  for (let row = 0; row < M; row++) {
    for (let column = 0; column < N; column++) {
      if (row + 1 < M) rails.push(rail(id(row, column), id(row + 1, column), 60, { lengthM: 2 }));
      if (column + 1 < N) rails.push(rail(id(row, column), id(row, column + 1), 60, { lengthM: 2 }));
    }
  }
  return bareCampaign({
    vehicle: {
      id: 'grid',
      title: 'Grid',
      places: Array.from({ length: M * N }, (_, i) => place(id(Math.floor(i / N), i % N))),
      rails,
      loadClasses: [
        { id: 'small', title: 'Small', factor: 1.25, fillsHands: false, span: SPAN },
        { id: 'large', title: 'Large', factor: 1.5, fillsHands: true, span: SPAN },
      ],
      hatch: id(0, 0),
      span: SPAN,
    },
    people: [outsidePerson('EV1', { startAnchor: 'a0', tetherLengthM: reelM })],
    hardware: Array.from({ length: 10 }, (_, i) => piece(`a${i}`, 'anchor', id(0, 2 * i))),
    limits: { ...bareCampaign().limits, tetherSwapS: 60 },
  });
}

function sumOfAllPairs(campaign: Campaign): { sumS: number; ms: number } {
  const begin = performance.now();
  const table = travelTable(campaign);
  const ids = campaign.vehicle.places.map((one) => one.id);
  let sumS = 0;
  for (const load of LOADS) {
    for (const from of ids) for (const to of ids) sumS += table.secondsBetween(from, to, load, 1) ?? Number.NaN;
  }
  return { sumS, ms: performance.now() - begin };
}

const long = grid(1000);
const closedForm = 60 * ((N * N * M * (M * M - 1)) / 3 + (M * M * N * (N * N - 1)) / 3) * (1 + 1.25 + 1.5);
assert.ok(Math.abs(sumOfAllPairs(long).sumS - closedForm) < 1e-3, 'the sum over all pairs is the closed form');

// Reel 26 m: 13 rails. From a0 the reel reaches 13 columns along the row: the far corner is 9 + 19 = 28 rails away. The last
// anchor must be within 13 rails of it, (19 − 2i) + 9 ≤ 13: i ≥ 8 (column 16). From a0, column 16 is out of reach (16 > 13): one
// anchor between, so two swaps.
const short = grid(26);
assert.equal(travelTable(short).secondsBetween('p0-0', 'p9-19', null, 1), 28 * 60 + 2 * 60);

const times = Array.from({ length: 7 }, () => sumOfAllPairs(short).ms).sort((a, b) => a - b);
const cold = times.at(-1) as number;
const median = times[3] as number;
console.log(
  `routes: 200 places × 10 anchors × 3 loads, all pairs: median ${median.toFixed(0)} ms, slowest ${cold.toFixed(0)} ms`,
);
