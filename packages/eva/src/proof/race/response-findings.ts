/** What responses break, as findings: under the hands of somebody at work one for each pair, what follows one for each response. */
import { formatPet } from '@handrail/quantity/time';
import type { Finding } from '../../finding/finding.ts';
import { valueWords } from '../../hardware/value-words.ts';
import { proved } from '../claim/prove-finding.ts';
import type { Arc } from '../network/simple-network.ts';
import type { TemporalNetwork } from '../network/temporal-network.ts';
import type { ReplayContext } from '../replay/replay-context.ts';
import { earliestWith } from './breaking-execution.ts';
import { mendText } from './race-findings.ts';
import type { BrokenByResponse } from './response-writes.ts';

/** More pairs than this are counted, not told. */
const MOST_PAIRS = 5;

export function responseFindings(
  context: ReplayContext,
  network: TemporalNetwork,
  arcs: readonly Arc[],
  broken: readonly BrokenByResponse[],
): readonly Finding[] {
  const atOnce = new Map<string, BrokenByResponse>();
  for (const one of broken) {
    const key = `${one.write.response.id}|${one.write.placed?.stint.key ?? ''}|${one.other.by}`;
    if (one.when === 'at once' && !atOnce.has(key)) atOnce.set(key, one);
  }
  const after = new Map<string, BrokenByResponse[]>();
  for (const one of broken) {
    if (one.when !== 'after' || isDecided(context, network, one)) continue;
    const list = after.get(one.write.response.id) ?? [];
    after.set(one.write.response.id, [...list, one]);
  }
  return [
    ...[...atOnce.values()].map((one) => underHands(context, network, arcs, one)),
    ...[...after.values()].map((list) => undecided(context, network, list)),
  ];
}

function underHands(
  context: ReplayContext,
  network: TemporalNetwork,
  arcs: readonly Arc[],
  { write, other }: BrokenByResponse,
): Finding {
  const { response, placed } = write;
  const left = `${titleOf(context, write.variable)} is left ${valueWords(write.value)}`;
  const where = placed === null ? 'at any minute' : `while ${at(placed.planned.assigned)} in "${placed.stint.title}"`;
  const second = other.placed;
  const hold =
    placed === null || second === null
      ? null
      : placed.planned.startS <= second.planned.startS
        ? { releases: placed.stint.key, waits: second.stint.key }
        : { releases: second.stint.key, waits: placed.stint.key };
  const bodies = [placed?.planned.assigned ?? [], other.bodies].map((one) => one.join(' and '));
  const [says = '', listens = ''] = hold?.releases === placed?.stint.key ? bodies : bodies.toReversed();
  const sameTask = placed !== null && placed.task.id === second?.task.id;
  return proved('proof/responses-keep-clear-of-others', {
    title: `Where "${response.title}" does not work, it breaks ${other.title}, which may be under way just then`,
    why: `it can come up ${where}; then ${left}, and ${other.words}. Nothing keeps the two apart${executionWords(network, arcs, write, other)}`,
    mend:
      hold === null
        ? `have the response say how it is left so that ${other.title} can bear it, or say in it who stops first`
        : mendText(hold, sameTask, says, listens),
    eva: network.eva,
    person: other.bodies[0] ?? null,
    stint: other.placed?.stint.key ?? placed?.stint.key ?? null,
    petS: other.fromS,
    span: placed?.stint.span ?? context.campaign.responses.find(({ id }) => id === response.id)?.span ?? null,
  });
}

/** The earliest execution in which the trouble comes up with the other under way. */
function executionWords(
  network: TemporalNetwork,
  arcs: readonly Arc[],
  write: BrokenByResponse['write'],
  other: BrokenByResponse['other'],
): string {
  const execution = earliestWith(network, arcs, [
    { from: write.to, to: other.from, weightS: -1 },
    { from: other.to, to: write.from, weightS: -1 },
  ]);
  if (execution === null || write.placed === null) return '';
  const pet = (event: number): string => formatPet(execution.petS[event] as number);
  const [own, its] = [`PET ${pet(write.from)} to ${pet(write.to)}`, `${pet(other.from)} to ${pet(other.to)}`];
  return `: "${write.placed.stint.title}" may be on from ${own}, and ${other.title} from ${its}`;
}

function undecided(context: ReplayContext, network: TemporalNetwork, list: readonly BrokenByResponse[]): Finding {
  const inOrder = list.toSorted((a, b) => a.other.fromS - b.other.fromS);
  const [{ write }] = inOrder as [BrokenByResponse];
  const pairs = new Map<string, string>();
  for (const one of inOrder) {
    const key = `${one.write.placed?.stint.key ?? ''}|${one.other.by}`;
    if (pairs.has(key)) continue;
    const from = one.write.placed === null ? '' : ` in "${one.write.placed.stint.title}"`;
    pairs.set(
      key,
      `${titleOf(context, one.write.variable)} left ${valueWords(one.write.value)}${from}: ${one.other.title} cannot be done`,
    );
  }
  const rest = pairs.size - MOST_PAIRS;
  const told = [...pairs.values()].slice(0, MOST_PAIRS).join('; ');
  const [{ other }] = inOrder as [BrokenByResponse];
  return proved('proof/what-fails-is-decided-at-a-gate', {
    severity: 'note',
    title: `Nobody has decided what is done where "${write.response.title}" does not work`,
    why: `${told}${rest > 0 ? `; and ${rest} more` : ''}`,
    mend: `write gate ID before="${stintOf(other) ?? '…'}", or see what it costs: handrail whatif … --response ${write.response.id}`,
    eva: network.eva,
    person: other.bodies[0] ?? null,
    stint: stintOf(other),
    petS: other.fromS,
    span: write.placed?.stint.span ?? null,
  });
}

/** A gate between the trouble and what rests on it: before it, or before earlier work of the same task. */
function isDecided({ campaign }: ReplayContext, network: TemporalNetwork, { write, other }: BrokenByResponse): boolean {
  const { placed } = other;
  if (placed === null || write.placed === null) return false;
  const fromS = write.placed.planned.endS;
  return campaign.gates.some(({ before }) => {
    const task = before.split('/')[0];
    const startS = network.events[network.boundaries.get(before)?.get(0) ?? -1]?.plannedS ?? null;
    if (startS === null || startS < fromS || startS > placed.planned.startS) return false;
    return before === placed.stint.key || task === placed.task.id;
  });
}

function stintOf({ placed, way }: BrokenByResponse['other']): string | null {
  return placed?.stint.key ?? way?.next ?? way?.last ?? null;
}

function titleOf(context: ReplayContext, variable: string): string {
  return context.model.variables.get(variable)?.title ?? variable;
}

function at(people: readonly string[]): string {
  return `${people.join(' and ')} ${people.length === 1 ? 'is' : 'are'}`;
}
