/**
 * Two short EVAs of Fulmar Station, written out by hand together with a timeline that holds: every figure below can be added
 * up with a pencil. The broken timelines beside this file each change one thing in it.
 *
 *   porch ─2 min, 6 m─ mid ─2 min, 6 m─ bay ─3 min, 8 m─ far        anchors at the porch and in the bay
 *     └──3 min, 9 m, not with a large load──┘
 *                       mid ─2 min, 6 m, while the joint is parked─ wing
 *                       mid ─1 min, 2 m─ den (kept out of) ─1 min, 2 m─ far
 *
 * EV1's reel is 16 m: the bay is 12 m from the porch, far is 20 m, so the tether is moved in the bay on the way to far.
 */
import type { Campaign } from '@handrail/eva/campaign/campaign';
import type { HardwareModel } from '@handrail/eva/hardware/effects';
import type { EvaTimeline, PlannedMove, PlannedStint, Timeline } from '@handrail/eva/timeline/timeline';
import { bareCampaign, outsidePerson, piece, place, rail, SPAN } from '../../reference/routes/bare-campaign.ts';
import { armRole, insidePerson, MIN, modelOf, role, stint, task } from './build-work.ts';

export interface Flight {
  readonly campaign: Campaign;
  readonly model: HardwareModel;
  readonly timeline: Timeline;
}

const at = (text: string): number => Date.parse(text);
const large = { loadClass: 'large' };
const holder = (kind: 'hardware' | 'person', id: string) => ({ at: { kind, id } }) as const;

const HARDWARE = [
  piece('a-lock', 'anchor', 'porch'),
  piece('a-bay', 'anchor', 'bay'),
  piece('socket-bay', 'socket', 'bay'),
  piece('locker', 'bay', 'porch'),
  piece('r1', 'foot-restraint', 'bay', holder('hardware', 'socket-bay')),
  piece('bag-1', 'bag', 'porch', holder('person', 'EV1')),
  piece('driver', 'power-tool', 'porch', holder('hardware', 'bag-1')),
  piece('camera', 'camera', 'porch', holder('person', 'EV1')),
  piece('cover', 'cover', 'bay'),
  piece('b1', 'bolt', 'bay'),
  piece('b2', 'bolt', 'bay'),
  piece('j1', 'power-connector', 'bay'),
  piece('box', 'box', 'bay', large),
  piece('glue', 'tie', 'mid'),
  piece('joint', 'rotating-joint', 'mid'),
];

const campaign: Campaign = bareCampaign({
  id: 'fulmar-short',
  people: [
    outsidePerson('EV1', { suitLimitS: 150 * MIN, startAnchor: 'a-lock', tetherLengthM: 16, carryMost: 3 }),
    outsidePerson('EV2', { suitLimitS: 150 * MIN, startAnchor: 'a-lock', tetherLengthM: 30, carryMost: 3 }),
    insidePerson('IV'),
  ],
  arms: [
    {
      id: 'crane',
      title: 'Crane',
      operator: 'IV',
      poses: [
        { id: 'park', title: 'Parked', place: null, climbDown: null, span: SPAN },
        { id: 'at-mid', title: 'At mid', place: 'mid', climbDown: null, span: SPAN },
        { id: 'at-far', title: 'At far', place: 'far', climbDown: null, span: SPAN },
      ],
      transfers: [
        { from: 'park', to: 'at-mid', emptyS: 3 * MIN, loadedS: 5 * MIN, oneWay: false, climbDown: null, span: SPAN },
        { from: 'at-mid', to: 'at-far', emptyS: 4 * MIN, loadedS: 6 * MIN, oneWay: false, climbDown: null, span: SPAN },
      ],
      startPose: 'park',
      span: SPAN,
    },
    {
      id: 'boom',
      title: 'Boom',
      operator: 'IV',
      poses: [
        { id: 'boom-in', title: 'In', place: null, climbDown: null, span: SPAN },
        { id: 'boom-out', title: 'Out', place: 'mid', climbDown: null, span: SPAN },
      ],
      transfers: [
        { from: 'boom-in', to: 'boom-out', emptyS: 2 * MIN, loadedS: null, oneWay: false, climbDown: null, span: SPAN },
      ],
      startPose: 'boom-in',
      span: SPAN,
    },
  ],
  vehicle: {
    id: 'fulmar-station',
    title: 'Fulmar Station',
    places: ['porch', 'mid', 'bay', 'far', 'wing'].map((id) => place(id)).concat(place('den', { keepOut: true })),
    rails: [
      rail('porch', 'mid', 2 * MIN, { lengthM: 6 }),
      rail('mid', 'bay', 2 * MIN, { lengthM: 6 }),
      rail('bay', 'far', 3 * MIN, { lengthM: 8 }),
      rail('porch', 'bay', 3 * MIN, { lengthM: 9, refuses: ['large'] }),
      rail('mid', 'wing', 2 * MIN, {
        lengthM: 6,
        openWhile: [{ variable: 'joint', allowed: ['parked'], span: SPAN }],
      }),
      rail('mid', 'den', MIN, { lengthM: 2 }),
      rail('den', 'far', MIN, { lengthM: 2 }),
    ],
    loadClasses: [{ id: 'large', title: 'Large box', factor: 1.5, fillsHands: true, span: SPAN }],
    hatch: 'porch',
    span: SPAN,
  },
  limits: {
    ...bareCampaign().limits,
    tetherSwapS: MIN,
    restraintIngressS: 2 * MIN,
    restraintEgressS: MIN,
    marginS: 15 * MIN,
  },
  evas: (['one', 'two'] as const).map((id) => ({
    id,
    title: `EVA ${id}`,
    egressUtcMs: at(id === 'one' ? '2031-09-14T12:00:00Z' : '2031-09-17T12:00:00Z'),
    slipS: 15 * MIN,
    longestS: 120 * MIN,
    egress: [
      { person: 'EV1', durationS: 8 * MIN, span: SPAN },
      { person: 'EV2', durationS: 6 * MIN, span: SPAN },
    ],
    ingress: [
      { person: 'EV2', durationS: 6 * MIN, span: SPAN },
      { person: 'EV1', durationS: 6 * MIN, span: SPAN },
    ],
    closeHatchS: 7 * MIN,
    minimumSuccess: [id === 'one' ? 'swap' : 'bring-in'],
    prebreathe: null,
    indoors: null,
    span: SPAN,
  })),
  hardware: HARDWARE,
  requests: [
    {
      id: 'pump-off',
      title: 'Pump power off',
      owner: 'power',
      inhibits: 2,
      setLeadS: 10 * MIN,
      verifyS: 2 * MIN,
      clearS: 5 * MIN,
      longestHoldS: 60 * MIN,
      status: 'agreed',
      window: 'bus-quiet',
      span: SPAN,
    },
  ],
  events: [
    {
      id: 'wing-turns',
      title: 'The wing turns again',
      atUtcMs: at('2031-09-17T13:30:00Z'),
      agreed: true,
      leaves: [{ variable: 'joint', value: 'turning', span: SPAN }],
      span: SPAN,
    },
  ],
  clocks: [
    {
      id: 'cold',
      title: 'Pump without power',
      kind: 'difference',
      limitS: 30 * MIN,
      sense: 'most',
      onStop: 'reset',
      start: { variable: 'j1', values: ['demated'], span: SPAN },
      stop: { variable: 'j1', values: ['mated'], span: SPAN },
      span: SPAN,
    },
    {
      id: 'cure',
      title: 'Glue cures',
      kind: 'difference',
      limitS: 10 * MIN,
      sense: 'least',
      onStop: 'reset',
      start: { variable: 'glue', values: ['applied'], span: SPAN },
      stop: { variable: 'glue', values: ['loaded'], span: SPAN },
      span: SPAN,
    },
  ],
  windows: [
    window_('daylight', '2031-09-14T12:58:00Z', '2031-09-14T13:30:00Z', 60),
    window_('gap', '2031-09-14T12:30:00Z', '2031-09-14T12:45:00Z', 60),
    window_('bus-quiet', '2031-09-14T12:20:00Z', '2031-09-14T13:00:00Z', 0),
  ],
  tasks: [
    task('swap', 1, 'one', [
      stint('swap', 'open-up', [3, 9], [role('EV1', 'bay', { restraint: 'r1' })]),
      stint('swap', 'unplug', [6], [role('EV1', 'bay', { restraint: 'r1' })]),
      stint('swap', 'lift-out', [4], [role('EV1', 'bay')]),
      stint('swap', 'park-box', [3], [role('EV1', 'mid')]),
      stint('swap', 'replug', [5], [role('EV1', 'bay', { restraint: 'r1' })], { voice: true, under: ['pump-off'] }),
    ]),
    task('ride', 2, 'one', [
      stint('ride', 'mount', [3], [role('EV2', 'mid', { endOn: 'crane' }), armRole('crane', 'at-mid')]),
      stint(
        'ride',
        'over',
        [6],
        [role('EV2', 'mid', { to: 'far', startOn: 'crane', endOn: 'crane' }), armRole('crane', 'at-mid', 'at-far')],
      ),
      stint('ride', 'look', [10], [role('EV2', 'far', { startOn: 'crane', endOn: 'crane' })], { voice: true }),
      stint(
        'ride',
        'back',
        [6],
        [role('EV2', 'far', { to: 'mid', startOn: 'crane', endOn: 'crane' }), armRole('crane', 'at-far', 'at-mid')],
      ),
      stint('ride', 'step-off', [2], [role('EV2', 'mid', { startOn: 'crane' }), armRole('crane', 'at-mid')]),
    ]),
    task(
      'bond',
      3,
      'one two',
      [
        stint('bond', 'apply', [5], [role('EV1 EV2', 'mid')]),
        stint('bond', 'load', [4], [role('EV1 EV2', 'mid')], {
          after: [{ stint: 'bond/apply', leastS: 5 * MIN, mostS: 20 * MIN, span: SPAN }],
          windowUses: [
            { window: 'gap', mode: 'outside', part: 'whole', fromStep: 0, toStep: 0, prefers: false, span: SPAN },
          ],
        }),
      ],
      {
        joins: [
          {
            id: 'box-parked',
            title: 'box parked',
            task: 'bond',
            releases: 'swap/park-box',
            waits: 'bond/apply',
            says: 'EV1',
            listens: 'EV2',
            span: SPAN,
          },
        ],
      },
    ),
    task('photo', 4, 'one two', [
      stint('photo', 'shoot', [10], [role('EV1', 'far')], {
        windowUses: [
          { window: 'daylight', mode: 'inside', part: 'whole', fromStep: 0, toStep: 0, prefers: false, span: SPAN },
        ],
      }),
    ]),
    task('bring-in', 5, 'two', [
      stint('bring-in', 'fetch', [3], [role('EV1', 'mid')]),
      stint('bring-in', 'stow', [4], [role('EV1', 'porch')]),
    ]),
    task('wing', 6, 'two', [stint('wing', 'check', [10], [role('EV2', 'wing')])]),
    task('boom', 7, 'two', [stint('boom', 'hold', [6], [armRole('boom', 'boom-out')])]),
    task('wipe', 8, 'one two', [stint('wipe', 'wipe', [15], [role('EV1 EV2', 'mid')])], { insert: true }),
  ],
  gates: [
    {
      id: 'unplug-go',
      title: 'Go for unplug',
      before: 'swap/unplug',
      caller: 'IV',
      latestPetS: 30 * MIN,
      conditions: [],
      onNo: 'hold',
      drops: [],
      span: SPAN,
    },
  ],
  pins: [
    { kind: 'person', stint: 'bond/apply', role: 'lead', person: 'EV2', span: SPAN },
    { kind: 'start', stint: 'swap/open-up', petS: 14 * MIN, span: SPAN },
    // oxlint-disable-next-line unicorn/no-thenable -- the contract's own word for what comes second
    { kind: 'order', first: 'ride/step-off', then: 'bond/apply', span: SPAN },
    { kind: 'eva', task: 'photo', eva: 'one', span: SPAN },
    { kind: 'out', task: 'wipe', span: SPAN },
  ],
});

function window_(id: string, from: string, to: string, padS: number): Campaign['windows'][number] {
  return { id, title: id, intervals: [[at(from), at(to)]], padS, shownAs: 'band', source: null, span: SPAN };
}

const model = modelOf(
  HARDWARE,
  {
    cover: 'closed',
    b1: 'torqued',
    b2: 'torqued',
    j1: 'mated',
    glue: 'clean',
    joint: 'parked',
    'box.holder': 'place:bay',
    'bag-1.holder': 'person:EV1',
    'driver.holder': 'hardware:bag-1',
    'camera.holder': 'person:EV1',
    'r1.holder': 'hardware:socket-bay',
    'request:pump-off': 'clear',
  },
  {
    'swap/open-up': {
      changes: [
        ['cover', 'closed', 'open', 0],
        ['b1', 'torqued', 'released', 1],
        ['b2', 'torqued', 'released', 1],
      ],
      looks: [['r1.holder', 'hardware:socket-bay', 0, 2]],
      tools: [['driver', 1]],
    },
    'swap/unplug': {
      changes: [['j1', 'mated', 'demated', 0]],
      looks: [['cover', 'open', 0, 1]],
      controls: [['pump-off', 0, 1]],
    },
    'swap/lift-out': {
      changes: [['box.holder', 'place:bay', 'role:0', 0]],
      looks: [
        ['b1', 'released', 0, 1],
        ['b2', 'released', 0, 1],
        ['j1', 'demated', 0, 1],
      ],
      carriesOut: [[0, 'box']],
    },
    'swap/park-box': { changes: [['box.holder', 'role:0', 'place:mid', 0]], carriesIn: [[0, 'box']] },
    'swap/replug': { changes: [['j1', 'demated', 'mated', 0]], atEnd: [['j1', 'mated']] },
    'ride/mount': {},
    'ride/over': {},
    'ride/look': {},
    'ride/back': {},
    'ride/step-off': {},
    'bond/apply': { changes: [['glue', 'clean', 'applied', 0]] },
    'bond/load': { changes: [['glue', 'applied', 'loaded', 0]] },
    'photo/shoot': { tools: [['camera', 0]] },
    'bring-in/fetch': { changes: [['box.holder', 'place:mid', 'role:0', 0]], carriesOut: [[0, 'box']] },
    'bring-in/stow': { changes: [['box.holder', 'role:0', 'hardware:locker', 0]], carriesIn: [[0, 'box']] },
    'wing/check': { looks: [['joint', 'parked', 0, 1]] },
    'boom/hold': {},
    'wipe/wipe': {},
  },
);

function planned(key: string, startMin: number, assigned: string): PlannedStint {
  const found = campaign.tasks.flatMap((one) => one.stints).find((one) => one.key === key);
  let endS = startMin * MIN;
  const stepEndsS = (found?.duration.stepsS ?? []).map((stepS) => (endS += stepS));
  return { stint: key, startS: startMin * MIN, endS, assigned: assigned.split(' '), stepEndsS };
}

function move(
  who: string,
  path: string,
  fromMin: number,
  toMin: number,
  anchor: string | null,
  carrying = '',
): PlannedMove {
  const points = path.split(' ');
  return {
    who,
    from: points[0] as string,
    to: points.at(-1) as string,
    startS: fromMin * MIN,
    endS: toMin * MIN,
    path: points,
    anchor,
    carrying: carrying === '' ? [] : carrying.split(' '),
  };
}

function passages(inMin: number): EvaTimeline['passages'] {
  return [
    { kind: 'egress', person: 'EV1', startS: 0, endS: 8 * MIN },
    { kind: 'egress', person: 'EV2', startS: 8 * MIN, endS: 14 * MIN },
    { kind: 'ingress', person: 'EV2', startS: inMin * MIN, endS: (inMin + 6) * MIN },
    { kind: 'ingress', person: 'EV1', startS: (inMin + 6) * MIN, endS: (inMin + 12) * MIN },
    { kind: 'close-hatch', person: null, startS: (inMin + 12) * MIN, endS: (inMin + 19) * MIN },
  ];
}

const claim: EvaTimeline['claim'] = { status: 'written by hand', levels: [], seed: 0, conflicts: 0 };

const timeline: Timeline = {
  format: 'handrail-timeline',
  version: 1,
  campaign: 'fulmar-short',
  documentHash: campaign.documentHash,
  library: { id: 'standard', version: '1' },
  leftOut: [{ task: 'wipe', why: 'pinned out' }],
  evas: [
    {
      eva: 'one',
      petZeroUtcMs: at('2031-09-14T12:00:00Z'),
      tasks: ['swap', 'ride', 'bond', 'photo'],
      stints: [
        planned('swap/open-up', 14, 'EV1'),
        planned('ride/mount', 20, 'EV2 crane'),
        planned('ride/over', 23, 'EV2 crane'),
        planned('swap/unplug', 26, 'EV1'),
        planned('ride/look', 29, 'EV2'),
        planned('swap/lift-out', 33, 'EV1'),
        planned('ride/back', 39, 'EV2 crane'),
        planned('swap/park-box', 40, 'EV1'),
        planned('ride/step-off', 45, 'EV2 crane'),
        planned('swap/replug', 47, 'EV1'),
        planned('bond/apply', 50, 'EV2'),
        planned('photo/shoot', 60, 'EV1'),
        planned('bond/load', 66, 'EV2'),
      ],
      passages: passages(80),
      moves: [
        move('EV1', 'porch mid bay', 8, 12, 'a-lock'),
        move('EV2', 'porch mid', 14, 16, 'a-lock'),
        move('crane', 'park at-mid', 14, 17, null),
        move('EV1', 'bay mid', 37, 40, 'a-lock', 'box'),
        move('EV1', 'mid bay', 43, 45, 'a-lock'),
        move('crane', 'at-mid park', 47, 50, null),
        move('EV1', 'bay far', 53, 57, 'a-bay'),
        move('EV1', 'far bay mid porch', 70, 78, 'a-lock'),
        move('EV2', 'mid porch', 70, 72, 'a-lock'),
      ],
      holds: [
        {
          request: 'pump-off',
          askS: 14 * MIN,
          verifiedS: 26 * MIN,
          firstUseS: 26 * MIN,
          lastUseS: 52 * MIN,
          clearedS: 57 * MIN,
        },
      ],
      joins: [{ join: 'box-parked', releasedS: 43 * MIN, waitsUntilS: 50 * MIN }],
      bothInS: 99 * MIN,
      wall: { petS: 120 * MIN, cause: 'longest EVA stated for EVA one' },
      claim,
    },
    {
      eva: 'two',
      petZeroUtcMs: at('2031-09-17T12:00:00Z'),
      tasks: ['bring-in', 'wing', 'boom'],
      stints: [
        planned('bring-in/fetch', 10, 'EV1'),
        planned('boom/hold', 10, 'boom'),
        planned('bring-in/stow', 16, 'EV1'),
        planned('wing/check', 18, 'EV2'),
      ],
      passages: passages(32),
      moves: [
        move('EV1', 'porch mid', 8, 10, 'a-lock'),
        move('boom', 'boom-in boom-out', 8, 10, null),
        move('EV1', 'mid porch', 13, 16, 'a-lock', 'box'),
        move('EV2', 'porch mid wing', 14, 18, 'a-lock'),
        move('EV2', 'wing mid porch', 28, 32, 'a-lock'),
      ],
      holds: [],
      joins: [],
      bothInS: 51 * MIN,
      wall: { petS: 120 * MIN, cause: 'longest EVA stated for EVA two' },
      claim,
    },
  ],
};

export const TWO_EVAS: Flight = { campaign, model, timeline };
