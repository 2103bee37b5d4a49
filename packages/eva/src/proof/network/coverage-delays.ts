/**
 * What is heard late. The owners of requests are on the ground: a verification that may fall into a coverage gap is heard at the end of
 * the gap, so it counts as late by the longest gap that it may fall into. Where the reader is on the ground too, so does every
 * call from one body to another.
 *
 * A fixed delay for an event stands for every shorter one: who can do with hearing late can do with hearing at once.
 */
import type { NetworkDraft } from './network-draft.ts';
import { timeRanges } from './time-ranges.ts';
import type { ContingentLink } from './temporal-network.ts';

export function requestsWaitForCoverage(draft: NetworkDraft): void {
  delay(draft, ({ kind }) => kind === 'request', true);
}

export function readerOnTheGround(draft: NetworkDraft): void {
  delay(draft, ({ kind }) => kind !== 'slip' && kind !== 'request', false);
}

/** What waits for a call waits until it is heard: that it must have happened by now is not enough to touch anything. */
function calledLate(draft: NetworkDraft, end: number, delayS: number): void {
  draft.requirements.forEach((link, index) => {
    if (link.from !== end || link.leastS === null || link.leastS < draft.reactionS) return;
    if (link.kind === 'clock' || link.kind === 'window') return;
    draft.requirements[index] = {
      ...link,
      leastS: Math.max(link.leastS, delayS),
      atOnceS: link.atOnceS ?? link.leastS,
    };
  });
}

/** `allHear`: even the lane of the event hears late, since nobody aboard sees it. */
function delay(draft: NetworkDraft, concerns: (link: ContingentLink) => boolean, allHear: boolean): void {
  const gaps = draft.campaign.windows.filter(({ shownAs }) => shownAs === 'gap');
  if (gaps.length === 0 || !draft.contingents.some(concerns)) return;
  const ranges = timeRanges(draft);
  const zeroMs = draft.plan.petZeroUtcMs;
  draft.contingents.forEach((link, index) => {
    if (!concerns(link)) return;
    const [fromS, toS] = ranges[link.to] as readonly [number, number];
    let longestS = 0;
    for (const { intervals, padS } of gaps) {
      for (const [a, b] of intervals) {
        const [startS, endS] = [(a - zeroMs) / 1000 - padS, (b - zeroMs) / 1000 + padS];
        if (fromS < endS && startS < toS) longestS = Math.max(longestS, Math.ceil(endS - Math.max(startS, fromS)));
      }
    }
    if (longestS === 0) return;
    const delayS = link.delayS + longestS;
    draft.contingents[index] = { ...link, delayS };
    calledLate(draft, link.to, delayS);
    if (allHear) draft.events[link.to] = { ...draft.at(link.to), lanes: [] };
  });
}
