import { travelTable } from '@handrail/eva/vehicle/travel-table';
import { describe, expect, it } from 'vitest';
import { bareCampaign, outsidePerson, piece, place, rail, SPAN } from './bare-campaign.ts';

/*
 * A line of six places, 2 min and 6 m from one to the next, with anchors at the hatch and at c. All figures are added up by hand.
 *
 *   hatch ── a ── b ── c ── d ── e        reel 20 m: from the hatch's anchor as far as c (18 m); from c as far as e
 */
function line(reelM: number) {
  const ids = ['hatch', 'a', 'b', 'c', 'd', 'e'];
  return bareCampaign({
    vehicle: {
      id: 'frame',
      title: 'Frame',
      places: ids.map((id) => place(id)),
      rails: ids.slice(1).map((id, i) => rail(ids[i] as string, id, 120, { lengthM: 6 })),
      loadClasses: [{ id: 'large', title: 'Large', factor: 1.5, fillsHands: true, span: SPAN }],
      hatch: 'hatch',
      span: SPAN,
    },
    people: [outsidePerson('EV1', { startAnchor: 'lock', tetherLengthM: reelM })],
    hardware: [piece('lock', 'anchor', 'hatch'), piece('mid', 'anchor', 'c')],
    limits: { ...bareCampaign().limits, tetherSwapS: 60 },
  });
}

describe('travel on a line of places', () => {
  it('adds the rails within reach of the anchor', () => {
    expect(travelTable(line(20)).secondsBetween('hatch', 'c', null, 1)).toBe(360);
  });
  it('adds one swap where the reel ends on the way', () => {
    const table = travelTable(line(20));
    expect(table.secondsBetween('hatch', 'e', null, 1)).toBe(5 * 120 + 60);
    expect(table.routeBetween('hatch', 'e', null)).toEqual({
      seconds: 660,
      path: ['hatch', 'a', 'b', 'c', 'd', 'e'],
      swaps: [{ at: 3, anchor: 'mid' }],
      anchor: 'mid',
    });
  });
  it('needs no swap with a reel that reaches to the end', () => {
    expect(travelTable(line(30)).secondsBetween('hatch', 'e', null, 1)).toBe(600);
  });
  it('finds no way past the reel when the next anchor is out of reach', () => {
    expect(travelTable(line(17)).secondsBetween('hatch', 'e', null, 1)).toBeNull();
    expect(travelTable(line(17)).secondsBetween('hatch', 'b', null, 1)).toBe(240);
  });
  it('takes the swap back on the way home', () => {
    expect(travelTable(line(20)).homeSeconds('d', 1)).toBe(4 * 120 + 60);
  });
  it('stays on the same anchor between two places that are both worked from it', () => {
    expect(travelTable(line(20)).secondsBetween('d', 'e', null, 1)).toBe(120);
  });
  it('multiplies rails, not swaps, by the load, and all by the pace', () => {
    expect(travelTable(line(20)).secondsBetween('hatch', 'e', 'large', 1)).toBe(5 * 180 + 60);
    expect(travelTable(line(20)).secondsBetween('hatch', 'e', 'large', 1.2)).toBeCloseTo(1.2 * 960, 9);
  });
  it('leaves tethers out and says so when the reel length is not given', () => {
    const base = line(20);
    const table = travelTable({ ...base, people: [outsidePerson('EV1', { startAnchor: 'lock' })] });
    expect(table.secondsBetween('hatch', 'e', null, 1)).toBe(600);
    expect(table.defaults.map((entry) => entry.value)).toEqual([
      'not modelled: routes take no tether swaps and no reel length into account, because no reel length is given for EV1',
    ]);
  });
  it('counts the slower of two persons with different reels', () => {
    const base = line(20);
    const people = [
      base.people[0] as (typeof base.people)[0],
      outsidePerson('EV2', { startAnchor: 'lock', tetherLengthM: 40 }),
    ];
    expect(travelTable({ ...base, people }).secondsBetween('hatch', 'e', null, 1)).toBe(660);
    expect(travelTable({ ...base, people }, { person: 'EV2' }).secondsBetween('hatch', 'e', null, 1)).toBe(600);
  });
});

describe('rails that are not always open', () => {
  const joint = { variable: 'joint', allowed: ['parked'], span: SPAN };
  const base = bareCampaign({
    vehicle: {
      id: 'frame',
      title: 'Frame',
      places: [place('hatch'), place('a'), place('b'), place('wing', { keepOut: true })],
      rails: [
        rail('hatch', 'b', 60, { openWhile: [joint] }),
        rail('hatch', 'a', 100),
        rail('a', 'b', 100, { refuses: ['large'] }),
        rail('hatch', 'wing', 10),
        rail('wing', 'b', 10),
      ],
      loadClasses: [{ id: 'large', title: 'Large', factor: 2, fillsHands: true, span: SPAN }],
      hatch: 'hatch',
      span: SPAN,
    },
    people: [outsidePerson('EV1')],
  });
  const parked = new Map([['joint', 'parked']]);
  it('are taken while their condition holds', () => {
    expect(travelTable(base, { valuation: parked }).secondsBetween('hatch', 'b', null, 1)).toBe(60);
  });
  it('are closed when it does not hold and when it is unknown', () => {
    for (const value of ['turning', 'unknown']) {
      expect(travelTable(base, { valuation: new Map([['joint', value]]) }).secondsBetween('hatch', 'b', null, 1)).toBe(
        200,
      );
    }
    expect(travelTable(base).secondsBetween('hatch', 'b', null, 1)).toBe(200);
  });
  it('refuse the loads that do not fit', () => {
    expect(travelTable(base).secondsBetween('hatch', 'b', 'large', 1)).toBeNull();
    expect(travelTable(base, { valuation: parked }).secondsBetween('hatch', 'b', 'large', 1)).toBe(120);
  });
  it('never lead through a place that is kept out of', () => {
    expect(travelTable(base, { valuation: parked }).pathBetween('hatch', 'b', null)).toEqual(['hatch', 'b']);
    expect(travelTable(base).secondsBetween('hatch', 'wing', null, 1)).toBeNull();
  });
  it('read the value stated for the start of the campaign', () => {
    const stated = { ...base, hardware: [piece('joint', 'rotary-joint', 'a', { initial: { state: 'parked' } })] };
    expect(travelTable(stated).secondsBetween('hatch', 'b', null, 1)).toBe(60);
  });
});

describe('fairleads', () => {
  /* A square with the hatch at one corner: the quick way out is threaded, the other is not.
   *   hatch ─(60 s, fairlead at p)─ p ─(60)─ far,   hatch ─(200)─ q ─(200)─ far */
  const square = (fairlead: string | null) =>
    bareCampaign({
      vehicle: {
        id: 'frame',
        title: 'Frame',
        places: ['hatch', 'p', 'q', 'far'].map((id) => place(id)),
        rails: [
          rail('hatch', 'p', 60, { lengthM: 5, fairlead }),
          rail('p', 'far', 60, { lengthM: 5 }),
          rail('hatch', 'q', 200, { lengthM: 5 }),
          rail('q', 'far', 10, { lengthM: 5 }),
        ],
        loadClasses: [],
        hatch: 'hatch',
        span: SPAN,
      },
      people: [outsidePerson('EV1', { startAnchor: 'lock', tetherLengthM: 16 })],
      hardware: [piece('lock', 'anchor', 'hatch')],
      limits: { ...bareCampaign().limits, tetherSwapS: 60 },
    });
  it('leave the way free where there are none', () => {
    expect(travelTable(square(null)).secondsBetween('q', 'hatch', null, 1)).toBe(130);
  });
  it('force the way back through the same points', () => {
    // Out to q: by way of p and far (60 + 60 + 10 = 130 s), threaded at p: 5 + 10 m of reel. Home from q is the same way back.
    const table = travelTable(square('p'));
    expect(table.pathBetween('q', 'hatch', null)).toEqual(['q', 'far', 'p', 'hatch']);
  });
  it('count the reel through them', () => {
    const base = square('p');
    const short = { ...base, people: [outsidePerson('EV1', { startAnchor: 'lock', tetherLengthM: 12 })] };
    // Threaded at p, q is 5 + 10 = 15 m of reel away: too far. Straight along the other side it is 5 m.
    expect(travelTable(short).pathBetween('hatch', 'q', null)).toEqual(['hatch', 'q']);
    expect(travelTable(short).secondsBetween('hatch', 'q', null, 1)).toBe(200);
  });
});
