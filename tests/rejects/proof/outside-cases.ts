/** Plans that replay clean, and in which work meets what changes from outside: events and requests. */
import { SPAN } from '../../reference/routes/bare-campaign.ts';
import { MIN } from '../replay/build-work.ts';
import { event, OUTSIDE, type ProofCase } from './proof-case.ts';

export const OUTSIDE_CASES: readonly ProofCase[] = [
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
];
