/** The enumerator is itself an oracle for other tests, so its counts are held against closed formulas. */
import { ModelBuilder, endOf, startOf } from '@handrail/solver/model/build-model';
import { describe, expect, it } from 'vitest';
import { enumerateSolutions } from './enumerate-solutions.ts';

function jobs(horizon: number, durations: readonly number[], optional = false) {
  const builder = new ModelBuilder('jobs', horizon);
  const ids = durations.map((duration, i) =>
    builder.interval(`job ${i}`, duration, optional ? { presence: builder.boolean(`does job ${i}`) } : {}),
  );
  return { builder, ids };
}

describe('the number of solutions found by enumeration', () => {
  it.each([
    [4, 2],
    [5, 3],
    [6, 4],
  ])('of unit jobs in a sequence is the number of arrangements (horizon %i, %i jobs)', (horizon, n) => {
    const { builder, ids } = jobs(horizon, Array<number>(n).fill(1));
    builder.post({
      kind: 'sequence',
      members: ids.map((interval) => ({ interval, startType: 0, endType: 0 })),
      types: 1,
      transitions: [0],
      first: null,
      last: null,
      transitionTotal: null,
      tag: null,
    });
    let arrangements = 1;
    for (let i = 0; i < n; i++) arrangements *= horizon - i;
    expect(enumerateSolutions(builder.build()).count).toBe(arrangements);
  });

  it('of two long jobs under a capacity of one is twice the ways to leave the free time in three gaps', () => {
    const { builder, ids } = jobs(12, [3, 4]);
    const members = ids.map((interval) => ({ interval, demand: 1 }));
    builder.post({ kind: 'cumulative', capacity: 1, members, tag: null });
    const free = 12 - 3 - 4;
    expect(enumerateSolutions(builder.build()).count).toBe(2 * (((free + 1) * (free + 2)) / 2));
  });

  it('of a job that may stay away counts its absence once', () => {
    const { builder } = jobs(6, [2], true);
    expect(enumerateSolutions(builder.build()).count).toBe(1 + 5);
  });

  it('of two jobs under an exact lag is the number of starts of the first', () => {
    const { builder, ids } = jobs(10, [2, 3]);
    const [x, y] = ids as [number, number];
    builder.post({ kind: 'precedence', from: endOf(x), to: startOf(y), lag: 1, when: [], tag: null });
    builder.post({ kind: 'precedence', from: startOf(y), to: endOf(x), lag: -1, when: [], tag: null });
    expect(enumerateSolutions(builder.build()).count).toBe(10 - (2 + 1 + 3) + 1);
  });

  it('of a model without any is none, and there is no best one', () => {
    const { builder, ids } = jobs(5, [3, 3]);
    const members = ids.map((interval) => ({ interval, demand: 1 }));
    builder.post({ kind: 'cumulative', capacity: 1, members, tag: null });
    expect(enumerateSolutions(builder.build())).toEqual({ count: 0, best: null, levels: null });
  });
});

it('the best solution is best at the first level before the second is looked at', () => {
  const { builder, ids } = jobs(9, [2, 3]);
  const [x, y] = ids as [number, number];
  const members = ids.map((interval) => ({ interval, demand: 1 }));
  builder.post({ kind: 'cumulative', capacity: 1, members, tag: null });
  const finish = builder.variable('finish', 0, 9);
  builder.post({
    kind: 'extreme',
    which: 'max',
    result: finish,
    points: ids.map((id) => endOf(id)),
    otherwise: 0,
    tag: null,
  });
  builder.minimise('finish', { terms: [{ coefficient: 1, variable: finish }], constant: 0 });
  builder.minimise('late start of x', {
    terms: [{ coefficient: -1, variable: builder.intervalAt(x).start }],
    constant: 0,
  });
  // Packed without a gap they end at 5; then x starts latest by going second, at 3.
  const { levels, best } = enumerateSolutions(builder.build());
  expect(levels).toEqual([5, -3]);
  expect(best?.[builder.intervalAt(y).start]).toBe(0);
});
