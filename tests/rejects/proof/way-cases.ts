/** Plans that replay clean, and in which somebody's way or tether lies over a joint that turns. */
import { SPAN } from '../../reference/routes/bare-campaign.ts';
import { utc } from './nominal.ts';
import { NEEDS, OUTSIDE, type ProofCase } from './proof-case.ts';

export const WAY_CASES: readonly ProofCase[] = [
  {
    name: 'EV1 crosses the joint that EV2 parks, and nobody says that it is parked',
    rule: NEEDS,
    says: 'the rail from porch to bay is open while it is parked',
    stint: 'a/work',
    plan: {
      states: { joint: 'turning' },
      ways: [
        ['EV1', 'porch', 'bay', 20, 3],
        ['EV1', 'bay', 'porch', 33, 3],
      ],
      work: [
        {
          key: 'a/park',
          who: 'EV2',
          at: 10,
          steps: [10],
          spread: [8, 25],
          does: { changes: [['joint', 'turning', 'parked', 0]] },
        },
        { key: 'a/work', who: 'EV1', at: 23, steps: [10], place: 'bay' },
      ],
    },
  },
  {
    name: 'EV2 lets the joint turn when EV1 should have crossed it',
    rule: NEEDS,
    says: 'the start of "let turn" at',
    stint: 'a/let-turn',
    plan: {
      states: { joint: 'parked' },
      ways: [
        ['EV1', 'porch', 'bay', 5, 3],
        ['EV1', 'bay', 'porch', 20, 3],
      ],
      work: [
        { key: 'a/work', who: 'EV1', at: 8, steps: [12], spread: [10, 30], place: 'bay' },
        { key: 'a/let-turn', who: 'EV2', at: 24, steps: [5], does: { changes: [['joint', 'parked', 'turning', 0]] } },
      ],
    },
  },
  {
    name: 'the wing turns from outside while somebody may still be on the way back',
    rule: OUTSIDE,
    says: "EV1's way from bay to porch only at PET 0:40:01",
    plan: {
      states: { joint: 'parked' },
      campaign: {
        events: [
          {
            id: 'turn',
            title: 'the wing turns',
            atUtcMs: utc(40),
            agreed: true,
            leaves: [{ variable: 'joint', value: 'turning', span: SPAN }],
            span: SPAN,
          },
        ],
      },
      ways: [
        ['EV1', 'porch', 'bay', 5, 3],
        ['EV1', 'bay', 'porch', 30, 3],
      ],
      work: [{ key: 'a/work', who: 'EV1', at: 8, steps: [20], spread: [15, 40], place: 'bay' }],
    },
  },
  {
    name: 'the joint is parked again by EV2 before EV1 comes back, while a tether may still lie over it',
    rule: NEEDS,
    says: 'and the tether lies over it',
    stint: 'a/turn-and-park',
    plan: {
      states: { joint: 'parked' },
      anchor: 'ring',
      joins: [['a/turn-and-park', 'a/look']],
      // The plan has it turn after EV1 is back; joined only to what comes after.
      ways: [
        ['EV1', 'porch', 'bay', 5, 3],
        ['EV1', 'bay', 'porch', 18, 3],
      ],
      work: [
        { key: 'a/work', who: 'EV1', at: 8, steps: [10], spread: [5, 30], place: 'bay' },
        {
          key: 'a/turn-and-park',
          who: 'EV2',
          at: 22,
          steps: [5, 5],
          does: {
            changes: [
              ['joint', 'parked', 'turning', 0],
              ['joint', 'parked|turning', 'parked', 1],
            ],
          },
        },
        { key: 'a/look', who: 'EV1', at: 33, steps: [5] },
      ],
    },
  },
];
