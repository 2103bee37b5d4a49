import { formatDuration } from '@handrail/quantity/time';
import type { LoadClass, Rail } from '../../../campaign/campaign.ts';
import type { Finding } from '../../../finding/finding.ts';
import type { PlannedMove } from '../../../timeline/timeline.ts';
import type { ReplayContext } from '../replay-context.ts';
import { noticed } from '../replay-finding.ts';
import type { StateHistory } from '../states/state-history.ts';
import { type Doing, type Lane, nameOf } from './lane.ts';
import { loadClassOf, loadsInHand, quickestS, railsBetween, whyClosed } from './rails.ts';

/**
 * Each way goes rail by rail from where it says to where it says, over rails that are open all the while and take the load, past
 * no place that is kept out of, and takes at least as long as its rails. Tether swaps are counted by tetherReaches.
 */
export function movesFollowTheRails(context: ReplayContext, history: StateHistory, lanes: readonly Lane[]): Finding[] {
  const findings: Finding[] = [];
  for (const lane of lanes) {
    const person = context.people.get(lane.who);
    if (person?.role !== 'outside') continue;
    for (const doing of lane.doings) {
      if (doing.kind === 'move') findings.push(...follow(context, history, lane, doing.move, person.pace));
      if (doing.kind === 'stint') findings.push(...within(context, history, lane, doing, person.pace));
    }
  }
  return findings;
}

function follow(context: ReplayContext, history: StateHistory, lane: Lane, move: PlannedMove, pace: number): Finding[] {
  const findings: Finding[] = [];
  const tell = (rule: `replay/${string}`, title: string, why: string, mend: string | null = null): void => {
    findings.push(noticed(rule, { title, why, mend, eva: lane.eva, person: lane.who, petS: move.startS }));
  };
  const way = `${lane.who}'s way from ${move.from} to ${move.to}`;
  if (move.path[0] !== move.from || move.path.at(-1) !== move.to) {
    tell(
      'replay/path-leads-where-the-move-says',
      `${way} has a path that leads elsewhere`,
      `the path is ${move.path.join(' → ') || 'empty'}`,
    );
    return findings;
  }
  const zero = lane.plan.petZeroUtcMs;
  const fromMs = zero + move.startS * 1000;
  const toMs = zero + move.endS * 1000;
  const loads = loadsInHand(context, history, lane.who, fromMs)
    .map((item) => loadClassOf(context, item))
    .filter((load): load is LoadClass => load !== null);
  const factor = Math.max(1, ...loads.map((load) => load.factor));
  const keptOut = move.path.find((id) => context.campaign.vehicle.places.find((place) => place.id === id)?.keepOut);
  if (keptOut !== undefined) {
    tell(
      'replay/nobody-enters-a-keep-out',
      `${way} passes ${keptOut}, which is kept out of`,
      `path ${move.path.join(' → ')}`,
    );
  }
  let needS = 0;
  for (let at = 1; at < move.path.length; at++) {
    const [a, b] = [move.path[at - 1] as string, move.path[at] as string];
    const rails = railsBetween(context.campaign, a, b);
    if (rails.length === 0) {
      tell(
        'replay/each-piece-of-a-path-is-a-rail',
        `${way} has no rail from ${a} to ${b}`,
        'hand over hand means from rail to rail',
      );
      continue;
    }
    const why = rails.map((rail) => whyClosed(rail, history, fromMs, toMs));
    const open = rails.filter((_, index) => why[index] === null);
    if (open.length === 0) {
      tell(
        'replay/rails-are-open',
        `${way} leads over a closed rail`,
        why[0] ?? '',
        'wait until it is open, or go another way',
      );
    }
    const fits = rails.filter((rail) => !loads.some((load) => rail.refuses.includes(load.id)));
    if (fits.length === 0) {
      tell(
        'replay/rails-take-the-load',
        `${way} leads over a rail that does not take the load`,
        `rail ${rails[0]?.id ?? ''} refuses ${loads.map((load) => load.title).join(', ')}`,
        'go another way, or hand the load to the arm',
      );
    }
    const usable = open.filter((rail) => fits.includes(rail));
    const counted = usable.length > 0 ? usable : rails;
    needS += Math.min(...counted.map((rail) => rail.durationS)) * factor * pace;
  }
  if (move.endS - move.startS < needS - 1e-6) {
    tell(
      'replay/moves-take-their-time',
      `${way} is planned shorter than its rails take`,
      `planned ${formatDuration(move.endS - move.startS)}; ${move.path.join(' → ')} takes ${formatDuration(needS)}${factor === 1 ? '' : ` with a load factor of ${factor}`}`,
      `allow ${formatDuration(needS)}`,
    );
  }
  return findings;
}

/** Work that ends at another place includes the walk there. */
function within(
  context: ReplayContext,
  history: StateHistory,
  lane: Lane,
  doing: Extract<Doing, { kind: 'stint' }>,
  pace: number,
): Finding[] {
  const { role, placed } = doing;
  if (role.at === role.to || role.startOn !== null || role.endOn !== null) return [];
  const fromMs = lane.plan.petZeroUtcMs + doing.startS * 1000;
  const toMs = lane.plan.petZeroUtcMs + doing.endS * 1000;
  const keptOut = new Set(context.campaign.vehicle.places.filter((place) => place.keepOut).map((place) => place.id));
  const isOpen = (rail: Rail): boolean =>
    !keptOut.has(rail.from) && !keptOut.has(rail.to) && whyClosed(rail, history, fromMs, toMs) === null;
  const needS = quickestS(context.campaign, role.at, role.to, pace, isOpen);
  if (doing.endS - doing.startS >= needS - 1e-6) return [];
  return [
    noticed('replay/walks-in-a-stint-have-a-way', {
      title: `${nameOf(doing)} takes ${lane.who} from ${role.at} to ${role.to} in less than the way takes`,
      why: Number.isFinite(needS)
        ? `the way takes ${formatDuration(needS)}, the stint ${formatDuration(doing.endS - doing.startS)}`
        : 'no rails that are open all the while lead there',
      mend: 'give the stint more minutes, or plan the way as a move',
      eva: lane.eva,
      person: lane.who,
      stint: placed.stint.key,
      petS: doing.startS,
      span: role.span,
    }),
  ];
}
