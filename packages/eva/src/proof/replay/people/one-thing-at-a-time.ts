import type { Finding } from '../../../finding/finding.ts';
import type { ReplayContext } from '../replay-context.ts';
import { noticed, petSpan } from '../replay-finding.ts';
import { type Doing, type Lane, nameOf } from './lane.ts';

/** Nobody does two things at once; no arm is in two at once; one operator moves one arm at a time. */
export function oneThingAtATime(context: ReplayContext, lanes: readonly Lane[]): Finding[] {
  return [...lanes.flatMap((lane) => overlaps(lane)), ...operators(context, lanes)];
}

function overlaps(lane: Lane): Finding[] {
  const findings: Finding[] = [];
  let busy: Doing | null = null;
  for (const doing of lane.doings) {
    if (doing.endS <= doing.startS) continue;
    if (busy !== null && doing.startS < busy.endS) {
      findings.push(
        noticed('replay/one-thing-at-a-time', {
          title: `${lane.who} does two things at once`,
          why: `${nameOf(busy)} ${petSpan(busy.startS, busy.endS)} and ${nameOf(doing)} ${petSpan(doing.startS, doing.endS)}`,
          mend: 'let one end before the other starts, or give one to somebody else',
          eva: lane.eva,
          person: lane.who,
          stint: doing.kind === 'stint' ? doing.placed.stint.key : null,
          petS: doing.startS,
          span: doing.kind === 'stint' ? doing.placed.stint.span : null,
        }),
      );
    }
    if (busy === null || doing.endS > busy.endS) busy = doing;
  }
  return findings;
}

function operators(context: ReplayContext, lanes: readonly Lane[]): Finding[] {
  const ofArms = lanes.filter((lane) => context.arms.has(lane.who));
  return ofArms.flatMap((first, at) =>
    ofArms.slice(at + 1).flatMap((second) => {
      const operator = context.arms.get(first.who)?.operator;
      if (first.eva !== second.eva || operator !== context.arms.get(second.who)?.operator) return [];
      return first.doings.flatMap((a) =>
        second.doings
          .filter((b) => a.startS < b.endS && b.startS < a.endS)
          .map((b) =>
            noticed('replay/one-operator-moves-one-arm', {
              title: `${operator ?? 'The operator'} works ${first.who} and ${second.who} at once`,
              why: `${nameOf(a)} ${petSpan(a.startS, a.endS)} and ${nameOf(b)} ${petSpan(b.startS, b.endS)}`,
              mend: 'let one end before the other starts',
              eva: first.eva,
              person: operator ?? null,
              petS: Math.max(a.startS, b.startS),
            }),
          ),
      );
    }),
  );
}
