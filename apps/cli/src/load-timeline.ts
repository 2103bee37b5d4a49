/** Reads a timeline from disk: JSON as `handrail plan -o` writes it, or the lines of timeline/timeline-notation.ts. */
import type { Campaign } from '@handrail/eva/campaign/campaign';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import { readTimelineNotation } from '@handrail/eva/timeline/timeline-notation';
import { Fault } from '@handrail/quantity/fault';
import { readTimelineJson } from '@handrail/wire/timeline/timeline-schema';
import { EXIT } from './exit-code.ts';
import { ExitError } from './exit-error.ts';
import { readBytes } from './load-campaign.ts';

/**
 * @param campaign what a timeline written by hand speaks of; null: only JSON is read
 * @throws ExitError with code 2: no such file, or not a timeline.
 */
export function loadTimeline(file: string, campaign: Campaign | null): Timeline {
  const text = new TextDecoder().decode(readBytes(file));
  const isByHand = campaign !== null && !/^\s*[[{]/.test(text);
  try {
    return isByHand ? readTimelineNotation(text, campaign) : readTimelineJson(text);
  } catch (cause) {
    if (!(cause instanceof Fault)) throw cause;
    const form = isByHand
      ? 'a timeline written by hand (a line a fact, after "eva ID")'
      : 'a timeline as "handrail plan -o" writes it';
    throw new ExitError(EXIT.badInput, `${file} is not ${form}: ${cause.message}`);
  }
}
