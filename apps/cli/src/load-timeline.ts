/** Reads a timeline from disk: JSON as `handrail plan -o` writes it, or the lines of timeline/timeline-notation.ts. */
import type { Campaign } from '@handrail/eva/campaign/campaign';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import { readTimelineNotation } from '@handrail/eva/timeline/timeline-notation';
import { Fault } from '@handrail/quantity/fault';
import { readTimelineJson } from '@handrail/wire/timeline/timeline-schema';
import { EXIT } from './exit-code.ts';
import { ExitError } from './exit-error.ts';
import { readBytes } from './load-campaign.ts';

/** @throws ExitError with code 2: no such file, or not a timeline. */
export function loadTimeline(file: string, campaign: Campaign): Timeline {
  const text = new TextDecoder().decode(readBytes(file));
  const isJson = text.trimStart().startsWith('{');
  try {
    return isJson ? readTimelineJson(text) : readTimelineNotation(text, campaign);
  } catch (cause) {
    if (!(cause instanceof Fault)) throw cause;
    const form = isJson
      ? 'a timeline as "handrail plan -o" writes it'
      : 'a timeline written by hand, a line a fact, after "eva ID"';
    throw new ExitError(EXIT.badInput, `${file} is not ${form}: ${cause.message}`);
  }
}
