/** Solutions that must be refused. Each is a right one with a single thing wrong; `kind` and `because` say which. */
import { ModelBuilder, endOf, startOf } from '@handrail/solver/model/build-model';
import { FORBIDDEN, type IntervalId, type Model, type Solution } from '@handrail/solver/model/model';

export interface BrokenSolution {
  readonly title: string;
  readonly model: Model;
  /** Accepted: shows that the refusal has no other cause. */
  readonly right: Solution;
  readonly wrong: Solution;
  readonly kind: string;
  readonly because: RegExp;
}

const tag = null;
const when = [] as const;

/** Intervals of the given durations; `at` gives a solution for starts, null standing for an absent optional interval. */
function timetable(
  durations: readonly number[],
  options: { readonly optional?: boolean; readonly extra?: (b: ModelBuilder, ids: IntervalId[]) => void } = {},
) {
  const b = new ModelBuilder('timetable', 20);
  const ids = durations.map((duration, i) =>
    b.interval(`job ${i}`, duration, options.optional === true ? { presence: b.boolean(`does job ${i}`) } : {}),
  );
  options.extra?.(b, ids);
  const model = b.build();
  // Variables that stand alone are named in `extra`; the rest follows from the starts.
  const at = (starts: readonly (number | null)[], extra: Readonly<Record<string, number>> = {}): Solution => {
    const values = model.variables.map(({ name, min }) => extra[name] ?? min);
    model.intervals.forEach(({ start, end, duration, presence }, id) => {
      const chosen = starts[id] ?? null;
      if (presence !== null) values[presence.variable] = chosen === null ? 0 : 1;
      if (chosen === null) return;
      values[start] = chosen;
      const length = typeof duration === 'number' ? duration : (extra[`job ${id}.duration`] ?? 0);
      values[end] = chosen + length;
      if (typeof duration !== 'number') values[duration.variable] = length;
    });
    return values;
  };
  return { model, at };
}

function broken(
  title: string,
  { model, at }: ReturnType<typeof timetable>,
  right: Parameters<typeof at>,
  wrong: Parameters<typeof at>,
  kind: string,
  because: RegExp,
): BrokenSolution {
  return { title, model, right: at(...right), wrong: at(...wrong), kind, because };
}

const pair = timetable([3, 4]);

const lagged = timetable([3, 4], {
  optional: true,
  extra: (b, [x, y]) => {
    b.post({ kind: 'precedence', from: endOf(x!), to: startOf(y!), lag: 2, when, tag });
    b.post({ kind: 'precedence', from: startOf(y!), to: endOf(x!, 1), lag: -6, when, tag });
  },
});
const conditional = timetable([3, 4], {
  extra: (b, [x, y]) => {
    const strict = b.boolean('strict');
    b.post({ kind: 'precedence', from: endOf(x!), to: startOf(y!), lag: 0, when: [strict], tag });
  },
});
const chosen = timetable([3, 3, 3], {
  optional: true,
  extra: (b, [master, a, c]) => b.post({ kind: 'alternative', master: master!, options: [a!, c!], tag }),
});
const covered = timetable([0, 3, 4], {
  optional: true,
  extra: (b, [, x, y]) => {
    const cover = b.interval('cover', { min: 0, max: 20 }, { presence: b.boolean('covers') });
    b.post({ kind: 'span', cover, members: [x!, y!], tag });
  },
});
const cover = (start: number, end: number) => ({
  'cover.start': start,
  'cover.end': end,
  'cover.duration': end - start,
  covers: 1,
});
const coveredAt = (starts: readonly (number | null)[], extra: Readonly<Record<string, number>>): Solution => {
  const values = [...covered.at(starts, extra)];
  covered.model.variables.forEach(({ name }, id) => {
    if (name in extra) values[id] = extra[name] as number;
  });
  return values;
};
const lane = timetable([2, 2, 2], {
  optional: true,
  extra: (b, ids) => {
    const total = b.variable('total', 0, 50);
    b.post({
      kind: 'sequence',
      members: ids.map((interval, i) => ({ interval, startType: i, endType: i })),
      types: 3,
      transitions: [0, 1, 5, 1, 0, 1, 1, FORBIDDEN, 0],
      first: ids[0]!,
      last: null,
      transitionTotal: total,
      tag,
    });
  },
});
const closing = timetable([2, 2], {
  extra: (b, ids) =>
    b.post({
      kind: 'sequence',
      members: ids.map((interval) => ({ interval, startType: 0, endType: 0 })),
      types: 1,
      transitions: [0],
      first: null,
      last: ids[1]!,
      transitionTotal: null,
      tag,
    }),
});
const shared = timetable([4, 4, 4], {
  extra: (b, ids) =>
    b.post({ kind: 'cumulative', capacity: 3, members: ids.map((interval, i) => ({ interval, demand: i + 1 })), tag }),
});
const tank = timetable([2, 2], {
  extra: (b, [fill, use]) =>
    b.post({
      kind: 'reservoir',
      initial: 1,
      min: 0,
      max: 4,
      events: [
        { at: endOf(fill!), change: 3 },
        { at: startOf(use!), change: -2 },
      ],
      tag,
    }),
});
const daylight = timetable([4], {
  extra: (b, [x]) =>
    b.post({
      kind: 'windows',
      mode: 'inside',
      from: startOf(x!),
      to: endOf(x!),
      windows: [
        [2, 8],
        [8, 12],
      ],
      when,
      tag,
    }),
});
const instant = timetable([4], {
  extra: (b, [x]) =>
    b.post({ kind: 'windows', mode: 'inside', from: startOf(x!), to: startOf(x!), windows: [[2, 8]], when, tag }),
});
const blackout = timetable([4], {
  extra: (b, [x]) =>
    b.post({ kind: 'windows', mode: 'outside', from: startOf(x!), to: endOf(x!), windows: [[6, 7]], when, tag }),
});
const valve = timetable([3, 3, 2], {
  extra: (b, [open, close, look]) =>
    b.post({
      kind: 'state',
      name: 'valve',
      values: 2,
      initial: 0,
      writers: [
        { from: startOf(open!), to: endOf(open!), value: 1, tag },
        { from: startOf(close!), to: endOf(close!), value: 0, tag },
      ],
      needs: [
        { from: startOf(look!), to: endOf(look!), allowed: [1], tag },
        { from: startOf(close!), to: endOf(close!), allowed: [1], tag },
      ],
      tag,
    }),
});
const either = timetable([3, 3], {
  optional: true,
  extra: (b) =>
    b.post({
      kind: 'clause',
      literals: [
        { variable: 0, holds: 1 },
        { variable: 3, holds: 1 },
      ],
      tag,
    }),
});
const budget = timetable([3, 3], {
  extra: (b, ids) => {
    const terms = ids.map((id) => ({ coefficient: 1, variable: b.intervalAt(id).start }));
    b.post({ kind: 'linear', expression: { terms, constant: 1 }, bound: 9, when, tag });
  },
});
const last = timetable([3, 4], {
  optional: true,
  extra: (b, ids) => {
    const result = b.variable('finish', 0, 20);
    b.post({ kind: 'extreme', which: 'max', result, points: ids.map((id) => endOf(id)), otherwise: 17, tag });
  },
});
const firstOf = timetable([3, 4], {
  extra: (b, ids) => {
    const result = b.variable('begin', 0, 20);
    b.post({ kind: 'extreme', which: 'min', result, points: ids.map((id) => startOf(id, 2)), otherwise: 0, tag });
  },
});
const replaced = (solution: Solution, index: number, value: number): Solution =>
  solution.map((old, i) => (i === index ? value : old));

export const brokenSolutions: readonly BrokenSolution[] = [
  {
    title: 'a value is missing',
    model: pair.model,
    right: pair.at([0, 0]),
    wrong: pair.at([0, 0]).slice(1),
    kind: 'shape',
    because: /3 values for 4 variables/,
  },
  {
    title: 'a value is not an integer',
    model: pair.model,
    right: pair.at([0, 0]),
    wrong: replaced(pair.at([0, 0]), 0, 0.5),
    kind: 'shape',
    because: /job 0\.start is 0\.5/,
  },
  {
    title: 'a value is above its variable',
    model: conditional.model,
    right: conditional.at([0, 3], { strict: 1 }),
    wrong: conditional.at([0, 3], { strict: 2 }),
    kind: 'variable',
    because: /strict is 2, outside 0\.\.1/,
  },
  {
    title: 'an end is not start plus duration',
    model: pair.model,
    right: pair.at([2, 0]),
    wrong: replaced(pair.at([2, 0]), 1, 6),
    kind: 'interval',
    because: /job 0 \[2, 6\) does not last 3/,
  },
  broken('a successor starts inside the lag', lagged, [[0, 5]], [[0, 4]], 'precedence', /start 4 comes before 5/),
  broken('a maximum lag is overrun', lagged, [[0, 10]], [[0, 11]], 'precedence', /comes before 5/),
  broken(
    'a condition holds and its precedence does not',
    conditional,
    [[0, 0]],
    [[0, 0], { strict: 1 }],
    'precedence',
    /comes before 3/,
  ),
  broken(
    'a master is present without an option',
    chosen,
    [[1, 1, null]],
    [[1, null, null]],
    'alternative',
    /0 present options/,
  ),
  broken(
    'a master is present with two options',
    chosen,
    [[1, null, 1]],
    [[1, 1, 1]],
    'alternative',
    /2 present options/,
  ),
  broken(
    'an option runs at another time than its master',
    chosen,
    [[1, null, 1]],
    [[1, null, 2]],
    'alternative',
    /does not run with/,
  ),
  broken(
    'an option is present without its master',
    chosen,
    [[null, null, null]],
    [[null, null, 2]],
    'alternative',
    /absent but 1/,
  ),
  {
    title: 'a cover ends too late',
    model: covered.model,
    right: coveredAt([null, 1, 3], cover(1, 7)),
    wrong: coveredAt([null, 1, 3], cover(1, 8)),
    kind: 'span',
    because: /they run over \[1, 7\)/,
  },
  {
    title: 'a cover is absent while a member is present',
    model: covered.model,
    right: coveredAt([null, 1, null], cover(1, 4)),
    wrong: coveredAt([null, 1, null], {}),
    kind: 'span',
    because: /absent but 1/,
  },
  {
    title: 'a cover is present without members',
    model: covered.model,
    right: coveredAt([null, null, null], {}),
    wrong: coveredAt([null, null, null], cover(1, 4)),
    kind: 'span',
    because: /none of its members/,
  },
  broken(
    'two members of a sequence overlap',
    lane,
    [[0, 3, null], { total: 1 }],
    [[0, 1, null], { total: 1 }],
    'sequence',
    /overlap/,
  ),
  broken(
    'a transition is too short',
    lane,
    [[0, null, 7], { total: 5 }],
    [[0, null, 6], { total: 5 }],
    'sequence',
    /starts less than 5 after/,
  ),
  broken(
    'a forbidden succession',
    lane,
    [[0, 3, 6], { total: 2 }],
    [[0, 12, 7], { total: 6 }],
    'sequence',
    /may not directly follow/,
  ),
  broken(
    'the first one does not come first',
    lane,
    [[0, 3, null], { total: 1 }],
    [[3, 0, null], { total: 1 }],
    'sequence',
    /does not come first/,
  ),
  broken('the last one does not come last', closing, [[0, 2]], [[2, 0]], 'sequence', /does not come last/),
  broken(
    'the transition total is wrong',
    lane,
    [[0, 3, 6], { total: 2 }],
    [[0, 3, 6], { total: 3 }],
    'sequence',
    /take 2 in all, the result says 3/,
  ),
  broken(
    'a capacity is exceeded for one instant',
    shared,
    [[0, 0, 4]],
    [[0, 0, 3]],
    'cumulative',
    /at 3 the load is 6/,
  ),
  broken('a stock runs below its minimum', tank, [[0, 2]], [[0, 1]], 'reservoir', /at 1 the level is -1/),
  broken('a stretch bridges two windows that touch', daylight, [[4]], [[6]], 'windows', /within none/),
  broken('an instant at the open end of its window', instant, [[7]], [[8]], 'windows', /within none/),
  broken(
    'a stretch meets a window it must stay out of',
    blackout,
    [[7]],
    [[3]],
    'windows',
    /meets the window \[6, 7\)/,
  ),
  broken('two writers hold the state at once', valve, [[0, 8, 4]], [[0, 2, 9]], 'state', /both write/),
  broken(
    'a need looks before the value is written',
    valve,
    [[2, 8, 5]],
    [[2, 8, 0]],
    'state',
    /needs valve to be one of 1/,
  ),
  broken(
    'a need still runs when the value is overwritten',
    valve,
    [[0, 5, 3]],
    [[0, 4, 3]],
    'state',
    /writes valve while/,
  ),
  broken(
    'a writer does not find the value it needs',
    valve,
    [[0, 5, 3]],
    [[7, 0, 12]],
    'state',
    /job 1 \[0, 3\] needs valve/,
  ),
  broken('no literal of a clause holds', either, [[null, 2]], [[null, null]], 'clause', /does job 0, does job 1/),
  broken('a sum is above its bound', budget, [[4, 4]], [[4, 5]], 'linear', /the sum is 10/),
  broken(
    'a maximum is not the maximum',
    last,
    [[1, 2], { finish: 6 }],
    [[1, 2], { finish: 7 }],
    'extreme',
    /the max is 6/,
  ),
  broken(
    'a maximum over nothing is not what was agreed',
    last,
    [[null, null], { finish: 17 }],
    [[null, null], { finish: 0 }],
    'extreme',
    /the max is 17/,
  ),
  broken(
    'a minimum is not the minimum',
    firstOf,
    [[4, 2], { begin: 4 }],
    [[4, 2], { begin: 2 }],
    'extreme',
    /the min is 4/,
  ),
];
