/** Plans that replay clean and break in some order of events: two bodies, one state, nothing that keeps them in order. */
import { SPAN } from '../../reference/routes/bare-campaign.ts';
import { MIN } from '../replay/build-work.ts';
import { type Nominal, utc } from './nominal.ts';

export interface ProofCase {
  /** What is wrong with the plan, as a sentence. */
  readonly name: string;
  readonly rule: `proof/${string}`;
  /** What the reason must say; times added up by hand. */
  readonly says: string;
  readonly stint?: string;
  readonly plan: Nominal;
}

const NEEDS = 'proof/needs-and-changes-are-in-order';
const CHANGES = 'proof/changes-are-in-order';
const OUTSIDE = 'proof/order-with-outside-events-is-kept';

const opens = { changes: [['cover', 'closed', 'open', 0]] } as const;
const closes = { changes: [['cover', 'open', 'closed', 0]] } as const;
const looksIn = { looks: [['cover', 'open', 0, 1]] } as const;
const looksOn = { looks: [['cover', 'closed', 0, 1]] } as const;
const event = (atMin: number, value: string) => ({
  events: [
    {
      id: 'turn',
      title: 'the wing turns',
      atUtcMs: utc(atMin),
      agreed: true,
      leaves: [{ variable: 'cover', value, span: SPAN }],
      span: SPAN,
    },
  ],
});

export const RACE_CASES: readonly ProofCase[] = [
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
  {
    name: 'work on the joint ends just before the wing turns, if nothing runs long',
    rule: OUTSIDE,
    says: 'the end of "check" only at PET 0:40:01',
    stint: 'a/check',
    plan: {
      states: { cover: 'parked' },
      campaign: event(40, 'turning'),
      work: [
        {
          key: 'a/check',
          who: 'EV1',
          at: 10,
          steps: [20],
          spread: [15, 45],
          does: { looks: [['cover', 'parked', 0, 1]] },
        },
      ],
    },
  },
  {
    name: 'work on the joint starts after the wing is parked, if nothing runs short',
    rule: OUTSIDE,
    says: 'the start of "check" at',
    stint: 'a/check',
    plan: {
      states: { cover: 'turning' },
      campaign: event(20, 'parked'),
      work: [
        { key: 'a/before', who: 'EV1', at: 5, steps: [20], spread: [10, 25] },
        { key: 'a/check', who: 'EV1', at: 25, steps: [10], does: { looks: [['cover', 'parked', 0, 1]] } },
      ],
    },
  },
  {
    name: 'a late egress brings the work up to the turning of the wing',
    rule: OUTSIDE,
    says: 'the wing turns',
    stint: 'a/check',
    plan: {
      states: { cover: 'parked' },
      campaign: event(40, 'turning'),
      slip: 15,
      longest: 60,
      work: [{ key: 'a/check', who: 'EV1', at: 10, steps: [20], does: { looks: [['cover', 'parked', 0, 1]] } }],
    },
  },
  {
    name: 'the bus is taken for dead while its request may still be in force, and for live too early',
    rule: 'proof/request-stays-over-its-use',
    says: 'the start of "power up"',
    stint: 'b/power-up',
    plan: {
      states: { 'request:bus': 'clear' },
      campaign: {
        requests: [
          {
            id: 'bus',
            title: 'Bus off',
            owner: 'power',
            inhibits: 2,
            setLeadS: 5 * MIN,
            verifyS: MIN,
            clearS: MIN,
            longestHoldS: null,
            status: 'agreed',
            window: null,
            span: SPAN,
          },
        ],
      },
      holds: [
        { request: 'bus', askS: 0, verifiedS: 10 * MIN, firstUseS: 10 * MIN, lastUseS: 20 * MIN, clearedS: 25 * MIN },
      ],
      work: [
        { key: 'a/work', who: 'EV1', at: 10, steps: [10], spread: [8, 30], does: { controls: [['bus', 0, 1]] } },
        { key: 'b/power-up', who: 'EV2', at: 30, steps: [5], does: { looks: [['request:bus', 'clear', 0, 1]] } },
      ],
    },
  },
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
