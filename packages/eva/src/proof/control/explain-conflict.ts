/**
 * Why a plan cannot be kept whatever the durations: the semi-reducible negative cycle read as a sum. On one side a limit, or two; on
 * the other the waits and the longest times on the chain that leads up to it; the difference is what is missing.
 */
import { formatDuration } from '@handrail/quantity/time';
import type { ContingentLink, LinkKind, RequirementLink, TemporalNetwork } from '../network/temporal-network.ts';
import type { Edge } from './labelled-graph.ts';

export interface Conflict {
  /** The limits that the chain runs against, the tightest kind first; empty: orders that contradict each other. */
  readonly limits: readonly RequirementLink[];
  /** What the chain is made of, in its order. Positive: room that a limit or a short time gives; negative: time that is taken. */
  readonly chain: readonly ChainLink[];
  /** How much is missing. */
  readonly shortS: number;
}
export interface ChainLink {
  readonly words: string;
  readonly seconds: number;
  readonly stint: string | null;
}

/** Limits by how much they say about a day that goes wrong: the wall is named only where nothing else is in the way. */
const TELLING: readonly LinkKind[] = ['clock', 'window', 'gate', 'request', 'lag', 'wall'];

export function explainConflict(network: TemporalNetwork, cycle: readonly Edge[], shortS: number): Conflict {
  const limits = new Set<RequirementLink>();
  // "Not before" or "at least" breaks where the crew cannot wait: named where no longest time is in the way.
  const least = new Set<RequirementLink>();
  const chain: ChainLink[] = [];
  const links = cycle.map((edge) => partOf(network, edge)).filter((one) => one !== null);
  for (const { edge, link, stint } of links) {
    if (edge.origin.of === 'requirement' && TELLING.includes((link as RequirementLink).kind)) {
      (edge.origin.side === 'most' ? limits : least).add(link as RequirementLink);
    }
    // An order without any time adds nothing to the sum.
    if (edge.weightS === 0 && edge.origin.of === 'requirement') continue;
    const before = chain.at(-1);
    const isWork = edge.origin.of === 'contingent';
    const words = isWork && stint !== null ? titleOf(link.reason) : link.reason;
    if (before !== undefined && before.words === words) {
      chain[chain.length - 1] = { ...before, seconds: before.seconds + edge.weightS };
    } else chain.push({ words, seconds: edge.weightS, stint });
  }
  return {
    limits: [...(limits.size > 0 ? limits : least)].sort((a, b) => TELLING.indexOf(a.kind) - TELLING.indexOf(b.kind)),
    chain: chain.filter(({ seconds }) => seconds !== 0),
    shortS,
  };
}

/** "The limit gives 1 h 45 min; on the way to it "Free the spare" 36 min, … (and 4 more, 20 min) add up to 1 h 52 min: 7 min short". */
export function conflictInWords({ chain, shortS }: Conflict, most = 8): string {
  const given = chain.filter(({ seconds }) => seconds > 0);
  const taken = chain.filter(({ seconds }) => seconds < 0);
  const sum = (list: readonly ChainLink[]): number => list.reduce((total, { seconds }) => total + seconds, 0);
  const say = ({ words, seconds }: ChainLink): string => `${words} ${formatDuration(Math.abs(seconds))}`;
  const largest = new Set(taken.toSorted((a, b) => a.seconds - b.seconds).slice(0, most));
  const shown = taken.filter((link) => largest.has(link));
  const rest = taken.filter((link) => !largest.has(link));
  const more = rest.length === 0 ? '' : `, and ${rest.length} more, together ${formatDuration(-sum(rest))}`;
  const room = given.length === 0 ? 'nothing gives room' : `room: ${given.map(say).join('; ')}`;
  return `${room}. Against it, at worst: ${shown.map(say).join('; ')}${more}. ${formatDuration(-sum(taken))} in ${formatDuration(sum(given))}: ${formatDuration(shortS)} short`;
}

function partOf(
  network: TemporalNetwork,
  edge: Edge,
): { edge: Edge; link: RequirementLink | ContingentLink; stint: string | null } | null {
  const { origin } = edge;
  if (origin.of === 'path') return null;
  const link = origin.of === 'requirement' ? network.requirements[origin.link] : network.contingents[origin.link];
  if (link === undefined) return null;
  const stint = origin.of === 'contingent' ? (network.events[link.to]?.stint ?? null) : null;
  return { edge, link, stint };
}

/** The stint's title without the steps. */
function titleOf(reason: string): string {
  return reason.replace(/", steps? \d+( to \d+)?/, '"');
}
