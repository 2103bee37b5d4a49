/**
 * All pairs over 200 places × 10 anchors × 3 loads (hands free, two classes). First the answer, then the time.
 *
 * Answer 1, closed form: on a grid of m × n places a minute apart the sum of the distances of all ordered pairs is
 * n²·m(m² − 1)/3 + m²·n(n² − 1)/3 minutes (each coordinate is a path, whose sum over ordered pairs is k(k² − 1)/3).
 * Answer 2, with reels that end: hatch to the far corner is the closed form plus the least number of swaps, counted by hand.
 */
import { strict as assert } from 'node:assert';
import type { Campaign } from '@handrail/eva/campaign/campaign';
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { travelTable } from '@handrail/eva/vehicle/travel-table';

const M = 10;
const N = 20;
const LOADS = [null, 'small', 'large'] as const;

/** Ten anchors along one long side, two columns apart; rails of 2 m and a minute. */
function grid(reelM: number): Campaign {
  const id = (row: number, column: number): string => `p${row}-${column}`;
  const lines = [
    'handrail 1',
    'campaign grid "Grid"',
    `person EV1 role=outside pace=1.0 anchor=a0 tether="${reelM} m"`,
    'limits { tether-swap "1 min"; }',
    'eva one egress="2031-09-14T12:00:00Z" { out EV1 "8 min"; in EV1 "6 min"; close-hatch "7 min"; }',
    `vehicle grid "Grid" hatch=${id(0, 0)} {`,
    'load-class small factor=1.25',
    'load-class large factor=1.5 fills-hands=#true',
  ];
  for (let row = 0; row < M; row++) {
    for (let column = 0; column < N; column++) lines.push(`place ${id(row, column)}`);
  }
  for (let row = 0; row < M; row++) {
    for (let column = 0; column < N; column++) {
      for (const to of [row + 1 < M ? id(row + 1, column) : null, column + 1 < N ? id(row, column + 1) : null]) {
        if (to !== null) lines.push(`rail ${id(row, column)} ${to} minutes="1 min" length="2 m"`);
      }
    }
  }
  lines.push('}');
  for (let i = 0; i < 10; i++) lines.push(`hardware a${i} kind=anchor at=${id(0, 2 * i)}`);
  const { campaign, problems } = readCampaign([{ name: 'grid.kdl', text: lines.join('\n') }], standardLibrary);
  assert.ok(campaign !== null, problems.map((one) => `${one.what}: ${one.expected}`).join('; '));
  return campaign;
}

/** Processor time of this process, ms: what a machine that is doing other things as well does not change. */
function cpuMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

function sumOfAllPairs(campaign: Campaign): { sumS: number; ms: number } {
  const begin = cpuMs();
  const table = travelTable(campaign);
  const ids = campaign.vehicle.places.map((one) => one.id);
  let sumS = 0;
  for (const load of LOADS) {
    for (const from of ids) for (const to of ids) sumS += table.secondsBetween(from, to, load, 1) ?? Number.NaN;
  }
  return { sumS, ms: cpuMs() - begin };
}

const long = grid(150);
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
  `routes: 200 places × 10 anchors × 3 loads, all pairs: median ${median.toFixed(0)} ms of processor time, slowest ${cold.toFixed(0)} ms`,
);
