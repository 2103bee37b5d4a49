import { formatDuration, formatPet } from '@handrail/quantity/time';
import type { Request } from '../../../campaign/campaign.ts';
import type { Span } from '../../../campaign/span.ts';
import type { Finding } from '../../../finding/finding.ts';
import type { EvaTimeline, RequestHold } from '../../../timeline/timeline.ts';
import { boundaryS, type Placed, type ReplayContext } from '../replay-context.ts';
import { noticed, petSpan } from '../replay-finding.ts';

/** Every request is asked, set and verified before it is used, held over every use, cleared after, and not held too long. */
export function requestsHold(context: ReplayContext): Finding[] {
  const findings: Finding[] = [];
  const requests = new Map(context.campaign.requests.map((request) => [request.id, request]));
  for (const { plan, placed } of context.flown) {
    for (const one of placed) findings.push(...covered(plan, one, requests));
    for (const hold of plan.holds) {
      const request = requests.get(hold.request);
      if (request !== undefined) findings.push(...heldRight(context, plan, hold, request));
    }
    findings.push(...apart(plan, requests));
  }
  return findings;
}

function covered(plan: EvaTimeline, placed: Placed, requests: ReadonlyMap<string, Request>): Finding[] {
  const uses: { request: string; fromS: number; toS: number; words: string; span: Span }[] = [];
  for (const request of placed.stint.under) {
    const { startS, endS } = placed.planned;
    uses.push({ request, fromS: startS, toS: endS, words: 'the whole stint', span: placed.stint.span });
  }
  for (const control of placed.effects?.controls ?? []) {
    const fromS = boundaryS(placed, control.fromStep);
    const toS = boundaryS(placed, control.toStep);
    uses.push({ request: control.request, fromS, toS, words: control.origin.words, span: control.origin.span });
  }
  return uses
    .filter(
      ({ request, fromS, toS }) =>
        !plan.holds.some(
          (hold) =>
            hold.request === request && hold.verifiedS <= fromS && hold.firstUseS <= fromS && toS <= hold.lastUseS,
        ),
    )
    .map(({ request, fromS, toS, words, span }) => {
      const holds = plan.holds.filter((hold) => hold.request === request);
      const said = holds.map((hold) => petSpan(hold.verifiedS, hold.lastUseS)).join('; ');
      return noticed('replay/request-is-in-force-over-its-use', {
        title: `"${placed.stint.title}" works without "${requests.get(request)?.title ?? request}" in force`,
        why: `${words} needs it ${petSpan(fromS, toS)}; the plan has it verified and in use ${said || 'at no time'}`,
        mend: `hold request ${request} over the use`,
        eva: placed.eva,
        stint: placed.stint.key,
        petS: fromS,
        span,
      });
    });
}

function heldRight(context: ReplayContext, plan: EvaTimeline, hold: RequestHold, request: Request): Finding[] {
  const findings: Finding[] = [];
  const tell = (rule: `replay/${string}`, title: string, why: string, mend: string): void => {
    findings.push(noticed(rule, { title, why, mend, eva: plan.eva, petS: hold.askS, span: request.span }));
  };
  if (request.status === 'refused') {
    tell(
      'replay/request-is-not-refused',
      `The plan rests on "${request.title}", which ${request.owner} has refused`,
      'its status is refused',
      `agree with ${request.owner}, or plan without it`,
    );
  }
  const leadS = hold.verifiedS - hold.askS;
  const wantedS = request.setLeadS + request.verifyS;
  if (leadS < wantedS) {
    tell(
      'replay/request-is-asked-in-time',
      `"${request.title}" is asked too late to be verified`,
      `asked at PET ${formatPet(hold.askS)}, verified at PET ${formatPet(hold.verifiedS)}: ${formatDuration(leadS)}; setting takes ${formatDuration(request.setLeadS)} and verifying ${formatDuration(request.verifyS)}`,
      `ask by PET ${formatPet(hold.verifiedS - wantedS)}`,
    );
  }
  if (hold.firstUseS < hold.verifiedS) {
    tell(
      'replay/request-is-verified-before-use',
      `"${request.title}" is used before it is verified`,
      `first use at PET ${formatPet(hold.firstUseS)}, verified at PET ${formatPet(hold.verifiedS)}`,
      'verify it first',
    );
  }
  if (hold.clearedS - hold.lastUseS < request.clearS) {
    tell(
      'replay/request-is-cleared-in-time',
      `"${request.title}" is said to be cleared sooner than clearing takes`,
      `last use ends at PET ${formatPet(hold.lastUseS)}, cleared at PET ${formatPet(hold.clearedS)}; clearing takes ${formatDuration(request.clearS)}`,
      `cleared no earlier than PET ${formatPet(hold.lastUseS + request.clearS)}`,
    );
  }
  const heldS = hold.clearedS - (hold.verifiedS - request.verifyS);
  if (request.longestHoldS !== null && heldS > request.longestHoldS) {
    tell(
      'replay/request-is-not-held-too-long',
      `"${request.title}" is held too long`,
      `${formatDuration(heldS)} from set to cleared; the longest is ${formatDuration(request.longestHoldS)}`,
      'bring its uses together, or clear it between them',
    );
  }
  const set = context.campaign.windows.find((window) => window.id === request.window);
  if (request.window !== null) {
    const fromMs = plan.petZeroUtcMs + hold.firstUseS * 1000;
    const toMs = plan.petZeroUtcMs + hold.lastUseS * 1000;
    const padMs = (set?.padS ?? 0) * 1000;
    const inside = set?.intervals.some(([a, b]) => a + padMs <= fromMs && toMs <= b - padMs) ?? false;
    if (!inside) {
      tell(
        'replay/request-is-in-its-window',
        `"${request.title}" is used when it cannot be in force`,
        `used ${petSpan(hold.firstUseS, hold.lastUseS)}; no interval of ${request.window} less ${formatDuration(padMs / 1000)} at each end covers it`,
        'move its uses into the window',
      );
    }
  }
  return findings;
}

/** A request that is being cleared must be set and verified anew before it is used again. */
function apart(plan: EvaTimeline, requests: ReadonlyMap<string, Request>): Finding[] {
  const order = [...plan.holds].sort((a, b) => a.verifiedS - b.verifiedS);
  return order.flatMap((hold, at) => {
    const next = order.slice(at + 1).find((other) => other.request === hold.request);
    if (next === undefined || next.askS >= hold.clearedS) return [];
    const request = requests.get(hold.request);
    return [
      noticed('replay/request-is-held-once-at-a-time', {
        title: `"${request?.title ?? hold.request}" is asked again before it is cleared`,
        why: `cleared at PET ${formatPet(hold.clearedS)}, asked again at PET ${formatPet(next.askS)}`,
        mend: 'hold it through, or ask after it is cleared',
        eva: plan.eva,
        petS: next.askS,
        span: request?.span ?? null,
      }),
    ];
  });
}
