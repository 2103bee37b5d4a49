import { ModelBuilder } from '@handrail/solver/model/build-model';
import type { LinearTerm, Model } from '@handrail/solver/model/model';
import { Dice } from './random-model.ts';

/** A round through places that are worth something and open for a while, and back in time. */
export interface Round {
  readonly model: Model;
  /** The most that a round is worth, and the earliest return from one that is worth so much: by going every round. */
  readonly best: readonly [worth: number, home: number];
}

interface Place {
  readonly opens: number;
  /** Latest end of the work there. */
  readonly closes: number;
  readonly work: number;
  readonly worth: number;
}

/** Ten to twelve places; levels: negated worth, return. */
export function randomRound(seed: number): Round {
  const dice = new Dice(seed);
  const horizon = dice.between(25, 45);
  const places = Array.from({ length: dice.between(10, 12) }, (): Place => {
    const opens = dice.between(0, horizon - 10);
    return {
      opens,
      closes: Math.min(horizon, opens + dice.between(6, 24)),
      work: dice.between(0, 4),
      worth: dice.between(1, 9),
    };
  });
  const at = Array.from({ length: places.length + 1 }, () => [dice.roll(10), dice.roll(10)] as const);
  const way = (i: number, j: number) =>
    Math.abs((at[i]?.[0] as number) - (at[j]?.[0] as number)) +
    Math.abs((at[i]?.[1] as number) - (at[j]?.[1] as number));
  const b = new ModelBuilder(`round ${seed}`, horizon);
  const out = b.interval('out', 0, { endMax: 0 });
  const home = b.interval('home', 0);
  const terms: LinearTerm[] = [];
  const members = [out, home].map((interval) => ({ interval, startType: 0, endType: 0 }));
  places.forEach(({ opens, closes, work, worth }, i) => {
    const presence = b.boolean(`visits ${i}`);
    const interval = b.interval(`place ${i}`, work, { presence, startMin: opens, endMax: closes });
    members.push({ interval, startType: i + 1, endType: i + 1 });
    terms.push({ coefficient: -worth, variable: presence.variable });
  });
  b.post({
    kind: 'sequence',
    members,
    types: at.length,
    transitions: at.flatMap((_, i) => at.map((__, j) => way(i, j))),
    first: out,
    last: home,
    transitionTotal: null,
    tag: null,
  });
  b.minimise('negated worth', { terms, constant: 0 });
  b.minimise('return', { terms: [{ coefficient: 1, variable: b.intervalAt(home).start }], constant: 0 });
  return { model: b.build(), best: goEveryRound(places, way, horizon) };
}

function goEveryRound(
  places: readonly Place[],
  way: (i: number, j: number) => number,
  horizon: number,
): readonly [number, number] {
  let best: readonly [number, number] = [0, 0];
  const visited = new Set<number>();
  const goOn = (from: number, time: number, worth: number) => {
    const home = time + way(from, 0);
    if (home > horizon) return;
    if (worth > best[0] || (worth === best[0] && home < best[1])) best = [worth, home];
    places.forEach((place, i) => {
      if (visited.has(i)) return;
      const end = Math.max(time + way(from, i + 1), place.opens) + place.work;
      if (end > place.closes) return;
      visited.add(i);
      goOn(i + 1, end, worth + place.worth);
      visited.delete(i);
    });
  };
  goOn(0, 0, 0);
  return best;
}
