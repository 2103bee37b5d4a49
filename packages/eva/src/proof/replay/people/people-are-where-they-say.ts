import { formatPet } from '@handrail/quantity/time';
import type { Finding } from '../../../finding/finding.ts';
import type { ReplayContext } from '../replay-context.ts';
import { noticed } from '../replay-finding.ts';
import { type Doing, endsOf, type Lane, nameOf } from './lane.ts';

/**
 * Each thing starts where the one before ended. On an arm's plate nobody walks: it is left and boarded by work alone. Work at a
 * place names the way there as a move; inside persons have no place.
 */
export function peopleAreWhereTheySay(context: ReplayContext, lanes: readonly Lane[]): Finding[] {
  return lanes
    .filter((lane) => context.people.get(lane.who)?.role === 'outside')
    .flatMap((lane) => walk(context, lane));
}

function walk(context: ReplayContext, lane: Lane): Finding[] {
  const findings: Finding[] = [];
  let place: string | null = null;
  let on: string | null = null;
  const tell = (rule: `replay/${string}`, doing: Doing, title: string, why: string, mend: string): void => {
    findings.push(
      noticed(rule, {
        title,
        why,
        mend,
        eva: lane.eva,
        person: lane.who,
        stint: doing.kind === 'stint' ? doing.placed.stint.key : null,
        petS: doing.startS,
        span: doing.kind === 'stint' ? doing.placed.stint.span : null,
      }),
    );
  };
  for (const doing of lane.doings) {
    const { from, to } = endsOf(doing, context.hatch);
    const startOn = doing.kind === 'stint' ? doing.role.startOn : null;
    if (from !== place) {
      tell(
        'replay/each-thing-starts-where-the-last-ended',
        doing,
        `${lane.who} starts ${nameOf(doing)} where they are not`,
        `it starts ${from === null ? 'inside' : `at ${from}`} at PET ${formatPet(doing.startS)}; they are ${place === null ? 'inside' : `at ${place}`}`,
        place === null || from === null ? 'pass the hatch first' : `plan the way from ${place} to ${from} before it`,
      );
    }
    if (startOn !== on) {
      tell(
        'replay/the-plate-is-boarded-and-left-by-work',
        doing,
        `${lane.who} starts ${nameOf(doing)} ${startOn === null ? 'on structure' : `on the plate of ${startOn}`}, but is ${on === null ? 'on structure' : `on the plate of ${on}`}`,
        'a plate is boarded and left by work of its own, with the arm standing still',
        on === null ? `plan the boarding of ${startOn ?? 'the arm'}` : `plan the dismount from ${on}`,
      );
    }
    place = to;
    on = doing.kind === 'stint' ? doing.role.endOn : null;
  }
  return findings;
}
