import { formatDuration, formatPet } from '@handrail/quantity/time';
import type { Eva, Passage } from '../../../campaign/campaign.ts';
import type { Finding } from '../../../finding/finding.ts';
import type { EvaTimeline, PlannedPassage } from '../../../timeline/timeline.ts';
import type { ReplayContext } from '../replay-context.ts';
import { noticed, petSpan } from '../replay-finding.ts';

/** A planning duration rounded to the grid of 10 s may be this much off. */
const ROUNDING_S = 5;

/** Out in the stated order from PET 0, in in the stated order, then the hatch is closed; one body in the hatch at once. */
export function hatchIsPassedInOrder({ flown }: ReplayContext): Finding[] {
  return flown.flatMap(({ eva, plan }) => {
    const egress = plan.passages.filter((one) => one.kind === 'egress');
    const ingress = plan.passages.filter((one) => one.kind === 'ingress');
    const close = plan.passages.filter((one) => one.kind === 'close-hatch');
    return [
      ...inStatedOrder(eva, 'egress', eva.egress, egress),
      ...inStatedOrder(eva, 'ingress', eva.ingress, ingress),
      ...egressAtPetZero(eva, plan, egress),
      ...closing(eva, plan, ingress, close),
      ...oneAtOnce(eva, plan),
    ];
  });
}

function inStatedOrder(
  eva: Eva,
  kind: string,
  stated: readonly Passage[],
  planned: readonly PlannedPassage[],
): Finding[] {
  const order = [...planned].sort((a, b) => a.startS - b.startS);
  const said = stated.map((passage) => passage.person).join(', ');
  const found = order.map((passage) => passage.person ?? 'nobody').join(', ');
  const findings: Finding[] = [];
  if (said !== found) {
    findings.push(
      noticed('replay/hatch-is-passed-in-order', {
        title: `The ${kind} of EVA ${eva.id} is not in the stated order`,
        why: `stated: ${said || 'nobody'}; planned: ${found || 'nobody'}`,
        mend: 'every person outside passes the hatch once each way, in the stated order',
        eva: eva.id,
        petS: order[0]?.startS ?? null,
        span: stated[0]?.span ?? eva.span,
      }),
    );
    return findings;
  }
  order.forEach((passage, at) => {
    const figure = stated[at] as Passage;
    if (Math.abs(passage.endS - passage.startS - figure.durationS) <= ROUNDING_S) return;
    findings.push(
      noticed('replay/passage-takes-its-time', {
        title: `The ${kind} of ${figure.person} does not take its planning figure`,
        why: `planned ${formatDuration(passage.endS - passage.startS)}; stated ${formatDuration(figure.durationS)}`,
        eva: eva.id,
        person: figure.person,
        petS: passage.startS,
        span: figure.span,
      }),
    );
  });
  return findings;
}

function egressAtPetZero(eva: Eva, plan: EvaTimeline, egress: readonly PlannedPassage[]): Finding[] {
  const findings: Finding[] = [];
  const first = egress.length === 0 ? null : Math.min(...egress.map((passage) => passage.startS));
  if (first !== null && first !== 0) {
    findings.push(
      noticed('replay/egress-starts-at-pet-zero', {
        title: `EVA ${eva.id} does not start with its egress at PET 0`,
        why: `the first passage starts at PET ${formatPet(first)}`,
        eva: eva.id,
        petS: first,
        span: eva.span,
      }),
    );
  }
  const lateS = (plan.petZeroUtcMs - eva.egressUtcMs) / 1000;
  if (lateS < 0 || lateS > eva.slipS) {
    findings.push(
      noticed('replay/pet-zero-is-as-stated', {
        title: `EVA ${eva.id} is planned for another start than stated`,
        why: `PET 0 is ${formatDuration(lateS)} after the stated egress; it may slip by up to ${formatDuration(eva.slipS)}`,
        eva: eva.id,
        span: eva.span,
      }),
    );
  }
  return findings;
}

function closing(
  eva: Eva,
  plan: EvaTimeline,
  ingress: readonly PlannedPassage[],
  close: readonly PlannedPassage[],
): Finding[] {
  const [only] = close;
  if (only === undefined || close.length > 1) {
    return [
      noticed('replay/hatch-is-closed', {
        title: `The hatch is closed ${close.length} times in EVA ${eva.id}`,
        why: 'an EVA ends when the hatch is closed, once',
        eva: eva.id,
        span: eva.span,
      }),
    ];
  }
  const findings: Finding[] = [];
  const lastIn = Math.max(0, ...ingress.map((passage) => passage.endS));
  if (only.startS < lastIn) {
    findings.push(
      noticed('replay/hatch-is-closed-after-the-last-in', {
        title: `The hatch is being closed before the last person is in`,
        why: `closing starts at PET ${formatPet(only.startS)}, the last passage ends at PET ${formatPet(lastIn)}`,
        eva: eva.id,
        petS: only.startS,
        span: eva.span,
      }),
    );
  }
  if (Math.abs(only.endS - only.startS - eva.closeHatchS) > ROUNDING_S) {
    findings.push(
      noticed('replay/passage-takes-its-time', {
        title: 'Closing the hatch does not take its planning figure',
        why: `planned ${formatDuration(only.endS - only.startS)}; stated ${formatDuration(eva.closeHatchS)}`,
        eva: eva.id,
        petS: only.startS,
        span: eva.span,
      }),
    );
  }
  if (plan.bothInS !== only.endS) {
    findings.push(
      noticed('replay/both-in-is-the-hatch-closed', {
        title: `The plan says both are in at another time than the hatch is closed`,
        why: `both in at PET ${formatPet(plan.bothInS)}; hatch closed at PET ${formatPet(only.endS)}`,
        eva: eva.id,
        petS: plan.bothInS,
      }),
    );
  }
  const late = plan.stints.find((planned) => planned.endS > only.endS);
  if (late !== undefined) {
    findings.push(
      noticed('replay/nothing-after-the-hatch-is-closed', {
        title: `"${late.stint}" is planned after the hatch is closed`,
        why: `it ends at PET ${formatPet(late.endS)}; the hatch is closed at PET ${formatPet(only.endS)}`,
        eva: eva.id,
        stint: late.stint,
        petS: late.endS,
      }),
    );
  }
  return findings;
}

function oneAtOnce(eva: Eva, plan: EvaTimeline): Finding[] {
  const order = [...plan.passages].sort((a, b) => a.startS - b.startS || a.endS - b.endS);
  return order.flatMap((passage, at) => {
    const next = order[at + 1];
    if (next === undefined || next.startS >= passage.endS || next.kind === 'close-hatch') return [];
    return [
      noticed('replay/one-in-the-hatch-at-once', {
        title: `${passage.person ?? 'Closing'} and ${next.person ?? 'closing'} are in the hatch at once`,
        why: `${petSpan(passage.startS, passage.endS)} and ${petSpan(next.startS, next.endS)}`,
        eva: eva.id,
        person: next.person,
        petS: next.startS,
        span: eva.span,
      }),
    ];
  });
}
