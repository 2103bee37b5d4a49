import { Fault } from '@handrail/quantity/fault';
import { findRoutes } from '@handrail/eva/vehicle/find-routes';
import { travelTable } from '@handrail/eva/vehicle/travel-table';
import { describe, expect, it } from 'vitest';
import { bareCampaign, outsidePerson, piece, place, rail, SPAN } from '../../reference/routes/bare-campaign.ts';

const campaign = bareCampaign({
  vehicle: {
    id: 'frame',
    title: 'Frame',
    places: [place('hatch'), place('a')],
    rails: [rail('hatch', 'a', 60)],
    loadClasses: [{ id: 'large', title: 'Large', factor: 2, fillsHands: true, span: SPAN }],
    hatch: 'hatch',
    span: SPAN,
  },
  people: [outsidePerson('EV1')],
});

function codeOf(run: () => unknown): string {
  try {
    run();
  } catch (error) {
    if (error instanceof Fault) return error.code;
    throw error;
  }
  return 'nothing was refused';
}

describe('routes refuse', () => {
  it('a place that the vehicle does not have', () => {
    expect(codeOf(() => travelTable(campaign).secondsBetween('hatch', 'attic', null, 1))).toBe('routes/unknown-place');
    expect(codeOf(() => travelTable(campaign).homeSeconds('attic', 1))).toBe('routes/unknown-place');
  });
  it('a load class that the vehicle does not have', () => {
    expect(codeOf(() => travelTable(campaign).secondsBetween('hatch', 'a', 'huge', 1))).toBe(
      'routes/unknown-load-class',
    );
  });
  it('a person who is not in the campaign', () => {
    expect(codeOf(() => findRoutes(campaign, { person: 'EV9', load: null }))).toBe('routes/unknown-person');
  });
  it('a pace that is not above zero', () => {
    for (const pace of [0, -1, Number.NaN]) {
      expect(codeOf(() => findRoutes(campaign, { pace, load: null }))).toBe('routes/pace-not-positive');
    }
  });
  it('fairleads on every rail of a dense vehicle, before the ways of leading a tether fill the memory', () => {
    const ids = Array.from({ length: 12 }, (_, i) => `p${i}`);
    const rails = ids.flatMap((a, i) => ids.slice(i + 1).map((b) => rail(a, b, 60, { lengthM: 1, fairlead: b })));
    const dense = bareCampaign({
      vehicle: { ...campaign.vehicle, places: ids.map((id) => place(id)), rails, hatch: 'p0' },
      hardware: [piece('lock', 'anchor', 'p0')],
      people: [outsidePerson('EV1', { startAnchor: 'lock', tetherLengthM: 60 })],
      limits: { ...bareCampaign().limits, tetherSwapS: 60 },
    });
    expect(codeOf(() => travelTable(dense))).toBe('routes/too-many-tether-positions');
  });
});
