/*
 * The second method: graphology's Dijkstra over the product graph place × anchor written out in full, with the reach of each
 * anchor also worked out by graphology, in metres. Random vehicles without fairleads.
 */
import type { Campaign } from '@handrail/eva/campaign/campaign';
import { travelTable } from '@handrail/eva/vehicle/travel-table';
import * as fc from 'fast-check';
import { MultiDirectedGraph } from 'graphology';
import { dijkstra } from 'graphology-shortest-path';
import { describe, expect, it } from 'vitest';
import { bareCampaign, outsidePerson, piece, place, rail, SPAN } from '../../reference/routes/bare-campaign.ts';

const SWAP_S = 70;
const LOADS = [
  { id: 'small', title: 'Small', factor: 1.25, fillsHands: false, span: SPAN },
  { id: 'large', title: 'Large', factor: 1.75, fillsHands: true, span: SPAN },
];

const vehicles = fc
  .record({
    size: fc.integer({ min: 2, max: 14 }),
    rails: fc.array(
      fc.record({
        a: fc.nat(),
        b: fc.nat(),
        durationS: fc.integer({ min: 10, max: 300 }),
        lengthM: fc.integer({ min: 1, max: 12 }),
        refusesLarge: fc.boolean(),
        closed: fc.integer({ min: 0, max: 9 }).map((n) => n === 0),
      }),
      { minLength: 3, maxLength: 40 },
    ),
    anchors: fc.array(fc.nat(), { minLength: 1, maxLength: 5 }),
    reelM: fc.integer({ min: 4, max: 40 }),
    tethered: fc.boolean(),
  })
  .map(({ size, rails, anchors, reelM, tethered }): { campaign: Campaign; tethered: boolean } => ({
    tethered,
    campaign: bareCampaign({
      vehicle: {
        id: 'frame',
        title: 'Frame',
        places: Array.from({ length: size }, (_, i) => place(`p${i}`)),
        rails: rails.map((one, i) =>
          rail(`p${one.a % size}`, `p${one.b % size}`, one.durationS, {
            id: `r${i}`,
            lengthM: one.lengthM,
            refuses: one.refusesLarge ? ['large'] : [],
            openWhile: one.closed ? [{ variable: 'joint', allowed: ['parked'], span: SPAN }] : [],
          }),
        ),
        loadClasses: LOADS,
        hatch: 'p0',
        span: SPAN,
      },
      hardware: [
        piece('lock', 'anchor', 'p0'),
        ...anchors.map((at, i) => piece(`anchor${i}`, 'anchor', `p${at % size}`)),
      ],
      people: [outsidePerson('EV1', tethered ? { startAnchor: 'lock', tetherLengthM: reelM } : {})],
      limits: { ...bareCampaign().limits, tetherSwapS: SWAP_S },
    }),
  }));

type Ways = MultiDirectedGraph<object, { weight: number }>;

function addBothWays(graph: Ways, a: string, b: string, weight: number): void {
  if (!graph.hasNode(a) || !graph.hasNode(b)) return;
  graph.addEdge(a, b, { weight });
  graph.addEdge(b, a, { weight });
}

/** Weight of the shortest way from one node to each that can be reached. */
function weightsFrom(graph: Ways, source: string): Map<string, number> {
  const ways = dijkstra.singleSource(graph, source, 'weight');
  const step = (a: string, b: string): number =>
    Math.min(
      ...graph
        .outEdges(a)
        .filter((edge) => graph.target(edge) === b)
        .map((edge) => graph.getEdgeAttribute(edge, 'weight')),
    );
  return new Map(
    Object.entries(ways).map(([to, way]) => [
      to,
      way.slice(1).reduce((sum, next, at) => sum + step(way[at] as string, next), 0),
    ]),
  );
}

/** The product graph written out: nodes "place@anchor"; without a tether one anchor, "none", that reaches everywhere. */
function productGraph(campaign: Campaign, tethered: boolean, load: string | null): Ways {
  const { places, rails } = campaign.vehicle;
  const open = rails.filter((one) => one.openWhile.length === 0 && one.from !== one.to);
  const metres: Ways = new MultiDirectedGraph();
  for (const one of places) metres.addNode(one.id);
  for (const one of open) addBothWays(metres, one.from, one.to, one.lengthM ?? 0);
  const anchors = tethered
    ? campaign.hardware.map((one) => ({ id: one.id, at: one.at.id }))
    : [{ id: 'none', at: 'p0' }];
  const reelM = campaign.people[0]?.tetherLengthM ?? 0;
  const factor = LOADS.find((one) => one.id === load)?.factor ?? 1;
  const graph: Ways = new MultiDirectedGraph();
  for (const anchor of anchors) {
    const reach = weightsFrom(metres, anchor.at);
    for (const one of places) {
      const lengthM = reach.get(one.id);
      if (!tethered || (lengthM !== undefined && lengthM <= reelM)) graph.addNode(`${one.id}@${anchor.id}`);
    }
    for (const one of open) {
      if (load !== null && one.refuses.includes(load)) continue;
      addBothWays(graph, `${one.from}@${anchor.id}`, `${one.to}@${anchor.id}`, one.durationS * factor);
    }
  }
  for (const to of anchors) {
    for (const from of anchors) {
      // The tether is moved at the anchor that it is moved to.
      const [a, b] = [`${to.at}@${from.id}`, `${to.at}@${to.id}`];
      if (from.id !== to.id && graph.hasNode(a)) graph.addEdge(a, b, { weight: SWAP_S });
    }
  }
  return graph;
}

describe('travel over place × anchor × load', () => {
  it('agrees with Dijkstra on the product graph written out, for every pair and load', () => {
    let pairsWithAWay = 0;
    fc.assert(
      fc.property(vehicles, ({ campaign, tethered }) => {
        const table = travelTable(campaign);
        const ids = campaign.vehicle.places.map((one) => one.id);
        const unladen = productGraph(campaign, tethered, null);
        // The anchor worked from: that of the quickest way out, so no other anchor may be quicker from the hatch.
        const out = weightsFrom(unladen, tethered ? 'p0@lock' : 'p0@none');
        const standing = new Map(ids.map((id) => [id, table.anchorAt(id) ?? 'none']));
        for (const id of ids) {
          const all = [...out].filter(([node]) => node.startsWith(`${id}@`)).map(([, weight]) => weight);
          if (all.length > 0) expect(out.get(`${id}@${standing.get(id) ?? ''}`)).toBeCloseTo(Math.min(...all), 6);
          else expect(table.secondsBetween('p0', id, null, 1)).toBeNull();
        }
        for (const load of [null, 'small', 'large']) {
          const graph = productGraph(campaign, tethered, load);
          for (const from of ids) {
            const node = `${from}@${standing.get(from) ?? ''}`;
            const weights = graph.hasNode(node) ? weightsFrom(graph, node) : new Map<string, number>();
            for (const to of ids) {
              const expected = from === to ? 0 : (weights.get(`${to}@${standing.get(to) ?? ''}`) ?? null);
              const seconds = table.secondsBetween(from, to, load, 1);
              if (expected === null || !out.has(`${to}@${standing.get(to) ?? ''}`)) {
                if (from !== to && expected === null) expect(seconds).toBeNull();
                continue;
              }
              pairsWithAWay++;
              expect(seconds).toBeCloseTo(expected, 6);
            }
          }
        }
      }),
      { numRuns: 300, seed: 20310914 },
    );
    expect(pairsWithAWay).toBeGreaterThan(10_000);
  });

  it('keeps the triangle inequality inside one load class', () => {
    fc.assert(
      fc.property(vehicles, fc.constantFrom(null, 'small', 'large'), ({ campaign }, load) => {
        const table = travelTable(campaign);
        const ids = campaign.vehicle.places.map((one) => one.id);
        for (const a of ids) {
          for (const b of ids) {
            for (const c of ids) {
              const [ab, bc, ac] = [
                table.secondsBetween(a, b, load, 1),
                table.secondsBetween(b, c, load, 1),
                table.secondsBetween(a, c, load, 1),
              ];
              if (ab === null || bc === null) continue;
              expect(ac).not.toBeNull();
              expect(ac as number).toBeLessThanOrEqual(ab + bc + 1e-6);
            }
          }
        }
      }),
      { numRuns: 100, seed: 7 },
    );
  });

  it('gives a path whose rails and swaps add up to the time', () => {
    fc.assert(
      fc.property(vehicles, fc.constantFrom(null, 'small', 'large'), ({ campaign }, load) => {
        const table = travelTable(campaign);
        const ids = campaign.vehicle.places.map((one) => one.id);
        for (const from of ids) {
          for (const to of ids) {
            const route = table.routeBetween(from, to, load);
            if (route === null) continue;
            const rails = route.path
              .slice(1)
              .reduce((sum, next, at) => sum + table.railSeconds(route.path[at] as string, next, load), 0);
            expect(route.path[0]).toBe(from);
            expect(route.path.at(-1)).toBe(to);
            expect(rails + route.swaps.length * SWAP_S).toBeCloseTo(route.seconds, 6);
            for (const swap of route.swaps) {
              expect(campaign.hardware.find((one) => one.id === swap.anchor)?.at.id).toBe(route.path[swap.at]);
            }
          }
        }
      }),
      { numRuns: 100, seed: 11 },
    );
  });
});
