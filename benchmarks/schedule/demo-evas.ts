/**
 * The EVAs of the Fulmar campaign: time to the first valid timeline (at most 1 s wanted) and to the proof of each level.
 * First the answer: every timeline passes the independent replay, and two searches from different seeds agree on each level
 * that both have proved. Run: npx tsx benchmarks/schedule/demo-evas.ts [conflicts]
 */
import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import type { Finding } from '@handrail/eva/finding/finding';
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { inferHardware } from '@handrail/eva/hardware/infer-hardware';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { templates } from '@handrail/eva/kinds/templates.generated';
import { fillComputedWindows } from '@handrail/eva/sky/campaign/fill-computed-windows';
import { replayTimeline } from '@handrail/eva/proof/replay/replay-timeline';
import { type CampaignPlan, planCampaign } from '@handrail/eva/schedule/plan-campaign';
import { replanEva } from '@handrail/eva/schedule/replan-eva';

const BUDGET = Number(process.argv[2] ?? 3000);
const file = 'examples/fulmar.kdl';
const { campaign: read } = readCampaign([{ name: file, text: readFileSync(file, 'utf8') }], standardLibrary, {
  templates,
});
assert(read !== null, `${file} has errors`);
const campaign = fillComputedWindows(read);
const hardware = inferHardware(campaign, standardLibrary);

interface Timed {
  readonly plan: CampaignPlan;
  /** By EVA, ms from its own start. */
  readonly firstMs: ReadonlyMap<string, number>;
  readonly allMs: ReadonlyMap<string, number>;
}

function timed(seed: number): Timed {
  const running = planCampaign(campaign, hardware, {
    seed,
    conflictBudget: BUDGET,
    sharingTries: 0,
    skipReasons: true,
  });
  const firstMs = new Map<string, number>();
  const allMs = new Map<string, number>();
  let last = performance.now();
  let begin = last;
  let current = '';
  let next = running.next();
  for (; next.done !== true; next = running.next()) {
    const { eva, kind } = next.value;
    // The last event of the EVA before is where this one began.
    if (eva !== current) begin = last;
    current = eva;
    if (kind === 'incumbent' && !firstMs.has(eva)) firstMs.set(eva, performance.now() - begin);
    allMs.set(eva, performance.now() - begin);
    last = performance.now();
  }
  return { plan: next.value, firstMs, allMs };
}

const cold = timed(1);
const warm = timed(1);
const other = timed(2);
assert.deepEqual(warm.plan.timeline, cold.plan.timeline, 'same seed and budget, same timeline');
for (const { plan } of [warm, other]) {
  const broken: readonly Finding[] = replayTimeline(campaign, hardware, plan.timeline).filter(
    ({ severity }) => severity === 'error',
  );
  assert.deepEqual(broken, [], 'the replay finds nothing wrong');
}
for (const [index, { eva, claim }] of warm.plan.timeline.evas.entries()) {
  const theirs = other.plan.timeline.evas[index]?.claim.levels ?? [];
  for (const [level, { name, value, proved }] of claim.levels.entries()) {
    if (proved && theirs[level]?.proved === true)
      assert.equal(theirs[level]?.value, value, `${eva}: ${name} from two seeds`);
  }
}

const ms = (value: number | undefined) => `${(value ?? Number.NaN).toFixed(0)} ms`;
console.log(
  `Fulmar, ${BUDGET} conflicts per EVA. First valid timeline: cold (with just-in-time compilation), warm; all: to the end of the search`,
);
for (const { eva, claim, stints } of warm.plan.timeline.evas) {
  const levels = claim.levels.map(
    ({ name, value, bound, proved }) => `${name} ${value}${proved ? ' proved' : ` (not below ${bound})`}`,
  );
  console.log(
    `${eva.padEnd(8)} ${stints.length} stints  first ${ms(cold.firstMs.get(eva))} cold, ${ms(warm.firstMs.get(eva))} warm  all ${ms(warm.allMs.get(eva))}  ${claim.conflicts} conflicts  ${levels.join(', ')}`,
  );
}

// Planned again half-way: the first valid timeline within 100 ms is wanted, a proof or bound within 2 s.
for (const { eva, bothInS } of warm.plan.timeline.evas) {
  const begin = performance.now();
  const nowS = Math.round(bothInS / 20) * 10;
  const running = replanEva(campaign, hardware, warm.plan.timeline, { eva, nowS }, { seed: 1, conflictBudget: BUDGET });
  let firstMs: number | null = null;
  let next = running.next();
  for (; next.done !== true; next = running.next()) {
    if (next.value.kind === 'incumbent') firstMs ??= performance.now() - begin;
  }
  const { timeline, levels, status, conflicts } = next.value;
  assert(timeline !== null, 'what is under way can be finished');
  assert.ok(timeline.bothInS <= bothInS, 'nothing has changed, so it is no later than before');
  const open = levels
    .filter(({ proved }) => !proved)
    .map(({ objective, value, bound }) => `${objective} ${value} not below ${bound}`);
  console.log(
    `${eva.padEnd(8)} again at ${nowS} s: first ${ms(firstMs ?? undefined)}, all ${ms(performance.now() - begin)}, ${conflicts} conflicts, ${status} ${open.join(', ')}`,
  );
}
