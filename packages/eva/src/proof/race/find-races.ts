/**
 * Race-free: in every execution of the network each foreign change of a state comes strictly before or strictly after each other
 * change and each need of it. Then every execution shows the same values at every need, and one replay proves all.
 *
 * Entailed means: the shortest distance in the network leaves no other way, durations within their bounds and all links kept.
 * Touching is allowed where the order is entailed.
 *
 * @checked tests/properties/proof, tests/rejects/proof
 */
import { type Arc, arcsOf, SimpleNetwork } from '../network/simple-network.ts';
import type { TemporalNetwork } from '../network/temporal-network.ts';
import type { Access } from './state-accesses.ts';

/** Two accesses of one variable that nothing keeps in the order in which they are planned. */
export interface Race {
  readonly variable: string;
  readonly first: Access;
  readonly second: Access;
}

export interface RaceResult {
  readonly races: readonly Race[];
  /** Pairs that were looked at. */
  readonly pairs: number;
  /** Limits contradict each other: then only the order counts, without wall, clocks, windows and gates. */
  readonly onOrderAlone: boolean;
  readonly net: SimpleNetwork;
  readonly arcs: readonly Arc[];
}

const LIMITS = new Set(['wall', 'clock', 'window', 'gate', 'lag', 'request']);

export function findRaces(network: TemporalNetwork, accesses: ReadonlyMap<string, readonly Access[]>): RaceResult {
  let arcs = arcsOf(network);
  let net = new SimpleNetwork(network.events.length, arcs);
  const onOrderAlone = !net.consistent;
  if (onOrderAlone) {
    arcs = arcsOf(network, (kind) => !LIMITS.has(kind));
    net = new SimpleNetwork(network.events.length, arcs);
  }
  const races: Race[] = [];
  let pairs = 0;
  for (const [variable, list] of accesses) {
    const changes = list.filter(({ kind }) => kind === 'change');
    for (const [index, change] of changes.entries()) {
      for (const other of list) {
        if (other.by === change.by || (other.kind === 'change' && changes.indexOf(other) < index)) continue;
        pairs++;
        if (net.least(change.to, other.from) >= 0 || net.least(other.to, change.from) >= 0) continue;
        races.push({ variable, ...inPlannedOrder(change, other) });
      }
    }
  }
  return { races, pairs, onOrderAlone, net, arcs };
}

function inPlannedOrder(a: Access, b: Access): { first: Access; second: Access } {
  const aFirst = a.toS <= b.fromS && (a.toS < b.fromS || a.fromS <= b.fromS);
  return aFirst || a.fromS < b.fromS ? { first: a, second: b } : { first: b, second: a };
}
