import type { IntervalId, Model, Sequence } from '../model/model.ts';
import { FORBIDDEN } from '../model/model.ts';
import { RouteWorthPropagator } from '../propagators/route-worth.ts';
import type { Compilation } from './compilation.ts';

/** Told values for engine variables that together may make a good plan. */
type Suggest = (values: readonly (readonly [variable: number, value: number])[]) => void;

/** Fewer members than this are soon searched through. */
const FEWEST = 8;

/**
 * A bound on what a lane can be worth for each level that is a sum with an auxiliary variable, and each lane between a first and a last
 * member that are always there, some members of which the level rewards.
 */
export function postRouteWorths(at: Compilation, suggest: Suggest): void {
  for (const { variable, level } of at.objectiveVariables) {
    at.model.constraints.forEach((c, index) => {
      if (c.kind === 'sequence') postLane(at, c, index, variable, level, suggest);
    });
  }
}

function postLane(
  at: Compilation,
  c: Sequence,
  index: number,
  variable: number,
  level: number,
  suggest: Suggest,
): void {
  const { model } = at;
  const ids = [...new Set(c.members.map(({ interval }) => interval))];
  const n = ids.length;
  const presence = ids.map((id) => at.interval(id).presence);
  const [first, last] = [ids.indexOf(c.first ?? -1), ids.indexOf(c.last ?? -1)];
  if (n < FEWEST || first < 0 || last < 0 || presence[first] !== -1 || presence[last] !== -1) return;
  const worth = new Int32Array(n);
  let elsewhere = 0;
  const member = new Map(presence.map((literal, i) => [literal, i]));
  for (const { coefficient, variable: v } of (model.objectives[level] as Model['objectives'][number]).minimise.terms) {
    const i = coefficient < 0 ? member.get(2 * v) : undefined;
    const { min, max } = model.variables[v] as { min: number; max: number };
    if (i === undefined) elsewhere += Math.min(coefficient * min, coefficient * max);
    else worth[i] = (worth[i] as number) - coefficient;
  }
  if (worth.filter((w) => w > 0).length < FEWEST) return;
  const [startMin, endMax, duration] = [new Int32Array(n), new Int32Array(n), new Int32Array(n)];
  ids.forEach((id, i) => {
    [startMin[i], endMax[i], duration[i]] = timesOf(at, id);
  });
  const step = new Int32Array(n * n);
  const typed = ids.map((id) => c.members.find(({ interval }) => interval === id) as Sequence['members'][number]);
  typed.forEach((a, i) =>
    typed.forEach((b, j) => {
      step[i * n + j] = Math.min(FORBIDDEN, c.transitions[a.endType * c.types + b.startType] as number);
    }),
  );
  const orders = new Map<string, number>();
  for (const { variable: order, first: a, second: b } of at.orders)
    orders.set(`${a.to.interval} ${b.to.interval}`, order);
  new RouteWorthPropagator(at.kernel, {
    graph: { size: n, first, last, startMin, endMax, duration, worth, step, horizon: model.horizon },
    presence,
    objective: { variable, offset: 0 },
    elsewhere,
    constraint: index,
    suggest: (walk) => {
      const values: [number, number][] = [];
      presence.forEach((literal, i) => {
        if (literal >= 0) values.push([literal >> 1, walk.includes(i) === ((literal & 1) === 0) ? 1 : 0]);
      });
      walk.forEach((i, x) => {
        for (const j of walk.slice(x + 1)) {
          const [a, b] = [at.root(ids[i] as number), at.root(ids[j] as number)];
          const forth = orders.get(`${a} ${b}`);
          const back = orders.get(`${b} ${a}`);
          if (forth !== undefined) values.push([forth, 1]);
          if (back !== undefined) values.push([back, 0]);
        }
      });
      suggest(values);
    },
  });
}

/** Earliest start, latest end and least duration that the model's own bounds promise. */
function timesOf({ model }: Compilation, id: IntervalId): [number, number, number] {
  const { start, end, duration } = model.intervals[id] as Model['intervals'][number];
  const bounds = (v: number) => model.variables[v] as { min: number; max: number };
  const least = typeof duration === 'number' ? duration : Math.max(0, bounds(duration.variable).min);
  const most = typeof duration === 'number' ? duration : bounds(duration.variable).max;
  return [
    Math.max(0, bounds(start).min, bounds(end).min - most),
    Math.min(model.horizon, bounds(end).max, bounds(start).max + most),
    least,
  ];
}
