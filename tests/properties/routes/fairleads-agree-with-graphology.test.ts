/*
 * The second method for fairleads: every way of leading the tether written out by plain recursion over the rails, as a graph of
 * "place through fairleads" positions, and graphology's Dijkstra over it. Random vehicles with one anchor, at the hatch.
 */
import type { Campaign, Rail } from '@handrail/eva/campaign/campaign';
import { travelTable } from '@handrail/eva/vehicle/travel-table';
import * as fc from 'fast-check';
import { MultiDirectedGraph } from 'graphology';
import { dijkstra } from 'graphology-shortest-path';
import { describe, expect, it } from 'vitest';
import { bareCampaign, outsidePerson, piece, place, rail, SPAN } from '../../reference/routes/bare-campaign.ts';

type Ways = MultiDirectedGraph<object, { weight: number }>;

const vehicles = fc
  .record({
    size: fc.integer({ min: 3, max: 8 }),
    rails: fc.array(
      fc.record({
        a: fc.nat(),
        b: fc.nat(),
        // Fine enough that two ways hardly ever take the same time.
        durationS: fc.integer({ min: 10_000, max: 9_999_999 }).map((n) => n / 1000),
        lengthM: fc.integer({ min: 2, max: 9 }),
        fairlead: fc.constantFrom('none', 'near', 'far'),
      }),
      { minLength: 3, maxLength: 9 },
    ),
    reelM: fc.integer({ min: 6, max: 20 }),
  })
  .map(({ size, rails, reelM }) =>
    bareCampaign({
      vehicle: {
        id: 'frame',
        title: 'Frame',
        places: Array.from({ length: size }, (_, i) => place(`p${i}`)),
        rails: rails
          .map((one, i) => {
            const [from, to] = [`p${one.a % size}`, `p${one.b % size}`];
            const fairlead = one.fairlead === 'none' ? null : one.fairlead === 'near' ? from : to;
            return rail(from, to, one.durationS, { id: `r${i}`, lengthM: one.lengthM, fairlead });
          })
          .filter((one) => one.from !== one.to),
        loadClasses: [],
        hatch: 'p0',
        span: SPAN,
      },
      hardware: [piece('lock', 'anchor', 'p0')],
      people: [outsidePerson('EV1', { startAnchor: 'lock', tetherLengthM: reelM })],
      limits: { ...bareCampaign().limits, tetherSwapS: 60 },
    }),
  );

/** Weight of the shortest way from a node to each that can be reached. */
function weightsFrom(graph: Ways, source: string): Map<string, number> {
  return new Map(
    Object.entries(dijkstra.singleSource(graph, source, 'weight')).map(([to, way]) => [
      to,
      way.slice(1).reduce((sum, next, at) => {
        const edges = graph.outEdges(way[at] as string).filter((edge) => graph.target(edge) === next);
        return sum + Math.min(...edges.map((edge) => graph.getEdgeAttribute(edge, 'weight')));
      }, 0),
    ]),
  );
}

/** Vehicles with more ways of leading a tether than this are left out: they take long and show nothing new. */
const MOST = 150;

interface Passed {
  readonly rail: Rail;
  readonly from: string;
}

/** Nodes "p3 r1< r4>": a place, and the rails whose fairleads the tether is through, with the end that each was entered from. */
function positions(campaign: Campaign): Ways {
  const { places, rails } = campaign.vehicle;
  const reelM = campaign.people[0]?.tetherLengthM ?? 0;
  const metres: Ways = new MultiDirectedGraph();
  for (const one of places) metres.addNode(one.id);
  for (const one of rails) {
    metres.addEdge(one.from, one.to, { weight: one.lengthM ?? 0 });
    metres.addEdge(one.to, one.from, { weight: one.lengthM ?? 0 });
  }
  const rows = new Map(places.map((one) => [one.id, weightsFrom(metres, one.id)]));
  const nameOf = (at: string, passed: readonly Passed[]): string =>
    [at, ...passed.map((one) => one.rail.id + (one.from === one.rail.from ? '>' : '<'))].join(' ');
  const fits = (at: string, passed: readonly Passed[]): boolean => {
    const points = ['p0', ...passed.map((one) => one.rail.fairlead as string), at];
    let sum = 0;
    for (let i = 1; i < points.length; i++) sum += rows.get(points[i - 1] as string)?.get(points[i] as string) ?? 1e9;
    return sum <= reelM;
  };
  const graph: Ways = new MultiDirectedGraph();
  const visit = (at: string, passed: readonly Passed[]): void => {
    const name = nameOf(at, passed);
    if (graph.hasNode(name) || graph.order > MOST) return;
    graph.addNode(name);
    for (const one of rails) {
      for (const [from, to] of [
        [one.from, one.to],
        [one.to, one.from],
      ] as const) {
        if (from !== at) continue;
        let next = passed;
        if (one.fairlead !== null) {
          const last = passed.at(-1);
          if (last?.rail === one && last.from === to) next = passed.slice(0, -1);
          else if (passed.some((other) => other.rail === one)) continue;
          else next = [...passed, { rail: one, from }];
        }
        if (!fits(to, next)) continue;
        visit(to, next);
        if (graph.hasNode(nameOf(to, next))) graph.addEdge(name, nameOf(to, next), { weight: one.durationS });
      }
    }
  };
  visit('p0', []);
  return graph;
}

describe('travel with fairleads', () => {
  it('agrees with Dijkstra over all ways of leading the tether written out', () => {
    let compared = 0;
    let forced = 0;
    fc.assert(
      fc.property(vehicles, (campaign) => {
        const graph = positions(campaign);
        fc.pre(graph.order <= MOST);
        const out = weightsFrom(graph, 'p0');
        // Where a person works at a place: the position that is reached soonest from the hatch.
        const standing = new Map<string, string>();
        for (const [node, weight] of out) {
          const at = node.split(' ')[0] as string;
          const best = standing.get(at);
          if (best === undefined || weight < (out.get(best) as number)) standing.set(at, node);
        }
        const table = travelTable(campaign);
        const free = travelTable({ ...campaign, people: [outsidePerson('EV1')] });
        for (const { id: from } of campaign.vehicle.places) {
          const source = standing.get(from);
          const weights = source === undefined ? new Map<string, number>() : weightsFrom(graph, source);
          for (const { id: to } of campaign.vehicle.places) {
            if (from === to) continue;
            const seconds = table.secondsBetween(from, to, null, 1);
            const expected = weights.get(standing.get(to) ?? '') ?? null;
            if (expected === null) expect(seconds).toBeNull();
            else {
              compared++;
              expect(seconds).toBeCloseTo(expected, 6);
              if ((free.secondsBetween(from, to, null, 1) ?? 0) < expected - 1e-6) forced++;
            }
          }
        }
      }),
      { numRuns: 600, seed: 17 },
    );
    expect(compared).toBeGreaterThan(2000);
    // Ways that are longer than without a tether: otherwise this would test nothing about fairleads.
    expect(forced).toBeGreaterThan(100);
  });
});
