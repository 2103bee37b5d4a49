/**
 * Dynamic controllability of a plan of 120 stints by two people, with ways between them, a join at every third, a reaction time,
 * steps within stints and a late egress. First the answers, then the time.
 *
 * The answer is known by another method: where the wall is the only limit, the plan can be kept if and only if the longest chain of
 * longest times ends by it. So one second less than that must be refused, with exactly one second short.
 */
import { strict as assert } from 'node:assert';
import { checkControllability } from '@handrail/eva/proof/control/check-controllability';
import type { Stnu, StnuContingent, StnuRequirement } from '@handrail/eva/proof/control/stnu';

const STINTS = 120;
const REACTION_S = 30;
const SLIP_S = 900;

/** Seeded, so that every run is about the same plan. */
let state = 7;
const random = (below: number): number => {
  state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
  return (state >>> 8) % below;
};

interface Draft {
  events: number;
  readonly lanes: number[];
  readonly contingents: StnuContingent[];
  readonly requirements: StnuRequirement[];
  /** Latest time of each event when all waits and longest times count: filled in as events come, in an order that fits. */
  readonly latestS: number[];
}

function event(draft: Draft, lane: number): number {
  draft.lanes.push(lane);
  draft.latestS.push(0);
  return draft.events++;
}

function after(draft: Draft, from: number, to: number, leastS: number): void {
  draft.requirements.push({ from, to, leastS, mostS: null });
  draft.latestS[to] = Math.max(draft.latestS[to] as number, (draft.latestS[from] as number) + leastS);
}

function takes(draft: Draft, from: number, to: number, leastS: number, mostS: number): void {
  draft.contingents.push({ from, to, leastS, mostS, delayS: REACTION_S });
  draft.latestS[to] = (draft.latestS[from] as number) + mostS;
}

function draftPlan(): { draft: Draft; zero: number; end: number } {
  const draft: Draft = { events: 0, lanes: [], contingents: [], requirements: [], latestS: [] };
  const log = event(draft, 3);
  const zero = event(draft, 3);
  takes(draft, log, zero, 0, SLIP_S);
  const last = [zero, zero];
  for (let stint = 0; stint < STINTS; stint++) {
    const who = stint % 2;
    const lane = who + 1;
    const go = event(draft, lane);
    const there = event(draft, lane);
    after(draft, last[who] as number, go, 0);
    takes(draft, go, there, 60 + random(120), 200 + random(120));
    let at = event(draft, lane);
    after(draft, there, at, 60);
    // The other has to be done first.
    if (stint % 3 === 0) after(draft, last[1 - who] as number, at, REACTION_S);
    for (let step = 0; step < 2; step++) {
      const done = event(draft, lane);
      const leastS = 120 + random(300);
      takes(draft, at, done, leastS, leastS + 60 + random(300));
      at = done;
    }
    last[who] = at;
  }
  const end = event(draft, 3);
  for (const one of last) after(draft, one, end, 60);
  return { draft, zero, end };
}

const { draft, zero, end } = draftPlan();
// Counted from PET 0, at its latest like everything else.
const longestS = (draft.latestS[end] as number) - SLIP_S;
const withWall = (wallS: number): Stnu => ({
  events: draft.events,
  lanes: draft.lanes,
  contingents: draft.contingents,
  requirements: [...draft.requirements, { from: zero, to: end, leastS: null, mostS: wallS }],
});

assert.equal(checkControllability(withWall(longestS)).controllable, true, 'the longest chain just fits');
const refused = checkControllability(withWall(longestS - 1));
assert.ok(!refused.controllable && refused.shortS === 1, 'one second less does not, by one second');

const cpuMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
const times = Array.from({ length: 12 }, () => {
  const begin = cpuMs();
  checkControllability(withWall(longestS));
  return cpuMs() - begin;
});
const [cold = 0] = times;
const warm = times.slice(4).sort((a, b) => a - b);
const median = warm[Math.floor(warm.length / 2)] ?? 0;
console.log(
  `controllability: ${STINTS} stints, ${draft.events} events, ${draft.contingents.length} contingent links: median ${median.toFixed(0)} ms of processor time warm, ${cold.toFixed(0)} ms the first time (target 300 ms)`,
);
