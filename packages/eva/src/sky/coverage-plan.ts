import { inRange } from './in-range.ts';
import type { Contact, PartnerContacts } from './radio-contact.ts';
import {
  complement,
  difference,
  type Interval,
  type Intervals,
  intersection,
  padded,
  totalS,
  windowSet,
} from './window-set.ts';

/** One stretch of voice and data through one partner. */
export interface Link {
  readonly partner: string;
  readonly startUtcMs: number;
  readonly endUtcMs: number;
}

export interface CoverageGap {
  readonly startUtcMs: number;
  readonly endUtcMs: number;
  /** Loss of signal before it and acquisition after it; null where the interval begins or ends in the gap. */
  readonly losUtcMs: number | null;
  readonly aosUtcMs: number | null;
  /** Part of it in which a partner is in contact and the link is being taken up, s. */
  readonly handoverS: number;
  /** Part in which a partner is in view and the vehicle itself hides it, s. */
  readonly hiddenS: number;
  /** Part in which no partner is in view, or none for long enough, s. */
  readonly noneS: number;
  /** The greatest of the three parts. */
  readonly cause: 'handover' | 'own-vehicle' | 'none-in-view';
}

export interface CoveragePlan {
  readonly links: readonly Link[];
  readonly covered: Intervals;
  readonly gaps: readonly CoverageGap[];
}

/**
 * One link after another, with the gaps between them. A link is held to its loss of signal; then the partner in contact
 * that will last longest is taken up, which costs `handoverS` without signal.
 * @param handoverS time from one link to the next, s, 0 to 600
 * @param shortestLinkS contacts that would leave a shorter link are not taken up, s
 */
export function coveragePlan(
  partners: readonly PartnerContacts[],
  startUtcMs: number,
  endUtcMs: number,
  handoverS: number,
  shortestLinkS: number,
): CoveragePlan {
  inRange('the time of a handover', handoverS, 0, 600, 's');
  inRange('the shortest link', shortestLinkS, 0, 7200, 's');
  const contacts = partners.flatMap((partner) => partner.contacts);
  const links: Link[] = [];
  let t = startUtcMs;
  while (t < endUtcMs) {
    // A link that is up when the interval begins needs no taking up; every later one does, after a gap too.
    const next = bestFrom(contacts, t, t === startUtcMs ? 0 : handoverS * 1000, shortestLinkS * 1000);
    if (next === null) break;
    links.push(next);
    t = next.endUtcMs;
  }
  const covered = windowSet(links.map((link): Interval => [link.startUtcMs, link.endUtcMs]));
  const heard = windowSet(contacts.map((contact): Interval => [contact.startUtcMs, contact.endUtcMs]));
  const inView = windowSet(partners.flatMap((partner) => partner.inView));
  const gaps = complement(covered, startUtcMs, endUtcMs).map(([from, to]): CoverageGap => {
    const handover = totalS(intersection(heard, [[from, to]]));
    const hidden = totalS(difference(intersection(inView, [[from, to]]), heard));
    const none = (to - from) / 1000 - handover - hidden;
    return {
      startUtcMs: from,
      endUtcMs: to,
      losUtcMs: from <= startUtcMs ? null : from,
      aosUtcMs: to >= endUtcMs ? null : to,
      handoverS: handover,
      hiddenS: hidden,
      noneS: none,
      cause: none >= Math.max(handover, hidden) ? 'none-in-view' : hidden >= handover ? 'own-vehicle' : 'handover',
    };
  });
  return { links, covered, gaps };
}

/** The link that can be up first after `t`; of those up at once, the one that lasts longest. */
function bestFrom(contacts: readonly Contact[], t: number, handoverMs: number, shortestMs: number): Link | null {
  let best: Link | null = null;
  for (const contact of contacts) {
    const startUtcMs = Math.max(contact.startUtcMs, t) + handoverMs;
    if (contact.endUtcMs <= startUtcMs || contact.endUtcMs - startUtcMs < shortestMs) continue;
    const link = { partner: contact.partner, startUtcMs, endUtcMs: contact.endUtcMs };
    if (
      best === null ||
      startUtcMs < best.startUtcMs ||
      (startUtcMs === best.startUtcMs && link.endUtcMs > best.endUtcMs)
    )
      best = link;
  }
  return best;
}

/** The gaps as a window set, widened where the elements are old. */
export function gapWindows(plan: CoveragePlan, padS: number): Intervals {
  return padded(windowSet(plan.gaps.map((gap): Interval => [gap.startUtcMs, gap.endUtcMs])), padS);
}
