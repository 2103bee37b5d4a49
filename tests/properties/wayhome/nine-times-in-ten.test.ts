/**
 * W is to hold nine times in ten. It adds up the 90th percentiles of the closing verbs and takes ways at their slowest; here the times
 * are drawn instead: verbs from the spread of their kind, with none, half or all of the variance common to one person (log d = μ +
 * σ(√ρ·pace + √(1−ρ)·own)), ways and passages evenly within the stated spread, one factor for each person; all else stays at its
 * longest. The plan is walked as found. Read with 3 standard errors of the share.
 */
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { durationAt, fitPercentiles } from '@handrail/eva/campaign/duration/fit-percentiles';
import { wayHomeSurface } from '@handrail/eva/wayhome/way-home-surface';
import type { PlanStep, WayHome } from '@handrail/eva/wayhome/way-home-plan';
import { expect, test } from 'vitest';
import { plannedFulmar } from '../../support/planned-fulmar.ts';

const { campaign, hardware, timeline } = plannedFulmar();
const DRAWS = 1500;
const [least, most] = campaign.limits.travelSpread ?? [1, 1];

/** Mulberry32: small, seeded, good enough to draw times from. */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Time of one verb at a normal deviate; read from the three figures of its kind. */
function verbTimes(step: PlanStep, pace: number): readonly ((z: number) => number)[] {
  return step.words
    .replace(/ \(stops [^)]*\)/g, '')
    .split(', ')
    .map((sentence) => {
      const piece = campaign.hardware.find((one) => sentence.endsWith(` ${one.title}`));
      const verb = standardLibrary.kinds
        .get(piece?.kind ?? '')
        ?.verbs.find((one) => one.id === sentence.slice(0, sentence.indexOf(' ')));
      if (verb === undefined) throw new Error(`nobody knows how to "${sentence}"`);
      const { low, likely, high } = verb.timeS;
      const fit = fitPercentiles({ lowS: low, likelyS: likely, highS: high });
      const turnsS = (verb.perTurnS ?? 0) * (piece?.turns ?? 0);
      return (z) => (durationAt(fit, z) + turnsS) * pace;
    });
}

/** Share of draws in which the plan, walked as found, is over within W. */
function share(way: WayHome, commonShare: number, uniform: () => number): number {
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  const walks = way.people.map(({ person, steps }) => {
    const pace = campaign.people.find(({ id }) => id === person)?.pace ?? 1;
    return steps
      .filter(({ words }) => words !== 'wait for the hatch')
      .map((step) => ({ step, verbs: step.kind === 'close' ? verbTimes(step, pace) : null }));
  });
  const inTurn = way.people
    .map((person, index) => ({ index, passS: person.steps.find(({ kind }) => kind === 'hatch')?.startS ?? 0 }))
    .sort((a, b) => a.passS - b.passS);
  let within = 0;
  for (let draw = 0; draw < DRAWS; draw++) {
    let hatchFreeS = 0;
    for (const { index } of inTurn) {
      const common = normal();
      const slow = (least + (most - least) * uniform()) / most;
      let nowS = 0;
      for (const { step, verbs } of walks[index] ?? []) {
        const lengthS = step.endS - step.startS;
        if (step.kind === 'hatch') nowS = Math.max(nowS, hatchFreeS) + lengthS * slow;
        else if (verbs !== null) {
          for (const timeAt of verbs) {
            nowS += timeAt(Math.sqrt(commonShare) * common + Math.sqrt(1 - commonShare) * normal());
          }
        } else nowS += step.kind === 'travel' ? lengthS * slow : lengthS;
      }
      hatchFreeS = nowS;
    }
    if (hatchFreeS + way.closeHatchS <= (way.totalS ?? 0)) within++;
  }
  return within / DRAWS;
}

test.each(timeline.evas.map((eva) => [eva.eva, eva] as const))(
  'EVA %s: no way home of the worst is longer more often',
  (_, eva) => {
    const surface = wayHomeSurface(campaign, hardware, standardLibrary, timeline, eva);
    const ways = new Map<string, WayHome>();
    for (const { worst } of surface.samples) {
      for (const mode of ['terminate', 'abort'] as const) {
        const { way } = worst[mode];
        const closes = way?.people.some(({ steps }) => steps.some(({ kind }) => kind === 'close')) ?? false;
        // Until a request is set is not drawn.
        const asks =
          way?.people.some(({ steps }) => steps.some(({ words }) => words.startsWith('wait until'))) ?? false;
        if (way !== null && closes && !asks) ways.set(way.words, way);
      }
    }
    expect(ways.size).toBeGreaterThan(3);
    const uniform = random(7);
    const allowed = 0.9 - 3 * Math.sqrt((0.9 * 0.1) / DRAWS);
    let short = 0;
    for (const way of ways.values()) {
      for (const commonShare of [0, 0.5, 1]) {
        expect(share(way, commonShare, uniform), `${commonShare} common: ${way.words}`).toBeGreaterThanOrEqual(allowed);
      }
      if (share({ ...way, totalS: 0.85 * (way.totalS ?? 0) }, 1, uniform) < allowed) short++;
    }
    // A W of 85 % of it would not do.
    expect(short).toBeGreaterThan(0);
  },
);
