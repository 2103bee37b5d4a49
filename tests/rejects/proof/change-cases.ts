/** Plans that replay clean, and in which two changes of one state come in either order. */
import { CHANGES, closes, opens, type ProofCase } from './proof-case.ts';

export const CHANGE_CASES: readonly ProofCase[] = [
  {
    name: 'two people drive the same bolt one after the other',
    rule: CHANGES,
    says: 'as planned 0:20 and 0:20',
    stint: 'a/drive',
    plan: {
      states: { bolt: 'loose' },
      work: [
        {
          key: 'a/start',
          who: 'EV1',
          at: 10,
          steps: [10],
          spread: [8, 14],
          does: { changes: [['bolt', 'loose', 'started', 0]] },
        },
        { key: 'a/drive', who: 'EV2', at: 20, steps: [5], does: { changes: [['bolt', 'loose|started', 'tight', 0]] } },
      ],
    },
  },
  {
    name: 'what EV1 opens EV2 is to close, whenever',
    rule: CHANGES,
    says: 'leaves it closed',
    stint: 'a/close',
    plan: {
      states: { cover: 'closed' },
      work: [
        { key: 'a/open', who: 'EV1', at: 10, steps: [10], does: opens },
        { key: 'a/close', who: 'EV2', at: 60, steps: [5], does: closes },
      ],
    },
  },
  {
    name: 'two people put the same piece down, one after the other',
    rule: CHANGES,
    says: 'leaves it at porch',
    stint: 'a/take-again',
    plan: {
      states: { 'box.holder': 'place:porch' },
      work: [
        {
          key: 'a/lift',
          who: 'EV1',
          at: 10,
          steps: [5, 5],
          does: { changes: [['box.holder', 'place:porch', 'place:porch', 1]] },
        },
        {
          key: 'a/take-again',
          who: 'EV2',
          at: 20,
          steps: [5, 5],
          does: { changes: [['box.holder', 'place:porch', 'place:porch', 1]] },
        },
      ],
    },
  },
  {
    name: 'the partner is called too early: to the first of two changes',
    rule: CHANGES,
    says: 'leaves it closed',
    stint: 'a/close',
    plan: {
      states: { cover: 'closed' },
      joins: [['a/crack', 'a/close']],
      work: [
        { key: 'a/crack', who: 'EV1', at: 10, steps: [4], does: { changes: [['cover', 'closed', 'ajar', 0]] } },
        {
          key: 'a/open',
          who: 'EV1',
          at: 14,
          steps: [4],
          spread: [3, 9],
          does: { changes: [['cover', 'ajar', 'open', 0]] },
        },
        { key: 'a/close', who: 'EV2', at: 19, steps: [4], does: closes },
      ],
    },
  },
];
