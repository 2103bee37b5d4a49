/** Plans that replay clean, and in which a need and a change of it come in either order. */
import { closes, looksIn, looksOn, NEEDS, opens, type ProofCase } from './proof-case.ts';

export const NEED_CASES: readonly ProofCase[] = [
  {
    name: 'EV2 looks into what EV1 has opened, and nobody calls',
    rule: NEEDS,
    // EV2 may start at 0:10, out of the hatch; EV1 opens from 0:05 for at most 20 min.
    says: 'the start of "look" at PET 0:10, the end of "open" only at PET 0:10:01',
    stint: 'a/look',
    plan: {
      states: { cover: 'closed' },
      work: [
        { key: 'a/open', who: 'EV1', at: 10, steps: [10], spread: [4, 20], does: opens },
        { key: 'a/look', who: 'EV2', at: 20, steps: [5], does: looksIn },
      ],
    },
  },
  {
    name: 'EV1 closes what EV2 still looks into',
    rule: NEEDS,
    says: 'the start of "close" at PET 0:15',
    stint: 'a/close',
    plan: {
      states: { cover: 'open' },
      work: [
        { key: 'a/rest', who: 'EV1', at: 5, steps: [10], does: {} },
        { key: 'a/look', who: 'EV2', at: 10, steps: [10], spread: [8, 30], does: looksIn },
        { key: 'a/close', who: 'EV1', at: 20, steps: [5], does: closes },
      ],
    },
  },
  {
    name: 'the join releases the stint before the one that changes',
    rule: NEEDS,
    says: 'needs it open',
    stint: 'a/look',
    plan: {
      states: { cover: 'closed' },
      joins: [['a/prepare', 'a/look']],
      work: [
        { key: 'a/prepare', who: 'EV1', at: 10, steps: [5] },
        { key: 'a/open', who: 'EV1', at: 15, steps: [5], spread: [3, 12], does: opens },
        { key: 'a/look', who: 'EV2', at: 20, steps: [5], does: looksIn },
      ],
    },
  },
  {
    name: 'the join holds back a later stint than the one that needs',
    rule: NEEDS,
    says: 'the start of "look"',
    stint: 'a/look',
    plan: {
      states: { cover: 'closed' },
      joins: [['a/open', 'a/after-look']],
      work: [
        { key: 'a/open', who: 'EV1', at: 10, steps: [5], spread: [3, 12], does: opens },
        { key: 'a/look', who: 'EV2', at: 15, steps: [5], does: looksIn },
        { key: 'a/after-look', who: 'EV2', at: 20, steps: [5] },
      ],
    },
  },
  {
    name: 'the opening is joined, the closing is not',
    rule: NEEDS,
    says: 'the start of "close"',
    stint: 'a/close',
    plan: {
      states: { cover: 'closed' },
      joins: [['a/open', 'a/look']],
      work: [
        { key: 'a/open', who: 'EV1', at: 10, steps: [5], does: opens },
        { key: 'a/look', who: 'EV2', at: 16, steps: [5], spread: [4, 15], does: looksIn },
        { key: 'a/close', who: 'EV1', at: 22, steps: [5], does: closes },
      ],
    },
  },
  {
    name: 'the call goes to a third person who does not pass it on',
    rule: NEEDS,
    says: 'needs it open',
    stint: 'a/look',
    plan: {
      states: { cover: 'closed' },
      joins: [['a/open', 'a/watch']],
      work: [
        { key: 'a/open', who: 'EV1', at: 15, steps: [5], does: opens },
        { key: 'a/watch', who: 'EV3', at: 21, steps: [2] },
        { key: 'a/look', who: 'EV2', at: 24, steps: [5], does: looksIn },
      ],
    },
  },
  {
    name: 'an hour of slack in the plan keeps nobody in order',
    rule: NEEDS,
    says: 'as planned 0:20 and 1:30',
    stint: 'b/look',
    plan: {
      states: { cover: 'closed' },
      work: [
        { key: 'a/open', who: 'EV1', at: 10, steps: [10], does: opens },
        { key: 'b/look', who: 'EV2', at: 90, steps: [5], does: looksIn },
      ],
    },
  },
  {
    name: 'work on the closed cover is planned before it is opened, and nothing says so',
    rule: NEEDS,
    says: 'needs it closed',
    stint: 'a/open',
    plan: {
      states: { cover: 'closed' },
      work: [
        { key: 'a/wipe', who: 'EV2', at: 10, steps: [10], spread: [8, 30], does: looksOn },
        { key: 'a/open', who: 'EV1', at: 20, steps: [10], does: opens },
      ],
    },
  },
  {
    name: 'any value would do for the need, but not while it is in work',
    rule: NEEDS,
    says: 'needs it open or closed',
    stint: 'a/look',
    plan: {
      states: { cover: 'closed' },
      work: [
        { key: 'a/open', who: 'EV1', at: 10, steps: [10], does: opens },
        { key: 'a/look', who: 'EV2', at: 20, steps: [5], does: { looks: [['cover', 'open|closed', 0, 1]] } },
      ],
    },
  },
  {
    name: 'the second step of one stint changes what the third step of the other needs',
    rule: NEEDS,
    says: 'step 2 of "open" done',
    stint: 'a/look',
    plan: {
      states: { cover: 'closed' },
      work: [
        {
          key: 'a/open',
          who: 'EV1',
          at: 10,
          steps: [5, 5, 10],
          spread: [15, 40],
          does: { changes: [['cover', 'closed', 'open', 1]] },
        },
        {
          key: 'a/look',
          who: 'EV2',
          at: 10,
          steps: [10, 5, 5],
          spread: [15, 25],
          does: { looks: [['cover', 'open', 2, 3]] },
        },
      ],
    },
  },
  {
    name: 'a value that must stand at the end of a stint is changed by another in the meantime',
    rule: NEEDS,
    says: 'the end of "watch" only at',
    stint: 'a/close',
    plan: {
      states: { cover: 'open' },
      work: [
        { key: 'a/rest', who: 'EV1', at: 5, steps: [5] },
        { key: 'a/watch', who: 'EV2', at: 10, steps: [10], spread: [8, 30], does: { atEnd: [['cover', 'open']] } },
        { key: 'a/close', who: 'EV1', at: 20, steps: [5], does: closes },
      ],
    },
  },
  {
    name: 'a bag is carried off while the other still works from it',
    rule: NEEDS,
    says: 'the start of "carry off"',
    stint: 'a/carry-off',
    plan: {
      states: { 'bag.holder': 'place:porch' },
      work: [
        {
          key: 'a/work',
          who: 'EV1',
          at: 10,
          steps: [10],
          spread: [8, 30],
          does: { looks: [['bag.holder', 'place:porch', 0, 1]] },
        },
        {
          key: 'a/carry-off',
          who: 'EV2',
          at: 20,
          steps: [5],
          does: { changes: [['bag.holder', 'place:porch', 'role:0', 0]] },
        },
      ],
    },
  },
  {
    name: 'two tasks are written one below the other, which orders nothing between people',
    rule: NEEDS,
    says: 'needs it open',
    stint: 'b/look',
    plan: {
      states: { cover: 'closed' },
      work: [
        { key: 'a/open', who: 'EV1', at: 10, steps: [6], does: opens },
        { key: 'b/look', who: 'EV2', at: 18, steps: [5], does: looksIn },
      ],
    },
  },
];
