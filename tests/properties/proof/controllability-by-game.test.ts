import { checkControllability } from '@handrail/eva/proof/control/check-controllability';
import { runStrategy } from '@handrail/eva/proof/control/run-strategy';
import type { Stnu, StnuContingent, StnuRequirement } from '@handrail/eva/proof/control/stnu';
import { describe, expect, it } from 'vitest';
import { controllableByGame } from './controllable-by-game.ts';
import { randomFrom } from './random-networks.ts';

function randomNetwork(seed: number): Stnu {
  const random = randomFrom(seed);
  const events = 4 + random(3);
  const contingents: StnuContingent[] = [];
  const links = 1 + random(2);
  const ends = new Set<number>();
  for (let link = 0; link < links; link++) {
    const to = events - 1 - link;
    let from = random(events - links);
    // A link may start where another ends.
    if (link === 1 && random(3) === 0) from = events - 1;
    const leastS = 1 + random(2);
    contingents.push({ from, to, leastS, mostS: leastS + random(4) });
    ends.add(to);
  }
  const requirements: StnuRequirement[] = [];
  for (let event = 1; event < events; event++) {
    if (!ends.has(event)) requirements.push({ from: 0, to: event, leastS: 0, mostS: 3 + random(4) });
  }
  const more = 2 + random(4);
  for (let link = 0; link < more; link++) {
    const from = random(events);
    const to = random(events);
    if (from === to) continue;
    const leastS = random(6) - 3;
    requirements.push({
      from,
      to,
      leastS: random(4) === 0 ? null : leastS,
      mostS: random(3) === 0 ? null : leastS + random(5),
    });
  }
  return { events, requirements, contingents };
}

describe('dynamic controllability of small networks', () => {
  it('is what playing every choice against every choice says, 1500 times', () => {
    const counts = { yes: 0, no: 0 };
    for (let seed = 1; seed <= 1500; seed++) {
      const stnu = randomNetwork(seed);
      const decided = checkControllability(stnu).controllable;
      const played = controllableByGame(stnu, 16);
      expect(decided, `seed ${seed}: ${JSON.stringify(stnu)}`).toBe(played);
      counts[decided ? 'yes' : 'no']++;
    }
    expect(Math.min(counts.yes, counts.no)).toBeGreaterThan(250);
  });

  it('gives a strategy that holds for every length', () => {
    let runs = 0;
    for (let seed = 1; seed <= 1500; seed++) {
      const stnu = randomNetwork(seed);
      const decided = checkControllability(stnu);
      if (!decided.controllable) continue;
      for (const lengthsS of everyLength(stnu.contingents)) {
        const run = runStrategy(stnu, decided.strategy, lengthsS);
        expect(
          run.ok
            ? ''
            : `seed ${seed}, lengths ${lengthsS.join()}: ${run.words} ${JSON.stringify(stnu)} ${run.timesS.join()}`,
        ).toBe('');
        runs++;
      }
    }
    expect(runs).toBeGreaterThan(1000);
  });

  it('with one delay for all is that of the network in which each end comes so much later, 1000 times', () => {
    const counts = { yes: 0, no: 0, onlyAtOnce: 0 };
    for (let seed = 1; seed <= 1000; seed++) {
      const stnu = randomNetwork(seed);
      const delayS = 1 + (seed % 3);
      const delayed = { ...stnu, contingents: stnu.contingents.map((link) => ({ ...link, delayS })) };
      const decided = checkControllability(delayed);
      const played = controllableByGame(seenLater(stnu, delayS), 20);
      expect(decided.controllable, `seed ${seed}, delay ${delayS}: ${JSON.stringify(stnu)}`).toBe(played);
      counts[played ? 'yes' : 'no']++;
      if (!played && checkControllability(stnu).controllable) counts.onlyAtOnce++;
      if (!decided.controllable) continue;
      for (const lengthsS of everyLength(stnu.contingents)) {
        const run = runStrategy(delayed, decided.strategy, lengthsS);
        expect(run.ok ? '' : `seed ${seed}, lengths ${lengthsS.join()}: ${run.words}`).toBe('');
      }
    }
    expect(Math.min(counts.yes, counts.no)).toBeGreaterThan(150);
    expect(counts.onlyAtOnce).toBeGreaterThan(5);
  });

  it('with lanes lies between seeing everything at once and hearing of everything late, and its strategy holds', () => {
    let between = 0;
    for (let seed = 1; seed <= 1500; seed++) {
      const stnu = randomNetwork(seed);
      const delayS = 1 + (seed % 3);
      const random = randomFrom(seed + 77);
      const lanes = Array.from({ length: stnu.events }, () => 1 + random(3));
      const contingents = stnu.contingents.map((link) => ({ ...link, delayS }));
      const mixed = { ...stnu, contingents, lanes };
      const decided = checkControllability(mixed);
      const late = checkControllability({ ...stnu, contingents }).controllable;
      const atOnce = checkControllability(stnu).controllable;
      if (late) expect(decided.controllable, `seed ${seed}`).toBe(true);
      if (!atOnce) expect(decided.controllable, `seed ${seed}`).toBe(false);
      if (decided.controllable && !late) between++;
      if (!decided.controllable) continue;
      for (const lengthsS of everyLength(stnu.contingents)) {
        const run = runStrategy(mixed, decided.strategy, lengthsS);
        expect(run.ok ? '' : `seed ${seed}, lengths ${lengthsS.join()}: ${run.words} ${JSON.stringify(mixed)}`).toBe(
          '',
        );
      }
    }
    expect(between).toBeGreaterThan(5);
  });
});

/** The same network in terms of when ends are heard of. */
function seenLater(stnu: Stnu, delayS: number): Stnu {
  const ends = new Set(stnu.contingents.map(({ to }) => to));
  const later = (event: number): number => (ends.has(event) ? delayS : 0);
  return {
    events: stnu.events,
    contingents: stnu.contingents.map(({ from, to, leastS, mostS }) => {
      const shift = later(to) - later(from);
      return { from, to, leastS: leastS + shift, mostS: mostS + shift };
    }),
    requirements: stnu.requirements.map(({ from, to, leastS, mostS }) => {
      const shift = later(to) - later(from);
      return {
        from,
        to,
        leastS: leastS === null ? null : leastS + shift,
        mostS: mostS === null ? null : mostS + shift,
      };
    }),
  };
}

export function everyLength(links: readonly StnuContingent[]): number[][] {
  return links.reduce<number[][]>(
    (all, { leastS, mostS }) =>
      all.flatMap((lengths) => Array.from({ length: mostS - leastS + 1 }, (_, more) => [...lengths, leastS + more])),
    [[]],
  );
}
