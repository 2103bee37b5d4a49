import { formatDuration, formatPet } from '@handrail/quantity/time';
import type { Finding } from '../../../finding/finding.ts';
import { type ReplayContext, roleSpanS, utcMs } from '../replay-context.ts';
import { noticed } from '../replay-finding.ts';

/** `after` lags, joins and the written order of a task hold where both stints are planned. */
export function lagsAndJoinsHold(context: ReplayContext): Finding[] {
  return [...lags(context), ...joins(context), ...writtenOrder(context)];
}

function lags({ placedByStint }: ReplayContext): Finding[] {
  const findings: Finding[] = [];
  for (const later of placedByStint.values()) {
    for (const after of later.stint.after) {
      const earlier = placedByStint.get(after.stint);
      if (earlier === undefined) continue;
      const lagS = (utcMs(later, later.planned.startS) - utcMs(earlier, earlier.planned.endS)) / 1000;
      const tooSoon = lagS < after.leastS;
      if (!tooSoon && (after.mostS === null || lagS <= after.mostS)) continue;
      findings.push(
        noticed(tooSoon ? 'replay/least-lag-holds' : 'replay/most-lag-holds', {
          title: `"${later.stint.title}" starts too ${tooSoon ? 'soon' : 'late'} after "${earlier.stint.title}"`,
          why: tooSoon
            ? `${formatDuration(lagS)} after it ends; the least is ${formatDuration(after.leastS)}`
            : `${formatDuration(lagS)} after it ends; the most is ${formatDuration(after.mostS ?? 0)}`,
          mend: `start it ${formatDuration(tooSoon ? after.leastS - lagS : lagS - (after.mostS ?? 0))} ${tooSoon ? 'later' : 'earlier'}`,
          eva: later.eva,
          stint: later.stint.key,
          petS: later.planned.startS,
          span: after.span,
        }),
      );
    }
  }
  return findings;
}

function joins({ campaign, flown, placedByStint }: ReplayContext): Finding[] {
  const findings: Finding[] = [];
  for (const join of campaign.tasks.flatMap((task) => task.joins)) {
    const releases = placedByStint.get(join.releases);
    const waits = placedByStint.get(join.waits);
    if (releases === undefined || waits === undefined) continue;
    const where = {
      eva: waits.eva,
      stint: waits.stint.key,
      person: join.listens,
      petS: waits.planned.startS,
      span: join.span,
    };
    const releasedMs = utcMs(releases, releases.planned.endS);
    if (utcMs(waits, waits.planned.startS) < releasedMs) {
      findings.push(
        noticed('replay/joins-hold', {
          ...where,
          title: `"${waits.stint.title}" does not wait for "${join.title}"`,
          why: `it starts at PET ${formatPet(waits.planned.startS)}; "${releases.stint.title}" ends at PET ${formatPet((releasedMs - waits.petZeroUtcMs) / 1000)}`,
          mend: 'start it when the join is called',
        }),
      );
    }
    const told = flown.find(({ eva }) => eva.id === waits.eva)?.plan.joins.find((one) => one.join === join.id);
    if (releases.eva !== waits.eva) continue;
    const isRight = told?.releasedS === releases.planned.endS && told.waitsUntilS === waits.planned.startS;
    if (!isRight) {
      findings.push(
        noticed('replay/joins-are-told', {
          ...where,
          title:
            told === undefined
              ? `The plan does not show join "${join.title}"`
              : `The plan shows join "${join.title}" at another time`,
          why: `"${releases.stint.title}" ends at PET ${formatPet(releases.planned.endS)}, "${waits.stint.title}" starts at PET ${formatPet(waits.planned.startS)}${told === undefined ? '' : `; shown: released PET ${formatPet(told.releasedS)}, waits until PET ${formatPet(told.waitsUntilS)}`}`,
        }),
      );
    }
  }
  return findings;
}

/** order=written: stints that share a named body keep the order of the text, each body for the steps it takes part in. */
function writtenOrder({ campaign, placedByStint }: ReplayContext): Finding[] {
  const findings: Finding[] = [];
  for (const task of campaign.tasks.filter((one) => one.order === 'written')) {
    const last = new Map<string, { endMs: number; title: string }>();
    for (const stint of task.stints) {
      const placed = placedByStint.get(stint.key);
      if (placed === undefined) continue;
      for (const role of stint.roles) {
        const [body] = role.candidates;
        if (body === undefined || role.candidates.length !== 1) continue;
        const [startS, endS] = roleSpanS(placed, role);
        const before = last.get(body);
        if (before !== undefined && utcMs(placed, startS) < before.endMs) {
          findings.push(
            noticed('replay/written-order-is-kept', {
              title: `"${stint.title}" comes before "${before.title}", against the order of the text`,
              why: `${body} starts it at PET ${formatPet(startS)}; the one written before ends at PET ${formatPet((before.endMs - placed.petZeroUtcMs) / 1000)}`,
              mend: 'keep the order of the text, or write order=free on the task',
              eva: placed.eva,
              person: body,
              stint: stint.key,
              petS: startS,
              span: stint.span,
            }),
          );
        }
        last.set(body, { endMs: utcMs(placed, endS), title: stint.title });
      }
    }
  }
  return findings;
}
