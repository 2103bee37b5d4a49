import type { Finding } from '../../../finding/finding.ts';
import type { ReplayContext } from '../replay-context.ts';
import { noticed } from '../replay-finding.ts';
import type { StateHistory } from '../states/state-history.ts';
import { type Lane, nameOf } from './lane.ts';
import { itemsInHand, loadClassOf, loadsInHand } from './rails.ts';

/** What moves say is carried is what is in hand; a load that fills both hands is alone; no more pieces than hooks. */
export function handsSuffice(context: ReplayContext, history: StateHistory, lanes: readonly Lane[]): Finding[] {
  const findings: Finding[] = [];
  for (const lane of lanes) {
    const person = context.people.get(lane.who);
    if (person === undefined && !context.arms.has(lane.who)) continue;
    for (const doing of lane.doings) {
      const ms = lane.plan.petZeroUtcMs + doing.startS * 1000;
      const where = { eva: lane.eva, person: lane.who, petS: doing.startS };
      if (doing.kind === 'move') {
        const loads = loadsInHand(context, history, lane.who, ms);
        const held = itemsInHand(context, history, lane.who, ms);
        const { carrying } = doing.move;
        const missing = loads.filter((item) => !carrying.includes(item));
        const wrong = carrying.filter((item) => !held.includes(item));
        if (missing.length + wrong.length > 0) {
          const parts = [
            ...missing.map((item) => `${item} is in hand, the move does not say so`),
            ...wrong.map((item) => `the move says ${item} is carried, it is not in hand`),
          ];
          findings.push(
            noticed('replay/moves-are-laden-as-carried', {
              ...where,
              title: `${lane.who} is not laden on ${nameOf(doing)} as the plan says`,
              why: parts.join('; '),
            }),
          );
        }
        const full = loads.find((item) => loadClassOf(context, item)?.fillsHands === true);
        if (full !== undefined && loads.length > 1) {
          findings.push(
            noticed('replay/hands-suffice', {
              ...where,
              title: `${lane.who} carries more than two hands hold on ${nameOf(doing)}`,
              why: `${full} fills both hands; beside it: ${loads.filter((item) => item !== full).join(', ')}`,
              mend: 'go twice, or stow one in a bag',
            }),
          );
        }
        if (person?.carryMost != null && held.length > person.carryMost) {
          findings.push(
            noticed('replay/carried-pieces-have-hooks', {
              ...where,
              title: `${lane.who} has more loose pieces than hooks on ${nameOf(doing)}`,
              why: `${held.length} pieces (${held.join(', ')}); there are hooks for ${person.carryMost}`,
              mend: 'stow some in a bag',
              span: person.span,
            }),
          );
        }
      }
      if (doing.kind === 'stint' && doing.placed.effects !== null) {
        for (const { role, item } of doing.placed.effects.carriesIn) {
          if (role !== doing.roleIndex || loadsInHand(context, history, lane.who, ms).includes(item)) continue;
          findings.push(
            noticed('replay/loads-are-in-hand-at-the-start', {
              ...where,
              stint: doing.placed.stint.key,
              title: `${lane.who} starts ${nameOf(doing)} without ${context.hardware.get(item)?.title ?? item} in hand`,
              why: `it is ${history.before(`${item}.holder`, ms, null).value}`,
              mend: `take ${item} first`,
              span: doing.placed.stint.span,
            }),
          );
        }
      }
    }
  }
  return findings;
}
