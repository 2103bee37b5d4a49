/**
 * Shortest times from one node of a graph in compressed rows: Dijkstra's method with a binary heap. Times are not negative.
 * Exact up to the rounding of the additions.
 */
export interface ArcTable {
  readonly nodeCount: number;
  /** Arcs of node n: [rowStart[n], rowStart[n + 1]). */
  readonly rowStart: Int32Array;
  readonly target: Int32Array;
  /** Seconds; Infinity closes the arc. */
  readonly timeS: Float64Array;
}

export interface ShortestTimes {
  /** Infinity where there is no way. */
  readonly timeS: Float64Array;
  /** The arc by which the node is reached on a shortest way; −1 at the source and where there is no way. */
  readonly byArc: Int32Array;
  /** The node before it on that way; −1 likewise. */
  readonly before: Int32Array;
}

export function shortestTimes(graph: ArcTable, source: number): ShortestTimes {
  const { nodeCount, rowStart, target, timeS } = graph;
  const best = new Float64Array(nodeCount).fill(Number.POSITIVE_INFINITY);
  const byArc = new Int32Array(nodeCount).fill(-1);
  const before = new Int32Array(nodeCount).fill(-1);
  // The heap holds node numbers; `slot` says where a node stands in it (−1: not yet seen, −2: settled).
  const heap = new Int32Array(nodeCount);
  const slot = new Int32Array(nodeCount).fill(-1);
  let size = 1;
  heap[0] = source;
  slot[source] = 0;
  best[source] = 0;
  while (size > 0) {
    const node = heap[0] ?? source;
    slot[node] = -2;
    size--;
    if (size > 0) {
      const last = heap[size]!;
      const lastTime = best[last]!;
      let hole = 0;
      for (;;) {
        let child = 2 * hole + 1;
        if (child >= size) break;
        if (child + 1 < size && best[heap[child + 1]!]! < best[heap[child]!]!) child++;
        const childNode = heap[child]!;
        if (best[childNode]! >= lastTime) break;
        heap[hole] = childNode;
        slot[childNode] = hole;
        hole = child;
      }
      heap[hole] = last;
      slot[last] = hole;
    }
    const nodeTime = best[node]!;
    for (let arc = rowStart[node] as number; arc < (rowStart[node + 1] as number); arc++) {
      const next = target[arc] as number;
      const place = slot[next]!;
      if (place === -2) continue;
      const time = nodeTime + timeS[arc]!;
      if (!(time < best[next]!)) continue;
      best[next] = time;
      byArc[next] = arc;
      before[next] = node;
      let hole = place === -1 ? size++ : place;
      while (hole > 0) {
        const parent = (hole - 1) >> 1;
        const parentNode = heap[parent]!;
        if (best[parentNode]! <= time) break;
        heap[hole] = parentNode;
        slot[parentNode] = hole;
        hole = parent;
      }
      heap[hole] = next;
      slot[next] = hole;
    }
  }
  return { timeS: best, byArc, before };
}
