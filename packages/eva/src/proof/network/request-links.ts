/**
 * Requests: asked when the reader asks, verified between the time that verifying takes and the whole lead, then used, then the call
 * that it may be cleared. No use starts before the reader has passed the verification on; no clearing before the last use is called
 * done. The longest hold runs from set to cleared.
 */
import type { Request } from '../../campaign/campaign.ts';
import type { RequestHold } from '../../timeline/timeline.ts';
import type { Placed } from '../replay/replay-context.ts';
import { type NetworkDraft, READER } from './network-draft.ts';
import { stepStartEvent } from './stint-events.ts';

export function requestLinks(draft: NetworkDraft): void {
  const requests = new Map(draft.campaign.requests.map((request) => [request.id, request]));
  const cleared = new Map<string, number>();
  for (const hold of [...draft.plan.holds].sort((a, b) => a.verifiedS - b.verifiedS)) {
    const request = requests.get(hold.request);
    if (request !== undefined) cleared.set(request.id, drawHold(draft, request, hold, cleared.get(request.id) ?? null));
  }
}

function drawHold(draft: NetworkDraft, request: Request, hold: RequestHold, before: number | null): number {
  const name = `"${request.title}"`;
  const lanes = [READER];
  const ask = draft.event(`asking for ${name}`, hold.askS, lanes);
  const verified = draft.event(`${name} is verified`, hold.verifiedS, lanes);
  const call = draft.event(`the call to clear ${name}`, hold.lastUseS, lanes);
  draft.link(draft.origin, ask, 0, null, 'request', 'nothing happens before the log starts', request.span);
  const leadS = request.setLeadS + request.verifyS;
  draft.length(ask, verified, [Math.min(request.verifyS, leadS), leadS], {
    kind: 'request',
    reason: `setting and verifying ${name} (${request.owner})`,
    bounded: true,
    plannedS: leadS,
    span: request.span,
  });
  if (before !== null)
    draft.link(before, ask, 0, null, 'request', `${name} is cleared before it is asked for again`, request.span);
  draft.link(verified, call, 0, null, 'request', `${name} is cleared after it is verified`, request.span);
  const uses = draft.placed.flatMap((placed) => usesOf(draft, placed, hold));
  for (const { placed, from, to } of uses) {
    const { stint } = placed;
    draft.order(verified, from, 'request', `"${stint.title}" waits for ${name} to be verified`, request.span);
    draft.order(to, call, 'request', `${name} stays until "${stint.title}" is done with it`, request.span);
    windowOf(draft, request, from, to);
  }
  const clearS = Math.ceil(request.clearS);
  const cleared = draft.event(`${name} is cleared`, hold.clearedS, lanes);
  draft.link(call, cleared, clearS, clearS, 'request', `clearing ${name}`, request.span);
  if (request.longestHoldS !== null) {
    const mostS = Math.floor(request.longestHoldS - request.verifyS);
    draft.link(verified, cleared, null, mostS, 'request', `${name} is held no longer than agreed`, request.span);
  }
  draft.requestEvents.push({ request: request.id, verified, clearCall: call });
  return cleared;
}

function usesOf(
  draft: NetworkDraft,
  placed: Placed,
  hold: RequestHold,
): { placed: Placed; from: number; to: number }[] {
  const ranges: [number, number][] = [];
  if (placed.stint.under.includes(hold.request)) ranges.push([0, placed.steps]);
  for (const control of placed.effects?.controls ?? []) {
    if (control.request === hold.request) ranges.push([control.fromStep, control.toStep]);
  }
  for (const need of placed.effects?.needs ?? []) {
    if (need.variable !== `request:${hold.request}` || need.allowed.includes('clear')) continue;
    ranges.push(need.when === 'during' ? [need.fromStep, need.toStep] : [0, placed.steps]);
  }
  return ranges
    .filter(
      ([from, to]) =>
        draft.plannedBoundaryS(placed, from) >= hold.firstUseS && draft.plannedBoundaryS(placed, to) <= hold.lastUseS,
    )
    .map(([from, to]) => ({ placed, from: stepStartEvent(draft, placed, from), to: draft.boundary(placed, to) }));
}

function windowOf(draft: NetworkDraft, request: Request, from: number, to: number): void {
  const set = draft.campaign.windows.find(({ id }) => id === request.window);
  if (set === undefined) return;
  const zeroMs = draft.plan.petZeroUtcMs;
  const [fromMs, toMs] = [from, to].map((event) => zeroMs + draft.at(event).plannedS * 1000) as [number, number];
  const padMs = set.padS * 1000;
  const interval = set.intervals.find(([a, b]) => a + padMs <= fromMs && toMs <= b - padMs);
  if (interval === undefined) return;
  const reason = `"${request.title}" can be in force only inside "${set.title}"`;
  draft.link(draft.egressUtc, from, Math.ceil((interval[0] + padMs - zeroMs) / 1000), null, 'window', reason, set.span);
  draft.link(draft.egressUtc, to, null, Math.floor((interval[1] - padMs - zeroMs) / 1000), 'window', reason, set.span);
}
