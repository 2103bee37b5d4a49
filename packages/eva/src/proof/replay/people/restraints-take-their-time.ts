import { formatDuration } from '@handrail/quantity/time';
import type { Finding } from '../../../finding/finding.ts';
import type { ReplayContext } from '../replay-context.ts';
import { noticed, petSpan } from '../replay-finding.ts';
import { type Doing, type Lane, nameOf } from './lane.ts';

/** Between two things there is time to get out of one foot restraint and into the next, beside the way; for one person at once. */
export function restraintsTakeTheirTime(context: ReplayContext, lanes: readonly Lane[]): Finding[] {
  return [...changes(context, lanes), ...shared(context, lanes)];
}

function changes({ campaign, people }: ReplayContext, lanes: readonly Lane[]): Finding[] {
  const { restraintEgressS, restraintIngressS } = campaign.limits;
  const findings: Finding[] = [];
  for (const lane of lanes) {
    const person = people.get(lane.who);
    if (person?.role !== 'outside') continue;
    const stays = lane.doings.filter((doing) => doing.kind !== 'move');
    stays.forEach((next, at) => {
      const last = stays[at - 1];
      if (last === undefined) return;
      const [from, to] = [restraintOf(last), restraintOf(next)];
      const moves = lane.doings.filter(
        (doing) => doing.kind === 'move' && doing.startS >= last.endS && doing.endS <= next.startS,
      );
      if (from === to && moves.length === 0) return;
      const onTheWayS = moves.reduce((sum, move) => sum + move.endS - move.startS, 0);
      const outS = from === null ? 0 : (restraintEgressS ?? 0) * person.pace;
      const inS = to === null ? 0 : (restraintIngressS ?? 0) * person.pace;
      const leftS = next.startS - last.endS - onTheWayS;
      if (leftS >= outS + inS - 1e-6) return;
      findings.push(
        noticed('replay/restraints-take-their-time', {
          title: `${lane.who} has no time to change foot restraints before ${nameOf(next)}`,
          why: `out of ${from ?? 'none'} ${formatDuration(outS)} + into ${to ?? 'none'} ${formatDuration(inS)} = ${formatDuration(outS + inS)}; the plan leaves ${formatDuration(leftS)} beside the way`,
          mend: `start ${nameOf(next)} ${formatDuration(outS + inS - leftS)} later`,
          eva: lane.eva,
          person: lane.who,
          stint: next.kind === 'stint' ? next.placed.stint.key : null,
          petS: next.startS,
          span: next.kind === 'stint' ? next.role.span : null,
        }),
      );
    });
  }
  return findings;
}

function shared({ hardware }: ReplayContext, lanes: readonly Lane[]): Finding[] {
  const uses = lanes.flatMap((lane) =>
    lane.doings.flatMap((doing) => {
      const restraint = restraintOf(doing);
      return restraint === null ? [] : [{ lane, doing, restraint }];
    }),
  );
  return uses.flatMap((a, at) =>
    uses
      .slice(at + 1)
      .filter(
        (b) =>
          a.restraint === b.restraint &&
          a.lane.eva === b.lane.eva &&
          a.lane.who !== b.lane.who &&
          a.doing.startS < b.doing.endS &&
          b.doing.startS < a.doing.endS,
      )
      .map((b) =>
        noticed('replay/one-person-in-a-restraint', {
          title: `${a.lane.who} and ${b.lane.who} stand in ${hardware.get(a.restraint)?.title ?? a.restraint} at once`,
          why: `${nameOf(a.doing)} ${petSpan(a.doing.startS, a.doing.endS)}, ${nameOf(b.doing)} ${petSpan(b.doing.startS, b.doing.endS)}`,
          mend: 'use another restraint, or let one end before the other starts',
          eva: b.lane.eva,
          person: b.lane.who,
          stint: b.doing.kind === 'stint' ? b.doing.placed.stint.key : null,
          petS: Math.max(a.doing.startS, b.doing.startS),
        }),
      ),
  );
}

function restraintOf(doing: Doing): string | null {
  return doing.kind === 'stint' ? doing.role.restraint : null;
}
