/** Plans that replay clean and cannot be kept for all durations within their bounds. */
import { SPAN } from '../../reference/routes/bare-campaign.ts';
import { MIN } from '../replay/build-work.ts';
import { utc } from './nominal.ts';
import type { ProofCase } from './proof-case.ts';

const clock = (limit: number, parts: object = {}) => ({
  id: 'cold',
  title: 'Cold',
  kind: 'difference' as const,
  limitS: limit * MIN,
  sense: 'most' as const,
  onStop: 'reset' as const,
  start: { variable: 'heater', values: ['off'], span: SPAN },
  stop: { variable: 'heater', values: ['on'], span: SPAN },
  span: SPAN,
  ...parts,
});
const off = { changes: [['heater', 'on', 'off', 0]] } as const;
const on = { changes: [['heater', 'off', 'on', 0]] } as const;
const window_ = (id: string, from: number, to: number, shownAs: 'band' | 'gap' = 'band') => ({
  id,
  title: id,
  intervals: [[utc(from), utc(to)]] as const,
  padS: 0,
  shownAs,
  source: null,
  span: SPAN,
});
const use = (window: string, mode: 'inside' | 'outside', part: 'whole' | 'start' = 'whole') => ({
  windowUses: [{ window, mode, part, fromStep: 0, toStep: 0, prefers: false, span: SPAN }],
});
const request = (parts: object = {}) => ({
  id: 'bus',
  title: 'Bus off',
  owner: 'power',
  inhibits: 2,
  setLeadS: 5 * MIN,
  verifyS: MIN,
  clearS: MIN,
  longestHoldS: null,
  status: 'agreed' as const,
  window: null,
  span: SPAN,
  ...parts,
});

const WALL = 'proof/the-wall-holds-for-all-durations';
const CLOCKS = 'proof/clocks-hold-for-all-durations';
const WINDOWS = 'proof/windows-hold-for-all-durations';

export const TIMING_CASES: readonly ProofCase[] = [
  {
    name: 'one long stint runs over the wall',
    rule: WALL,
    // Out 5, work at most 80, in 5 + 5, hatch 5: 100 min against 90.
    says: '1 h 40 min in 1 h 30 min: 10 min short',
    plan: { longest: 90, work: [{ key: 'a/work', who: 'EV1', at: 5, steps: [40], spread: [30, 80] }] },
  },
  {
    name: 'two people who wait for each other run over the wall together, neither alone',
    rule: WALL,
    // Out 5, 40, 0:30 to react, 40, in 5 (EV1 goes in meanwhile), hatch 5: 95:30 against 95.
    says: '1 h 35 min 30 s in 1 h 35 min: 30 s short',
    plan: {
      longest: 95,
      joins: [['a/first', 'a/second']],
      work: [
        { key: 'a/first', who: 'EV1', at: 5, steps: [30], spread: [20, 40] },
        { key: 'a/second', who: 'EV2', at: 36, steps: [30], spread: [20, 40] },
      ],
    },
  },
  {
    name: 'the clock runs out within one long stint between its start and its stop',
    rule: CLOCKS,
    // From the end of off: 25 between, then on at most 12: 37 against 30.
    says: '7 min short',
    plan: {
      states: { heater: 'on' },
      campaign: { clocks: [clock(30)] },
      work: [
        { key: 'a/off', who: 'EV1', at: 5, steps: [5], does: off },
        { key: 'a/between', who: 'EV1', at: 10, steps: [15], spread: [10, 25] },
        { key: 'a/on', who: 'EV1', at: 25, steps: [5], spread: [4, 12], does: on },
      ],
    },
  },
  {
    name: 'the clock runs while one waits for the other, who started with it',
    rule: CLOCKS,
    says: 'clock "Cold"',
    plan: {
      states: { heater: 'on' },
      campaign: { clocks: [clock(20)] },
      joins: [
        ['a/off', 'a/fetch'],
        ['a/fetch', 'a/on'],
      ],
      work: [
        { key: 'a/off', who: 'EV1', at: 5, steps: [5], does: off },
        { key: 'a/fetch', who: 'EV2', at: 11, steps: [10], spread: [5, 18] },
        { key: 'a/on', who: 'EV1', at: 22, steps: [5], does: on },
      ],
    },
  },
  {
    name: 'the clock is stopped by somebody who is told late: reaction alone is too much',
    rule: CLOCKS,
    // 30 s to hear, 5 min to do, against 5 min.
    says: '30 s short',
    plan: {
      states: { heater: 'on' },
      campaign: { clocks: [clock(5)] },
      joins: [['a/off', 'a/on']],
      work: [
        { key: 'a/off', who: 'EV1', at: 10, steps: [5], does: off },
        { key: 'a/on', who: 'EV2', at: 15, steps: [5], does: on },
      ],
    },
  },
  {
    name: 'glue must cure ten minutes within one stint that may go quicker than planned',
    rule: CLOCKS,
    says: 'clock "Cure"',
    plan: {
      states: { heater: 'on' },
      campaign: { clocks: [clock(10, { sense: 'least', title: 'Cure' })] },
      work: [
        {
          key: 'a/bond',
          who: 'EV1',
          at: 5,
          steps: [5, 6, 6],
          spread: [12, 20],
          does: {
            changes: [
              ['heater', 'on', 'off', 0],
              ['heater', 'off|on', 'on', 2],
            ],
          },
        },
      ],
    },
  },
  {
    name: 'a budget is used up by two runs that are long together',
    rule: CLOCKS,
    says: 'clock "Cold"',
    plan: {
      states: { heater: 'on' },
      campaign: { clocks: [clock(24, { kind: 'budget', onStop: 'accumulate' })] },
      work: [
        { key: 'a/off', who: 'EV1', at: 5, steps: [2], does: off },
        { key: 'a/on', who: 'EV1', at: 7, steps: [10], spread: [8, 14], does: on },
        { key: 'a/off-again', who: 'EV1', at: 20, steps: [2], does: off },
        { key: 'a/on-again', who: 'EV1', at: 22, steps: [10], spread: [8, 14], does: on },
      ],
    },
  },
  {
    name: 'a stint is longer than its window when it runs long',
    rule: WINDOWS,
    says: '5 min short',
    plan: {
      campaign: { windows: [window_('night', 20, 45)] },
      work: [{ key: 'a/plugs', who: 'EV1', at: 22, steps: [20], spread: [15, 30], parts: use('night', 'inside') }],
    },
  },
  {
    name: 'what comes before the window may run into its end',
    rule: WINDOWS,
    // 5 + 40 + 15 = 60 against the end at 55.
    says: '5 min short',
    plan: {
      campaign: { windows: [window_('night', 30, 55)] },
      work: [
        { key: 'a/before', who: 'EV1', at: 5, steps: [25], spread: [20, 40] },
        { key: 'a/plugs', who: 'EV1', at: 32, steps: [15], parts: use('night', 'inside') },
      ],
    },
  },
  {
    name: 'a late egress brings the work to the end of its window',
    rule: WINDOWS,
    // 15 slip + 5 out + 25 = 45 against 40.
    says: '5 min short',
    plan: {
      slip: 15,
      campaign: { windows: [window_('night', 0, 40)] },
      work: [{ key: 'a/plugs', who: 'EV1', at: 10, steps: [25], parts: use('night', 'inside') }],
    },
  },
  {
    name: 'work outside a window reaches into it when it runs long',
    rule: WINDOWS,
    says: '5 min short',
    plan: {
      campaign: { windows: [window_('thruster test', 30, 50)] },
      work: [
        { key: 'a/work', who: 'EV1', at: 5, steps: [15], spread: [10, 30], parts: use('thruster test', 'outside') },
      ],
    },
  },
  {
    name: 'only the start must lie in the window, and even that may be late',
    rule: WINDOWS,
    says: '5 min short',
    plan: {
      campaign: { windows: [window_('coverage', 20, 40)] },
      work: [
        { key: 'a/before', who: 'EV1', at: 5, steps: [20], spread: [15, 40] },
        { key: 'a/call', who: 'EV1', at: 25, steps: [30], parts: use('coverage', 'inside', 'start') },
      ],
    },
  },
  {
    name: 'the gate may be called too late',
    rule: 'proof/gates-hold-for-all-durations',
    says: '5 min short',
    plan: {
      campaign: {
        gates: [
          {
            id: 'go',
            title: 'Go',
            before: 'a/open',
            caller: 'IV',
            latestPetS: 40 * MIN,
            conditions: [],
            onNo: 'hold',
            drops: [],
            span: SPAN,
          },
        ],
      },
      work: [
        { key: 'a/before', who: 'EV1', at: 5, steps: [30], spread: [20, 40] },
        { key: 'a/open', who: 'EV1', at: 35, steps: [5] },
      ],
    },
  },
  {
    name: 'the request is held too long when its use runs long',
    rule: 'proof/request-holds-hold-for-all-durations',
    says: '"Bus off" is held no longer than agreed',
    plan: {
      states: { 'request:bus': 'clear' },
      campaign: { requests: [request({ longestHoldS: 30 * MIN })] },
      holds: [
        {
          request: 'bus',
          askS: 4 * MIN,
          verifiedS: 10 * MIN,
          firstUseS: 10 * MIN,
          lastUseS: 30 * MIN,
          clearedS: 31 * MIN,
        },
      ],
      work: [{ key: 'a/work', who: 'EV1', at: 10, steps: [20], spread: [15, 40], does: { controls: [['bus', 0, 1]] } }],
    },
  },
  {
    name: 'a lag of at most ten minutes is lost to work in between',
    rule: 'proof/lags-hold-for-all-durations',
    says: '5 min short',
    plan: {
      work: [
        { key: 'a/apply', who: 'EV1', at: 5, steps: [5] },
        { key: 'a/between', who: 'EV1', at: 10, steps: [8], spread: [5, 15] },
        {
          key: 'a/press',
          who: 'EV1',
          at: 18,
          steps: [5],
          parts: { after: [{ stint: 'a/apply', leastS: 0, mostS: 10 * MIN, span: SPAN }] },
        },
      ],
    },
  },
  {
    name: 'somebody else must follow within 20 s and takes 30 s to hear of it',
    rule: 'proof/lags-hold-for-all-durations',
    says: '10 s short',
    plan: {
      work: [
        { key: 'a/apply', who: 'EV1', at: 10, steps: [5] },
        {
          key: 'a/press',
          who: 'EV2',
          at: 15,
          steps: [5],
          parts: { after: [{ stint: 'a/apply', leastS: 0, mostS: 20, span: SPAN }] },
        },
      ],
    },
  },
  {
    name: 'the word that the bus is off may be lost in a coverage gap, and the gate closes',
    rule: 'proof/gates-hold-for-all-durations',
    says: '"work" waits for "Bus off" to be verified',
    plan: {
      slip: 10,
      states: { 'request:bus': 'clear' },
      campaign: {
        requests: [request()],
        windows: [window_('gap', 2, 30, 'gap')],
        gates: [
          {
            id: 'go',
            title: 'Go',
            before: 'a/work',
            caller: 'IV',
            latestPetS: 12 * MIN,
            conditions: [],
            onNo: 'hold',
            drops: [],
            span: SPAN,
          },
        ],
        limits: {
          homeWithinS: null,
          partnerWithinS: null,
          gloveCheckEveryS: null,
          padCheckEveryS: null,
          tetherSwapS: null,
          restraintIngressS: null,
          restraintEgressS: null,
          reactionS: 30,
          travelSpread: null,
          marginS: null,
          span: null,
        },
      },
      holds: [
        {
          request: 'bus',
          askS: 4 * MIN,
          verifiedS: 10 * MIN,
          firstUseS: 10 * MIN,
          lastUseS: 20 * MIN,
          clearedS: 21 * MIN,
        },
      ],
      work: [{ key: 'a/work', who: 'EV1', at: 10, steps: [10], does: { controls: [['bus', 0, 1]] } }],
    },
  },
  {
    name: 'two swap tools in the middle of stints that cannot wait there',
    rule: 'proof/order-leaves-a-way',
    says: 'passes from EV1 to EV2',
    plan: {
      states: { 'driver.holder': 'place:porch', 'ratchet.holder': 'place:porch' },
      work: [
        {
          key: 'a/drive',
          who: 'EV1',
          at: 10,
          steps: [10, 5],
          spread: [10, 20],
          does: {
            tools: [
              ['driver', 0],
              ['ratchet', 1],
            ],
          },
        },
        {
          key: 'a/turn',
          who: 'EV2',
          at: 10,
          steps: [10, 5],
          spread: [10, 20],
          does: {
            tools: [
              ['ratchet', 0],
              ['driver', 1],
            ],
          },
        },
      ],
    },
  },
  {
    name: 'nobody has said how long the work may take',
    rule: 'proof/durations-have-bounds',
    says: 'a/work',
    plan: { work: [{ key: 'a/work', who: 'EV1', at: 5, steps: [40], spread: null }] },
  },
  {
    name: 'nobody has said how long it takes to react',
    rule: 'proof/reaction-time-is-stated',
    says: '30 s were counted',
    plan: {
      campaign: {
        limits: {
          homeWithinS: null,
          partnerWithinS: null,
          gloveCheckEveryS: null,
          padCheckEveryS: null,
          tetherSwapS: null,
          restraintIngressS: null,
          restraintEgressS: null,
          reactionS: null,
          travelSpread: null,
          marginS: null,
          span: null,
        },
      },
      work: [{ key: 'a/work', who: 'EV1', at: 5, steps: [40] }],
    },
  },
];
