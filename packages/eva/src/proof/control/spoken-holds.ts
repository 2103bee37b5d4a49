/**
 * The waits of the strategy that somebody has to be told: those that neither the order of the plan nor the durations bring about by
 * themselves. "hold: X not before PET 2:05"; "hold: X not until EV2 calls Y; without the call, not before 40 min after Z".
 */
import { formatDuration, formatPet, formatUtcClock } from '@handrail/quantity/time';
import { arcsOf, SimpleNetwork } from '../network/simple-network.ts';
import type { TemporalNetwork } from '../network/temporal-network.ts';
import type { Wait } from './check-controllability.ts';

export interface SpokenHold {
  readonly words: string;
  /** Event that waits. */
  readonly event: number;
  readonly wait: Wait;
  readonly stint: string | null;
  /** Who waits. */
  readonly lanes: readonly string[];
  /** Contingent link whose end is called; null: by the clock alone. */
  readonly call: number | null;
  /** The call is heard later than the crew reacts: it may fall into a coverage gap. */
  readonly mayBeLate: boolean;
  /** PET at which the wait is over at the latest when everything before went as planned. */
  readonly petS: number;
}

export function spokenHolds(
  network: TemporalNetwork,
  strategy: readonly Wait[],
  petZeroUtcMs: number,
  reactionS: number,
): readonly SpokenHold[] {
  const net = new SimpleNetwork(network.events.length, arcsOf(network));
  // Nobody decides when work ends; the wait of its start says the same.
  const ends = new Set(network.contingents.map(({ to }) => to));
  const starts = strategy.filter((wait) => {
    if (wait.event <= network.petZero || ends.has(wait.event)) return false;
    if (net.least(wait.after, wait.event) >= wait.waitS) return false;
    const call = wait.until === null ? undefined : network.contingents[wait.until];
    return call === undefined || net.least(call.to, wait.event) < 0;
  });
  const telling = starts.filter(
    (wait, at) => !starts.some((other, index) => index !== at && covers(network, net, other, wait, index < at)),
  );
  return telling
    .map((wait) => inWords(network, wait, petZeroUtcMs, reactionS))
    .sort((a, b) => a.petS - b.petS || a.event - b.event);
}

/** Whether keeping `other` keeps `wait` too. Of two that say the same the earlier one stays. */
function covers(network: TemporalNetwork, net: SimpleNetwork, other: Wait, wait: Wait, isEarlier: boolean): boolean {
  const marginOf = (kept: Wait, asked: Wait): number => {
    if (kept.until !== null && kept.until !== asked.until) {
      if (asked.until !== null) return Number.NEGATIVE_INFINITY;
      // The call may come as soon as the least length is over and heard of.
      const leastS = (network.contingents[kept.until]?.leastS ?? 0) + kept.heardS;
      return reach(kept, asked) + Math.min(kept.waitS, leastS) - asked.waitS;
    }
    return reach(kept, asked) + kept.waitS - asked.waitS;
  };
  const reach = (kept: Wait, asked: Wait): number =>
    net.least(asked.after, kept.after) + net.least(kept.event, asked.event);
  if (!(marginOf(other, wait) >= 0)) return false;
  return !(marginOf(wait, other) >= 0) || isEarlier;
}

function inWords(network: TemporalNetwork, wait: Wait, petZeroUtcMs: number, reactionS: number): SpokenHold {
  const event = network.events[wait.event] as TemporalNetwork['events'][number];
  const after = network.events[wait.after] as TemporalNetwork['events'][number];
  const petS = after.plannedS + wait.waitS;
  const time =
    wait.after === network.petZero
      ? `PET ${formatPet(wait.waitS)}`
      : wait.after < network.petZero
        ? `${formatUtcClock(petZeroUtcMs + petS * 1000)} UTC`
        : `${formatDuration(wait.waitS)} after ${after.words} (PET ${formatPet(petS)} as planned)`;
  const call = wait.until === null ? null : (network.contingents[wait.until] ?? null);
  const end = call === null ? null : (network.events[call.to] as TemporalNetwork['events'][number]);
  const who = end === null || end.lanes.length === 0 ? 'the ground' : (end.lanes[0] as string);
  const until =
    end === null
      ? `before ${time}`
      : call?.kind === 'slip'
        ? `before PET 0 or ${time}, whichever comes first`
        : `until ${who} calls ${end.words}; without the call, not before ${time}`;
  return {
    words: `hold: ${event.words} not ${until}`,
    event: wait.event,
    wait,
    stint: event.stint,
    lanes: event.lanes,
    call: wait.until,
    mayBeLate: call !== null && call.delayS > reactionS,
    petS,
  };
}
