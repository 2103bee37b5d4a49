import type { Arm } from '@handrail/eva/campaign/campaign';
import { armTransfers } from '@handrail/eva/vehicle/arm-transfers';
import { findRoutes } from '@handrail/eva/vehicle/find-routes';
import { minutesHome } from '@handrail/eva/vehicle/minutes-home';
import { railsThatMayTurn, segmentDistance, tetherMeetings } from '@handrail/eva/vehicle/tether-path';
import { travelTable } from '@handrail/eva/vehicle/travel-table';
import { describe, expect, it } from 'vitest';
import { bareCampaign, outsidePerson, piece, place, rail, SPAN } from './bare-campaign.ts';

/*   hatch ─60 s, 5 m─ a ─120 s, 5 m─ b ─60 s, 5 m, while joint parked─ c        two anchors at the hatch, one at b
 *                     a ─90 s, 4 m, fairlead at a─ d ─30 s, 4 m─ e                                                       */
const vehicle = {
  id: 'frame',
  title: 'Frame',
  places: [
    place('hatch', { positionM: [0, 0, 0] }),
    place('a', { positionM: [5, 0, 0] }),
    place('b', { positionM: [10, 0, 0] }),
    place('c', { positionM: [15, 0, 0] }),
    place('d', { positionM: [5, 4, 0] }),
    place('e', { positionM: [5, 8, 0] }),
  ],
  rails: [
    rail('hatch', 'a', 60, { lengthM: 5 }),
    rail('a', 'b', 120),
    rail('b', 'c', 60, { openWhile: [{ variable: 'joint', allowed: ['parked'], span: SPAN }] }),
    rail('a', 'd', 90, { fairlead: 'a' }),
    rail('d', 'e', 30),
  ],
  loadClasses: [{ id: 'large', title: 'Large', factor: 1.5, fillsHands: true, span: SPAN }],
  hatch: 'hatch',
  span: SPAN,
};
const campaign = bareCampaign({
  vehicle,
  people: [
    outsidePerson('EV1', { pace: 1.2, startAnchor: 'port', tetherLengthM: 12 }),
    outsidePerson('EV2', { startAnchor: 'starboard', tetherLengthM: 40 }),
  ],
  hardware: [
    piece('port', 'anchor', 'hatch'),
    piece('starboard', 'anchor', 'hatch'),
    piece('out', 'anchor', 'b'),
    piece('joint', 'rotating-joint', 'b', { initial: { motion: 'parked' } }),
  ],
  limits: { ...bareCampaign().limits, tetherSwapS: 40 },
});

describe('minutes home', () => {
  it('are a sum that can be redone by hand, swaps and pace included', () => {
    // From c on the anchor at b, whose reel of 12 m reaches the hatch (10 m), where the tether is moved to the one there.
    // 60 + 120 + 60 + 40 = 280 s; at pace 1.2 it is 72 + 144 + 72 + 48 = 336 s.
    const home = minutesHome(campaign, 1.2, { person: 'EV1' });
    expect(home.find((one) => one.place === 'c')).toEqual({
      place: 'c',
      seconds: 336,
      words: 'to b 1 min 12 s + to a 2 min 24 s + to hatch 1 min 12 s + tether to port 48 s = 5 min 36 s',
      path: ['c', 'b', 'a', 'hatch'],
    });
    expect(home.find((one) => one.place === 'hatch')?.words).toBe('hatch is the hatch: 0 min');
  });
  it('say where there is no way', () => {
    const home = minutesHome(campaign, 1, { person: 'EV2', valuation: new Map([['joint', 'turning']]) });
    expect(home.find((one) => one.place === 'c')).toMatchObject({ seconds: null, words: 'no way from c to hatch' });
  });
  it('are none at level 0', () => {
    expect(minutesHome(bareCampaign())).toEqual([]);
    expect(travelTable(bareCampaign()).homeSeconds('outside', 1)).toBe(0);
  });
});

describe('routes of a person', () => {
  it('take the pace of the person and every ordered pair', () => {
    const { pairs, pace } = findRoutes(campaign, { person: 'EV1', load: null });
    expect(pace).toBe(1.2);
    expect(pairs).toHaveLength(6 * 5);
    expect(pairs.find((one) => one.from === 'hatch' && one.to === 'b')?.seconds).toBeCloseTo(1.2 * 180, 9);
  });
});

describe('tether paths', () => {
  it('run from the anchor through the fairleads to the person', () => {
    // hatch → a 5 m, through the fairlead at a, a → d → e 8 m.
    expect(travelTable(campaign, { person: 'EV2' }).tetherAt('e')).toMatchObject({
      anchor: 'starboard',
      points: ['hatch', 'a', 'e'],
      along: ['hatch', 'a', 'd', 'e'],
      reelM: 13,
    });
  });
  it('do not reach past the reel', () => {
    const table = travelTable(campaign, { person: 'EV1' });
    expect(table.tetherAt('e')).toBeNull();
    expect(table.tetherAt('d')?.reelM).toBe(9);
    expect(table.secondsBetween('hatch', 'e', null, 1)).toBeNull();
  });
  it('know the joints that they lie over', () => {
    const over = travelTable(campaign, { person: 'EV2' }).tetherAt('c');
    expect(over === null ? [] : railsThatMayTurn(over).map((one) => one.id)).toEqual(['b-c']);
  });
  it('run together along the rails that they share', () => {
    const table = travelTable(campaign, { person: 'EV2' });
    const [b, e] = [table.tetherAt('b'), table.tetherAt('e')];
    expect(b === null || e === null ? [] : tetherMeetings(b, e, vehicle)).toEqual([
      { kind: 'run together', rails: ['hatch-a'] },
    ]);
  });
  it('cross where both pass through a place by different rails', () => {
    const path = (along: string[]) => ({
      anchor: 'x',
      points: along,
      along,
      rails: along.slice(1).map((to, i) => rail(along[i] as string, to, 60)),
      reelM: 0,
    });
    expect(tetherMeetings(path(['p', 'm', 'q']), path(['r', 'm', 's']), vehicle)).toEqual([
      { kind: 'cross', place: 'm' },
    ]);
    expect(tetherMeetings(path(['m', 'q']), path(['r', 'm', 's']), vehicle)).toEqual([]);
  });
  it('pass near each other where their lines do', () => {
    const positions = { u: [0, 0, 0], v: [10, 0, 0], w: [5, -5, 0.5], z: [5, 5, 0.5] } as const;
    const near = {
      ...vehicle,
      places: Object.entries(positions).map(([id, positionM]) => place(id, { positionM: [...positionM] })),
    };
    const line = (a: string, b: string) => ({
      anchor: a,
      points: [a, b],
      along: [a, b],
      rails: [rail(a, b, 60)],
      reelM: 0,
    });
    expect(tetherMeetings(line('u', 'v'), line('w', 'z'), near)).toEqual([{ kind: 'pass near', distanceM: 0.5 }]);
  });
});

describe('the distance of two straight pieces', () => {
  // By hand: crossing lines half a metre apart; parallel lines; end to end along one line (3-4-5); a point to a line.
  it.each([
    [[0, 0, 0], [2, 0, 0], [1, -1, 0.5], [1, 1, 0.5], 0.5],
    [[0, 0, 0], [2, 0, 0], [0, 3, 0], [2, 3, 0], 3],
    [[0, 0, 0], [1, 0, 0], [4, 4, 0], [9, 4, 0], 5],
    [[0, 0, 0], [4, 0, 0], [1, 2, 0], [1, 2, 0], 2],
    [[0, 0, 0], [4, 0, 0], [1, 0, 0], [9, 0, 0], 0],
  ] as const)('%j %j to %j %j is %d', (p, q, r, s, expected) => {
    expect(segmentDistance(p, q, r, s)).toBeCloseTo(expected, 12);
  });
});

describe('arm transfers', () => {
  const arm: Arm = {
    id: 'crane',
    title: 'Crane',
    operator: 'IV',
    poses: ['park', 'low', 'high', 'pump'].map((id) => ({ id, title: id, place: null, climbDown: null, span: SPAN })),
    transfers: [
      { from: 'park', to: 'low', emptyS: 60, loadedS: 100, oneWay: false, climbDown: null, span: SPAN },
      { from: 'low', to: 'high', emptyS: 60, loadedS: null, oneWay: false, climbDown: null, span: SPAN },
      { from: 'park', to: 'high', emptyS: 200, loadedS: 300, oneWay: false, climbDown: null, span: SPAN },
      { from: 'high', to: 'pump', emptyS: 30, loadedS: 50, oneWay: true, climbDown: null, span: SPAN },
    ],
    startPose: 'park',
    span: SPAN,
  };
  const table = armTransfers(arm);
  it('take the quicker chain', () => {
    expect(table.secondsBetween('park', 'high', false)).toBe(120);
    expect(table.pathBetween('park', 'high', false)).toEqual(['park', 'low', 'high']);
  });
  it('leave out what is not allowed loaded', () => {
    expect(table.secondsBetween('park', 'high', true)).toBe(300);
    expect(table.secondsBetween('low', 'pump', true)).toBe(100 + 300 + 50);
  });
  it('do not go back over a one-way transfer', () => {
    expect(table.secondsBetween('pump', 'high', false)).toBeNull();
    expect(table.pathBetween('pump', 'high', false)).toBeNull();
  });
  it('refuse a pose that the arm does not have', () => {
    expect(() => table.secondsBetween('park', 'attic', false)).toThrow(/crane has no pose attic/);
  });
});
