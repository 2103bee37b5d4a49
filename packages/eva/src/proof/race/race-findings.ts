/** Races as findings: one for each pair of stints, with a concrete execution that breaks, and the least that mends it. */
import { formatDuration, formatPet } from '@handrail/quantity/time';
import type { Finding } from '../../finding/finding.ts';
import type { AgreedHold } from '../network/network-draft.ts';
import type { TemporalNetwork } from '../network/temporal-network.ts';
import type { ReplayContext } from '../replay/replay-context.ts';
import { proved } from '../claim/prove-finding.ts';
import { breakingExecution } from './breaking-execution.ts';
import type { Race, RaceResult } from './find-races.ts';
import { orderOf } from './least-holds.ts';
import type { Access } from './state-accesses.ts';

export function raceFindings(
  context: ReplayContext,
  network: TemporalNetwork,
  result: RaceResult,
  holds: readonly AgreedHold[],
): readonly Finding[] {
  const pairs = new Map<string, Race[]>();
  for (const race of result.races) {
    const key = `${race.first.by}|${race.second.by}`;
    const list = pairs.get(key);
    if (list === undefined) pairs.set(key, [race]);
    else list.push(race);
  }
  return [...pairs.values()].map((races) => finding(context, network, result, races, holds));
}

function finding(
  context: ReplayContext,
  network: TemporalNetwork,
  result: RaceResult,
  races: readonly Race[],
  holds: readonly AgreedHold[],
): Finding {
  const [race] = races as [Race];
  const { first, second } = race;
  const titles = [...new Set(races.map(({ variable }) => context.model.variables.get(variable)?.title ?? variable))];
  const what = titles.length > 3 ? `${titles.slice(0, 3).join(', ')} and ${titles.length - 3} more` : titles.join(', ');
  const outside = [first, second].some(({ by }) => by.startsWith('event '));
  const request = [first, second].some(({ by }) => by.startsWith('request '));
  const rule = request
    ? 'proof/request-stays-over-its-use'
    : outside
      ? 'proof/order-with-outside-events-is-kept'
      : first.kind === 'change' && second.kind === 'change'
        ? 'proof/changes-are-in-order'
        : 'proof/needs-and-changes-are-in-order';
  return proved(rule, {
    title: `Nothing keeps ${first.title} before ${second.title}, and both have to do with ${what}`,
    why: `${first.words}; ${second.words}. ${broken(network, result, race)}`,
    mend: mend(network, race, holds),
    eva: network.eva,
    person: second.bodies[0] ?? null,
    stint: stintOf(second) ?? stintOf(first),
    petS: second.fromS,
    span: second.placed?.stint.span ?? first.placed?.stint.span ?? null,
  });
}

function broken(network: TemporalNetwork, { arcs }: RaceResult, race: Race): string {
  const execution = breakingExecution(network, arcs, race);
  if (execution === null) return 'The plan has the two at once';
  const pet = (event: number): string => `PET ${formatPet(execution.petS[event] as number)}`;
  const { first, second } = race;
  const lanes = new Set(first.bodies);
  const own = execution.stretched.filter(({ link }) =>
    network.events[network.contingents[link]?.to as number]?.lanes.some((lane) => lanes.has(lane)),
  );
  const slow = own.slice(0, 2).map(({ link, takesS }) => {
    const { reason = '', plannedS = 0 } = network.contingents[link] ?? {};
    return `${reason} takes ${formatDuration(takesS)} instead of ${formatDuration(plannedS)}`;
  });
  const planned = `as planned ${formatPet(first.toS)} and ${formatPet(second.fromS)}`;
  const how = slow.length === 0 ? '' : ` where ${slow.join(' and ')}`;
  return `It breaks${how}: ${network.events[second.from]?.words ?? ''} at ${pet(second.from)}, ${network.events[first.to]?.words ?? ''} only at ${pet(first.to)} (${planned})`;
}

function mend(network: TemporalNetwork, race: Race, holds: readonly AgreedHold[]): string {
  const { first, second } = race;
  if (isOutside(first)) {
    return `hold: ${network.events[second.from]?.words ?? ''} not before ${first.title} has happened`;
  }
  if (isOutside(second)) {
    return `end ${first.title} before ${second.title} in the worst case: start it earlier, or have the other agreed later`;
  }
  const wanted = orderOf(network, race)?.hold;
  if (wanted === undefined) return `hold: ${second.title} not before ${first.title} is called done`;
  const hold = holds.find((one) => JSON.stringify(one) === JSON.stringify(wanted));
  if (hold === undefined) {
    return `follows from ${holds.map((one) => `"${one.waits}" waiting for "${one.releases}"`).join(', ')}`;
  }
  const sameTask = first.placed !== null && first.placed.task.id === second.placed?.task.id;
  return mendText(hold, sameTask, first.bodies.join(' and '), second.bodies.join(' and '));
}

function stintOf({ placed, way }: Access): string | null {
  return placed?.stint.key ?? way?.next ?? way?.last ?? null;
}

function isOutside({ by }: Access): boolean {
  return by.startsWith('event ') || by.startsWith('request ');
}

/** The line of campaign text that puts the two in order. */
export function mendText(hold: AgreedHold, sameTask: boolean, says: string, listens: string): string {
  const [, releases = ''] = hold.releases.split('/');
  const [, waits = ''] = hold.waits.split('/');
  if (hold.waitsWayOf !== undefined) {
    return `hold: ${hold.waitsWayOf} starts the way to "${hold.waits}" only when "${hold.releases}" is called done (${says} says it)`;
  }
  if (hold.releasesWayOf !== undefined) {
    return `hold: "${hold.waits}" waits until ${hold.releasesWayOf} calls the way from "${hold.releases}" over (${listens} waits)`;
  }
  if (hold.releasesSteps === 0) {
    return `hold: "${hold.waits}" waits until "${hold.releases}" is called begun (${says} says it, ${listens} waits)`;
  }
  if (hold.releasesSteps !== undefined) {
    return `hold: step ${(hold.waitsStep ?? 0) + 1} of "${hold.waits}" waits until step ${hold.releasesSteps} of "${hold.releases}" is called done; split the stints there and join them`;
  }
  if (sameTask) return `join "${releases} done" after=${releases} before=${waits} (${says} says it, ${listens} waits)`;
  return `after ${hold.releases} in stint ${hold.waits}, or pin "${hold.releases}" before="${hold.waits}" (${says} says it, ${listens} waits)`;
}
