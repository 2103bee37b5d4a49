/**
 * The flexible plan of one EVA: what must come before what, how long things may take, and nothing more. The order of the timeline
 * is kept where somebody keeps it in fact: each body's own, what passes from hand to hand, what a call or the reader releases.
 *
 * @checked tests/reference/proof, tests/scenarios/proof
 */
import type { Campaign, Eva } from '../../campaign/campaign.ts';
import type { HardwareModel } from '../../hardware/effects.ts';
import type { EvaTimeline, Timeline } from '../../timeline/timeline.ts';
import { replayContext } from '../replay/replay-context.ts';
import { clockLinks } from './clock-links.ts';
import { handOverLinks } from './hand-over-links.ts';
import { laneLinks } from './lane-links.ts';
import { moveSpreadOf, NetworkDraft, type NetworkOptions, READER } from './network-draft.ts';
import { orderLinks } from './order-links.ts';
import { readerOnTheGround, requestsWaitForCoverage } from './coverage-delays.ts';
import { requestLinks } from './request-links.ts';
import { stintEvents } from './stint-events.ts';
import type { TemporalNetwork } from './temporal-network.ts';
import { windowLinks } from './window-links.ts';

const DAY_S = 86_400;

/**
 * @param eva the EVA of the timeline
 * @returns null where the timeline has no such EVA, or no closing of its hatch
 */
export function flexiblePlan(
  campaign: Campaign,
  hardware: HardwareModel,
  timeline: Timeline,
  eva: string,
  options: NetworkOptions = {},
): TemporalNetwork | null {
  const context = replayContext(campaign, hardware, timeline);
  const flown = context.flown.find((one) => one.eva.id === eva);
  if (flown === undefined || !flown.plan.passages.some(({ kind }) => kind === 'close-hatch')) return null;
  const unique = flown.placed.filter((one) => context.placedByStint.get(one.stint.key) === one);
  const draft = new NetworkDraft(context, flown.plan, unique, options);
  draft.valuesAtStart = valuesBefore(context, eva);
  drawZero(draft, slipLeftS(flown.eva, flown.plan));
  outsideEvents(draft);
  stintEvents(draft);
  laneLinks(draft);
  orderLinks(draft);
  handOverLinks(draft);
  requestLinks(draft);
  windowLinks(draft);
  clockLinks(draft);
  for (const [key, events] of draft.boundaries) {
    const first = events.get(0);
    if (first !== undefined) draft.link(draft.petZero, first, 0, null, 'own', `"${key}" is work outside`);
  }
  requestsWaitForCoverage(draft);
  if (options.reader === 'ground') readerOnTheGround(draft);
  draft.assumptions.push('the steps of a stint share its bounds as they share its planning figure');
  if (moveSpreadOf(campaign, options) === null)
    draft.assumptions.push(
      'moves, transfers and hatch passages take exactly their planning figures: no spread is stated',
    );
  return {
    eva,
    events: draft.events,
    requirements: draft.requirements,
    contingents: draft.contingents,
    petZero: draft.petZero,
    bothIn: draft.bothIn,
    boundaries: draft.boundaries,
    requestEvents: draft.requestEvents,
    ways: draft.ways,
    passages: draft.passages,
    outside: draft.outside,
    lanes: [...new Set(draft.events.flatMap(({ lanes }) => lanes))],
    assumptions: draft.assumptions,
  };
}

/** How much later than planned PET 0 may still come: a plan for a late egress has used up part of the slip. */
export function slipLeftS(eva: Pick<Eva, 'egressUtcMs' | 'slipS'>, plan: Pick<EvaTimeline, 'petZeroUtcMs'>): number {
  return Math.max(0, Math.floor(eva.slipS - (plan.petZeroUtcMs - eva.egressUtcMs) / 1000));
}

/** The log starts with the first request that is asked for; PET 0 comes when it comes, seen by all. */
function drawZero(draft: NetworkDraft, slipS: number): void {
  const everybody = [
    ...draft.campaign.people.map(({ id }) => id),
    ...draft.campaign.arms.map(({ id }) => id),
    READER,
    'hatch',
  ];
  const earliestS = Math.min(
    0,
    ...draft.plan.holds.map(({ askS }) => askS),
    ...draft.plan.moves.map(({ startS }) => startS),
    ...eventsOfTheDay(draft).map(({ petS }) => petS),
  );
  draft.event('the start of the log', earliestS, everybody);
  draft.event('the planned egress', 0, everybody);
  draft.petZero = draft.event('PET 0', 0, everybody);
  draft.link(draft.origin, draft.egressUtc, -earliestS, -earliestS, 'same-time', 'the planned egress stands in UTC');
  const mostS = Math.max(0, Math.floor(draft.options.slipS ?? slipS));
  draft.length(draft.egressUtc, draft.petZero, [0, mostS], {
    kind: 'slip',
    reason: 'PET 0 may slip',
    bounded: true,
    plannedS: 0,
    span: null,
  });
}

function outsideEvents(draft: NetworkDraft): void {
  for (const { event, petS } of eventsOfTheDay(draft)) {
    const at = draft.event(`"${event.title}"`, petS, [READER]);
    draft.link(draft.egressUtc, at, petS, petS, 'same-time', `"${event.title}" stands in UTC`, event.span);
    draft.outside.set(event.id, at);
  }
}

/** Outside events further off than a day are before or after everything in the EVA. */
function eventsOfTheDay(draft: NetworkDraft): { readonly event: Campaign['events'][number]; readonly petS: number }[] {
  return draft.campaign.events
    .map((event) => ({ event, petS: Math.round((event.atUtcMs - draft.plan.petZeroUtcMs) / 1000) }))
    .filter(({ event, petS }) => Math.abs(petS) <= DAY_S && event.leaves.length > 0);
}

/** Values as the EVAs before leave them, by planned times. */
function valuesBefore(context: ReturnType<typeof replayContext>, eva: string): ReadonlyMap<string, string> {
  const values = new Map<string, string>();
  for (const one of context.flown) {
    if (one.eva.id === eva) break;
    const writes = one.placed.flatMap((placed) =>
      (placed.effects?.leaves ?? []).map(({ variable, value, step }) => ({
        variable,
        value,
        atS: step < 0 ? placed.planned.startS : (placed.planned.stepEndsS[step] ?? placed.planned.endS),
      })),
    );
    for (const { variable, value } of writes.sort((a, b) => a.atS - b.atS)) values.set(variable, value);
  }
  return values;
}
