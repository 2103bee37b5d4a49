/*
 * Two programs on the same question: random small campaigns are planned, and every plan that comes out is replayed by the program
 * that shares no code with planning. A plan that does not replay is a mistake in one of the two.
 */
import type { Campaign, Role, Stint, Task } from '@handrail/eva/campaign/campaign';
import type { HardwareModel } from '@handrail/eva/hardware/effects';
import { formatFindings } from '@handrail/eva/finding/format-finding';
import { replayTimeline } from '@handrail/eva/proof/replay/replay-timeline';
import { planCampaign } from '@handrail/eva/schedule/plan-campaign';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bareCampaign, outsidePerson, piece, place, rail, SPAN } from '../../reference/routes/bare-campaign.ts';
import { armRole, type Doing, insidePerson, MIN, modelOf, role, stint, task } from '../../rejects/replay/build-work.ts';

const PLACES = ['porch', 'mid', 'bay', 'far', 'wing'];
const PET_ZERO_MS = Date.parse('2031-09-14T12:00:00Z');

interface Drawn {
  readonly who: number;
  readonly at: number;
  readonly minutes: readonly number[];
  readonly variable: number;
  readonly from: number;
  readonly looks: number;
  readonly restraint: boolean;
  readonly tool: boolean;
  readonly request: boolean;
  readonly voice: boolean;
  readonly window: number;
  readonly lag: number;
  readonly partnerFrom: number;
}

const drawnStint = fc.record<Drawn>({
  who: fc.nat(2),
  at: fc.nat(4),
  minutes: fc.array(fc.integer({ min: 2, max: 12 }), { minLength: 1, maxLength: 3 }),
  variable: fc.nat(6),
  from: fc.nat(1),
  looks: fc.nat(8),
  restraint: fc.boolean(),
  tool: fc.boolean(),
  request: fc.nat(3).map((n) => n === 0),
  voice: fc.nat(3).map((n) => n === 0),
  window: fc.nat(9),
  lag: fc.nat(3),
  partnerFrom: fc.nat(5),
});

const campaigns = fc
  .record({
    tasks: fc.array(fc.array(drawnStint, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 4 }),
    order: fc.constantFrom('written' as const, 'free' as const),
    slow: fc.constantFrom(1, 1.15),
    reelM: fc.constantFrom(14, 30),
    ride: fc.boolean(),
    boom: fc.boolean(),
    turnsMin: fc.constantFrom(null, 45, 80),
    evas: fc.constantFrom('one', 'one two'),
    box: fc.boolean(),
    longest: fc.constantFrom(150, 240),
  })
  .map(({ tasks, order, slow, reelM, ride, boom, turnsMin, evas, box, longest }) => {
    const doings: Record<string, Doing> = {};
    const all: Task[] = tasks.map((list, t) => {
      const id = `task-${t}`;
      const stints = list.map((one, s) => stintOf(id, s, one, list, doings));
      return task(id, t + 1, evas, stints, { order });
    });
    if (ride) all.push(rideTask(all.length + 1, doings));
    if (boom) all.push(boomTask(all.length + 1, doings));
    if (box) all.push(boxTask(all.length + 1, doings));
    return flight(all, doings, { slow, reelM, longest, turnsMin, evas });
  });

function stintOf(taskId: string, s: number, one: Drawn, list: readonly Drawn[], doings: Record<string, Doing>): Stint {
  const id = `stint-${s}`;
  const key = `${taskId}/${id}`;
  const at = PLACES[one.at] as string;
  const steps = one.minutes.length;
  const lead = role(['EV1', 'EV2', 'EV1 EV2'][one.who] as string, at, {
    restraint: one.restraint && at === 'bay' ? 'r1' : null,
  });
  // Now and then the other person helps from some step on.
  const roles: Role[] = [lead];
  if (one.partnerFrom < steps && one.who < 2) {
    roles.push(role(one.who === 0 ? 'EV2' : 'EV1', at, { name: 'partner', fromStep: one.partnerFrom }));
  }
  const tool = one.tool && one.who !== 2;
  const values = ['one', 'two'];
  const variable = `v${one.variable}`;
  const [from, to] = [values[one.from] as string, values[1 - one.from] as string];
  doings[key] = {
    changes: one.variable < 3 ? [[variable, from, to, steps - 1]] : [],
    looks: [
      ...(one.looks < 3 && one.looks !== one.variable ? [[`v${one.looks}`, 'one', 0, steps] as const] : []),
      // Inference asks for the tool in hand as a need of its holder, beside naming it among the tools.
      ...(tool ? [['driver.holder', 'role:0', 0, 1] as const] : []),
      ...(lead.restraint === null ? [] : [['r1.holder', 'hardware:socket-bay', 0, steps] as const]),
    ],
    tools: tool ? [['driver', 0]] : [],
    controls: one.request ? [['bus-off', 0, 1]] : [],
  };
  const windowUses: Stint['windowUses'] =
    one.window < 2
      ? [
          {
            window: 'night',
            mode: one.window === 0 ? 'inside' : 'outside',
            part: 'whole',
            fromStep: 0,
            toStep: 0,
            prefers: false,
            span: SPAN,
          },
        ]
      : [];
  const after: Stint['after'] =
    s > 0 && one.lag > 0
      ? [
          {
            stint: `${taskId}/stint-${s - 1}`,
            leastS: one.lag * 5 * MIN,
            mostS: one.lag > 1 ? 40 * MIN : null,
            span: SPAN,
          },
        ]
      : [];
  return stint(taskId, id, list[s] === undefined ? [] : one.minutes, roles, { voice: one.voice, windowUses, after });
}

function rideTask(rank: number, doings: Record<string, Doing>): Task {
  for (const id of ['mount', 'over', 'off']) doings[`ride/${id}`] = {};
  return task('ride', rank, 'one', [
    stint('ride', 'mount', [3], [role('EV2', 'mid', { endOn: 'crane' }), armRole('crane', 'at-mid')]),
    stint(
      'ride',
      'over',
      [6],
      [role('EV2', 'mid', { to: 'far', startOn: 'crane', endOn: 'crane' }), armRole('crane', 'at-mid', 'at-far')],
    ),
    stint('ride', 'off', [2], [role('EV2', 'far', { startOn: 'crane' }), armRole('crane', 'at-far')]),
  ]);
}

function boomTask(rank: number, doings: Record<string, Doing>): Task {
  for (const id of ['out', 'in']) doings[`boom/${id}`] = {};
  return task('boom', rank, 'one', [
    stint('boom', 'out', [5], [armRole('boom', 'boom-out')]),
    stint('boom', 'in', [4], [armRole('boom', 'boom-in')]),
  ]);
}

function boxTask(rank: number, doings: Record<string, Doing>): Task {
  doings['box/lift'] = { changes: [['box.holder', 'place:bay', 'role:0', 0]], carriesOut: [[0, 'box']] };
  doings['box/put'] = { changes: [['box.holder', 'role:0', 'place:mid', 0]], carriesIn: [[0, 'box']] };
  return task('box', rank, 'one', [
    stint('box', 'lift', [4], [role('EV1', 'bay')]),
    stint('box', 'put', [3], [role('EV1', 'mid')]),
  ]);
}

function flight(
  tasks: readonly Task[],
  doings: Record<string, Doing>,
  drawn: { slow: number; reelM: number; longest: number; turnsMin: number | null; evas: string },
): { campaign: Campaign; model: HardwareModel } {
  const { slow, reelM, longest, turnsMin, evas } = drawn;
  const hardware = [
    piece('a-lock', 'anchor', 'porch'),
    piece('a-bay', 'anchor', 'bay'),
    piece('socket-bay', 'socket', 'bay'),
    piece('r1', 'foot-restraint', 'bay', { at: { kind: 'hardware', id: 'socket-bay' } }),
    piece('driver', 'power-tool', 'porch', { at: { kind: 'person', id: 'EV1' } }),
    piece('box', 'box', 'bay', { loadClass: 'large' }),
    ...['v0', 'v1', 'v2'].map((id) => piece(id, 'cover', 'mid')),
    piece('joint', 'rotating-joint', 'mid'),
  ];
  const variables = {
    v0: 'one',
    v1: 'one',
    v2: 'two',
    joint: 'parked',
    'box.holder': 'place:bay',
    'driver.holder': 'person:EV1',
    'r1.holder': 'hardware:socket-bay',
    'request:bus-off': 'clear',
  };
  const passage = (person: string, minutes: number) => ({ person, durationS: minutes * MIN, span: SPAN });
  const campaign = bareCampaign({
    tasks,
    hardware,
    people: [
      outsidePerson('EV1', { suitLimitS: 300 * MIN, startAnchor: 'a-lock', tetherLengthM: reelM }),
      outsidePerson('EV2', { pace: slow, startAnchor: 'a-lock', tetherLengthM: 30 }),
      insidePerson('IV'),
      insidePerson('IV2'),
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
          {
            from: 'at-mid',
            to: 'at-far',
            emptyS: 4 * MIN,
            loadedS: 6 * MIN,
            oneWay: false,
            climbDown: null,
            span: SPAN,
          },
        ],
        startPose: 'park',
        span: SPAN,
      },
      {
        id: 'boom',
        title: 'Boom',
        operator: 'IV2',
        poses: ['boom-in', 'boom-out'].map((id) => ({ id, title: id, place: null, climbDown: null, span: SPAN })),
        transfers: [
          {
            from: 'boom-in',
            to: 'boom-out',
            emptyS: 2 * MIN,
            loadedS: null,
            oneWay: false,
            climbDown: null,
            span: SPAN,
          },
        ],
        startPose: 'boom-in',
        span: SPAN,
      },
    ],
    vehicle: {
      id: 'station',
      title: 'Station',
      places: PLACES.map((id) => place(id)),
      rails: [
        rail('porch', 'mid', 2 * MIN, { lengthM: 6 }),
        rail('mid', 'bay', 2 * MIN, { lengthM: 6, fairlead: 'mid' }),
        rail('bay', 'far', 3 * MIN, { lengthM: 8 }),
        rail('porch', 'bay', 205, { lengthM: 9, refuses: ['large'] }),
        rail('mid', 'wing', 95, { lengthM: 6, openWhile: [{ variable: 'joint', allowed: ['parked'], span: SPAN }] }),
      ],
      loadClasses: [{ id: 'large', title: 'Large box', factor: 1.5, fillsHands: true, span: SPAN }],
      hatch: 'porch',
      span: SPAN,
    },
    limits: { ...bareCampaign().limits, tetherSwapS: 50, restraintIngressS: 2 * MIN, restraintEgressS: MIN },
    evas: evas.split(' ').map((id, at) => ({
      id,
      title: `EVA ${id}`,
      egressUtcMs: PET_ZERO_MS + at * 3 * 86_400_000,
      slipS: 0,
      longestS: longest * MIN,
      egress: [passage('EV1', 8), passage('EV2', 6)],
      ingress: [passage('EV2', 6), passage('EV1', 6)],
      closeHatchS: 7 * MIN,
      minimumSuccess: [],
      prebreathe: null,
      indoors: null,
      span: SPAN,
    })),
    events:
      turnsMin === null
        ? []
        : [
            {
              id: 'wing-turns',
              title: 'The wing turns',
              atUtcMs: PET_ZERO_MS + turnsMin * 60_000,
              agreed: true,
              leaves: [{ variable: 'joint', value: 'turning', span: SPAN }],
              span: SPAN,
            },
          ],
    requests: [
      {
        id: 'bus-off',
        title: 'Bus off',
        owner: 'power',
        inhibits: 1,
        setLeadS: 10 * MIN,
        verifyS: 2 * MIN,
        clearS: 5 * MIN,
        longestHoldS: 45 * MIN,
        status: 'agreed',
        window: null,
        span: SPAN,
      },
    ],
    windows: [
      {
        id: 'night',
        title: 'Night',
        intervals: [40, 130].map((min) => [PET_ZERO_MS + min * 60_000, PET_ZERO_MS + (min + 35) * 60_000] as const),
        padS: 30,
        shownAs: 'night',
        source: null,
        span: SPAN,
      },
    ],
    clocks: [
      {
        id: 'bare',
        title: 'Bare',
        kind: 'difference',
        limitS: 60 * MIN,
        sense: 'most',
        onStop: 'reset',
        start: { variable: 'v0', values: ['two'], span: SPAN },
        stop: { variable: 'v0', values: ['one'], span: SPAN },
        span: SPAN,
      },
    ],
  });
  return { campaign, model: modelOf(hardware, variables, doings) };
}

function plan(campaign: Campaign, model: HardwareModel): Timeline {
  const options = { seed: 1, conflictBudget: 200, skipReasons: true, sharingTries: 0 };
  const running = planCampaign(campaign, model, options);
  let next = running.next();
  while (next.done !== true) next = running.next();
  return next.value.timeline;
}

describe('plans of random small campaigns', () => {
  it('replay without an error', () => {
    let planned = 0;
    let full = 0;
    fc.assert(
      fc.property(campaigns, ({ campaign, model }) => {
        const timeline = plan(campaign, model);
        const stints = timeline.evas.reduce((sum, one) => sum + one.stints.length, 0);
        planned += stints;
        if (timeline.leftOut.length === 0) full++;
        if (timeline.evas.length === 0) return;
        const errors = replayTimeline(campaign, model, timeline).filter(
          // A clock that nothing in the campaign stops is a finding about the campaign, not about the planning of it.
          (finding) => finding.severity === 'error' && finding.rule !== 'replay/clock-is-stopped',
        );
        expect(formatFindings(errors)).toBe('');
      }),
      { numRuns: 120, seed: 2031 },
    );
    expect(planned).toBeGreaterThan(150);
    expect(full).toBeGreaterThan(5);
  });
});
