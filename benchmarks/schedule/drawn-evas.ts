/**
 * Drawn EVAs of 25 to 120 stints: two people to 40 stints, three to 80, four beyond; a tree of twelve places; two stints in
 * five may be done by anybody; states that chain stints, eclipse for one in ten, a clock. Each can be done by construction:
 * states and orders follow the numbering, the wall is far. First the answer (independent checker and replay find nothing wrong),
 * then the times: to the first valid timeline, and what is proved within the budget.
 * Run: npx tsx benchmarks/schedule/drawn-evas.ts [conflicts] [stints…]
 */
import { strict as assert } from 'node:assert';
import type { Stint, Task } from '@handrail/eva/campaign/campaign';
import type { Finding } from '@handrail/eva/finding/finding';
import { replayTimeline } from '@handrail/eva/proof/replay/replay-timeline';
import { planCampaign } from '@handrail/eva/schedule/plan-campaign';
import { checkSolution } from '@handrail/solver-checker/check-solution';
import {
  campaign,
  clock,
  eva,
  hardwareModel,
  NO_LIMITS,
  passages,
  person,
  rail,
  role,
  type ShortEffects,
  SPAN,
  stint,
  task,
  windowSet,
} from '../../tests/properties/schedule/small-campaign.ts';

const [budget = 3000, ...wanted] = process.argv.slice(2).map(Number);
const SIZES = wanted.length > 0 ? wanted : [25, 40, 60, 120];
const SEEDS = [1, 2, 3];

/** Marsaglia's xorshift with 13, 17, 5: the same draw on every machine. */
function drawing(seed: number): (below: number) => number {
  let state = (seed * 2654435761) | 1;
  return (below) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % below;
  };
}

function drawnEva(size: number, seed: number) {
  const draw = drawing(seed * 1000 + size);
  const crew = Array.from({ length: size <= 40 ? 2 : size <= 80 ? 3 : 4 }, (_, i) => `EV${i + 1}`);
  const places = Array.from({ length: 12 }, (_, i) => `p${i}`);
  const rails = places.slice(1).map((id, i) => rail(places[draw(i + 1)] as string, id, 1 + draw(4)));
  const effects: Record<string, ShortEffects> = {};
  const variables: Record<string, readonly string[]> = {};
  const stints: Stint[] = [];
  for (let i = 0; i < size; i++) {
    const key = `t${Math.floor(i / 3)}/s${i}`;
    const who = draw(5) < 2 ? crew : [crew[draw(crew.length)] as string];
    const at = places[draw(12)] as string;
    const roles = [role('lead', who, at)];
    if (draw(8) === 0)
      roles.push(
        role(
          'partner',
          crew.filter((id) => who.length > 1 || id !== who[0]),
          at,
        ),
      );
    const own = `v${i}`;
    variables[own] = ['before', 'after'];
    const earlier = i > 0 && draw(3) > 0 ? [`v${Math.max(0, i - 1 - draw(6))}=after`] : [];
    effects[key] = { needs: [`${own}=before`, ...earlier], leaves: [`${own}=after`] };
    const inNight = draw(10) === 0;
    stints.push(
      stint(key, [2 + draw(8), 1 + draw(6)], roles, {
        windowUses: inNight
          ? [{ window: 'night', mode: 'inside', part: 'whole', fromStep: 0, toStep: 2, prefers: false, span: SPAN }]
          : [],
      }),
    );
  }
  const ids = [...new Set(stints.map((one) => one.task))];
  const tasks: Task[] = ids.map((id, i) =>
    task(
      id,
      i + 1,
      stints.filter((one) => one.task === id),
      { order: 'free' },
    ),
  );
  const nights = Array.from({ length: 15 }, (_, i) => [60 + i * 93, 96 + i * 93] as const);
  const walls = { longestS: 20 * 3600 };
  const c = campaign({
    people: crew.map((id) => person(id)),
    evas: [eva('one', { ...passages(crew, 6), closeHatchS: 420, ...walls })],
    tasks,
    rails,
    more: {
      windows: [windowSet('night', nights, 30)],
      clocks: [clock('cold', 240, 'v0=after', 'v3=after')],
      limits: { ...NO_LIMITS, marginS: 900 },
    },
  });
  return { campaign: c, hardware: hardwareModel(variables, effects, stints) };
}

function run(size: number, seed: number): string {
  const drawn = drawnEva(size, seed);
  const begin = performance.now();
  const running = planCampaign(drawn.campaign, drawn.hardware, { seed: 1, conflictBudget: budget, skipReasons: true });
  let firstMs: number | null = null;
  let next = running.next();
  for (; next.done !== true; next = running.next()) {
    if (next.value.kind === 'incumbent') firstMs ??= performance.now() - begin;
  }
  const ms = performance.now() - begin;
  const [outcome] = next.value.evas;
  const [timeline] = next.value.timeline.evas;
  assert(outcome?.plan.solution && timeline, 'a plan exists by construction');
  assert.deepEqual(checkSolution(outcome.plan.evaModel.model, outcome.plan.solution), []);
  const broken: readonly Finding[] = replayTimeline(drawn.campaign, drawn.hardware, next.value.timeline).filter(
    ({ severity }) => severity === 'error',
  );
  assert.deepEqual(broken, []);
  const levels = timeline.claim.levels.map(
    ({ name, value, bound, proved }) => `${name} ${value}${proved ? '' : ` ≥ ${bound}`}`,
  );
  return `${String(size).padStart(3)} stints, draw ${seed}: first ${firstMs?.toFixed(0)} ms, all ${ms.toFixed(0)} ms, ${timeline.claim.conflicts} conflicts, ${levels.join(', ')}`;
}

run(12, 1);
for (const size of SIZES) for (const seed of SEEDS) console.log(run(size, seed));
