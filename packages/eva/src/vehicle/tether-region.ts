/**
 * Where one anchor lets a person go: nodes are a place together with the fairleads that the tether has been led through on the
 * way there. The reel pays out along anchor → fairleads → person, and the whole of it must fit. A rail with a fairlead threads
 * the tether on the way out; the only way back over it is to unthread the last one, so the way home is forced.
 *
 * Invariant: every arc has its reverse, so a person is never led into a position that they cannot leave by the way they came.
 */
import { Fault } from '@handrail/quantity/fault';
import type { Arc, RailNetwork } from './rail-network.ts';
import { shortestTimes } from './shortest-times.ts';

export interface RegionNode {
  readonly place: number;
  /** Fairleads the tether runs through, from the anchor outward. */
  readonly threaded: readonly Arc[];
  /** Reel paid out, metres; 0 where no tether is modelled. */
  readonly reelM: number;
}

export interface TetherRegion {
  readonly nodes: readonly RegionNode[];
  readonly rowStart: Int32Array;
  readonly target: Int32Array;
  readonly arcs: readonly Arc[];
  /** The position in which a person is at a place on this anchor: reached soonest from the anchor, unladen. −1: out of reach. */
  readonly standing: Int32Array;
}

/** More positions than any real set of fairleads gives; beyond it the fairleads are most likely put on every rail by mistake. */
const MOST_NODES = 20_000;

/** All places in one region, without a tether: what is used where anchors are not modelled. */
export function untetheredRegion(network: RailNetwork): TetherRegion {
  const nodes = network.places.map((_, place) => ({ place, threaded: [], reelM: 0 }));
  const standing = Int32Array.from(nodes, (_, index) => index);
  return { ...inRows(network.arcs.map((list) => list.map((arc) => ({ arc, to: arc.to })))), nodes, standing };
}

/**
 * The region of the anchor at `root` for a reel of `reelM` metres. Lengths of tether between its points are the shortest along
 * open rails: longer than a taut line, so what it allows is within reach. A rail of unknown length pays out nothing that could
 * be counted; callers do not model tethers where one is unknown.
 * @throws Fault `routes/too-many-tether-positions`
 */
export function tetherRegion(network: RailNetwork, root: number, reelLengthM: number): TetherRegion {
  const metresFrom = metresByPlace(network);
  const nodes: RegionNode[] = [{ place: root, threaded: [], reelM: 0 }];
  const numberOf = new Map<string, number>([[nameOf(root, [], network), 0]]);
  const leaving: { arc: Arc; to: number }[][] = [];
  for (let at = 0; at < nodes.length; at++) {
    const node = nodes[at] as RegionNode;
    const out: { arc: Arc; to: number }[] = [];
    leaving.push(out);
    for (const arc of network.arcs[node.place] ?? []) {
      const threaded = thread(node.threaded, arc);
      if (threaded === null) continue;
      const points = [root, ...threaded.map((passed) => fairleadOf(passed, network)), arc.to];
      const reelM = points.slice(1).reduce((sum, to, i) => sum + (metresFrom(points[i] as number)[to] as number), 0);
      if (reelM > reelLengthM + 1e-9) continue;
      const name = nameOf(arc.to, threaded, network);
      let to = numberOf.get(name);
      if (to === undefined) {
        to = nodes.length;
        if (to >= MOST_NODES) {
          throw new Fault(
            'routes/too-many-tether-positions',
            `more than ${MOST_NODES} ways to lead a tether of ${reelLengthM} m from ${network.places[root] ?? root}`,
            {
              values: { anchorPlace: network.places[root], reelLengthM },
              advice: 'put fairleads only where one is fitted',
            },
          );
        }
        numberOf.set(name, to);
        nodes.push({ place: arc.to, threaded, reelM });
      }
      out.push({ arc, to });
    }
  }
  const table = inRows(leaving);
  return { nodes, ...table, standing: standingNodes(network.places.length, nodes, table) };
}

/** The tether after crossing a rail; null where the tether forbids it. */
function thread(threaded: readonly Arc[], arc: Arc): readonly Arc[] | null {
  if (arc.rail.fairlead === null) return threaded;
  const last = threaded[threaded.length - 1];
  if (last !== undefined && last.rail === arc.rail && last.to === arc.from) return threaded.slice(0, -1);
  return threaded.some((passed) => passed.rail === arc.rail) ? null : [...threaded, arc];
}

/** Shortest metres along open rails from a place to every place, made once per place asked. */
function metresByPlace(network: RailNetwork): (from: number) => Float64Array {
  const table = inRows(network.arcs.map((list) => list.map((arc) => ({ arc, to: arc.to }))));
  const lengthM = Float64Array.from(table.arcs, (arc) => arc.lengthM ?? 0);
  const made = new Map<number, Float64Array>();
  return (from) => {
    let row = made.get(from);
    if (row === undefined) {
      const graph = { nodeCount: network.places.length, ...table, timeS: lengthM };
      row = shortestTimes(graph, from).timeS;
      made.set(from, row);
    }
    return row;
  };
}

function standingNodes(
  placeCount: number,
  nodes: readonly RegionNode[],
  table: { rowStart: Int32Array; target: Int32Array; arcs: readonly Arc[] },
): Int32Array {
  const timeS = Float64Array.from(table.arcs, (arc) => arc.durationS);
  const fromAnchor = shortestTimes({ nodeCount: nodes.length, ...table, timeS }, 0).timeS;
  const standing = new Int32Array(placeCount).fill(-1);
  nodes.forEach((node, index) => {
    const sofar = standing[node.place] as number;
    if (sofar === -1 || (fromAnchor[index] as number) < (fromAnchor[sofar] as number)) standing[node.place] = index;
  });
  return standing;
}

function inRows(leaving: readonly (readonly { arc: Arc; to: number }[])[]): {
  rowStart: Int32Array;
  target: Int32Array;
  arcs: readonly Arc[];
} {
  const flat = leaving.flat();
  const rowStart = new Int32Array(leaving.length + 1);
  leaving.forEach((list, node) => {
    rowStart[node + 1] = (rowStart[node] as number) + list.length;
  });
  return { rowStart, target: Int32Array.from(flat, (entry) => entry.to), arcs: flat.map((entry) => entry.arc) };
}

/** The place of the fairlead on a rail; the near end where the text names a place off the rail. */
function fairleadOf(arc: Arc, network: RailNetwork): number {
  return network.indexOf.get(arc.rail.fairlead ?? '') ?? arc.from;
}

function nameOf(place: number, threaded: readonly Arc[], network: RailNetwork): string {
  return [place, ...threaded.map((arc) => `${arc.rail.id}:${network.places[arc.from] ?? ''}`)].join('|');
}
