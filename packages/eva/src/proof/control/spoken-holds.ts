/**
 * The waits of the strategy that somebody has to be told: those that neither the order of the plan nor the durations bring about by
 * themselves. "hold: do not start X before PET 2:05"; "hold: do not start X until EV2 calls Y done, or 40 min after Z".
 */
import { formatDuration, formatPet, formatUtcClock } from '@handrail/quantity/time';
import { arcsOf, SimpleNetwork } from '../network/simple-network.ts';
import type { TemporalNetwork } from '../network/temporal-network.ts';
import type { Wait } from './check-controllability.ts';

export interface SpokenHold {
  readonly words: string;
  /** Event that waits. */
  readonly event: number;
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
  const starts = strategy.filter((wait) => {
    if (wait.event <= network.petZero || net.least(wait.after, wait.event) >= wait.waitS) return false;
    const call = wait.until === null ? undefined : network.contingents[wait.until];
    return call === undefined || net.least(call.to, wait.event) < 0;
  });
  const telling = starts.filter(
    (wait, at) => !starts.some((other, index) => index !== at && covers(net, other, wait, index < at)),
  );
  return telling
    .map((wait) => inWords(network, wait, petZeroUtcMs, reactionS))
    .sort((a, b) => a.petS - b.petS || a.event - b.event);
}

/** Whether keeping `other` keeps `wait` too. */
function covers(net: SimpleNetwork, other: Wait, wait: Wait, isEarlier: boolean): boolean {
  if (other.until !== wait.until && other.until !== null) return false;
  const marginS = net.least(wait.after, other.after) + other.waitS + net.least(other.event, wait.event) - wait.waitS;
  if (!(marginS >= 0)) return false;
  // Two that cover each other: the first stays.
  const backS = net.least(other.after, wait.after) + wait.waitS + net.least(wait.event, other.event) - other.waitS;
  return !(backS >= 0 && (wait.until === other.until || wait.until === null)) || isEarlier;
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
    end === null ? '' : call?.kind === 'slip' ? 'before PET 0, nor ' : `until ${who} calls ${end.words}, or `;
  return {
    words: `hold: ${event.words} not ${end === null ? '' : until}before ${time}`,
    event: wait.event,
    stint: event.stint,
    lanes: event.lanes,
    call: wait.until,
    mayBeLate: call !== null && call.delayS > reactionS,
    petS,
  };
}
