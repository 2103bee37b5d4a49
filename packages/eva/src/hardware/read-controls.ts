/** Requests that must be in force while something hazardous is done: those of the piece, and of what it belongs to. */
import type { Hardware } from '../campaign/campaign.ts';
import type { StepVerb } from '../kinds/step-verbs.ts';
import type { CampaignFacts } from './campaign-facts.ts';
import type { Origin, StintEffects } from './effects.ts';
import { type StintReading, unknown } from './stint-reading.ts';

type Control = StintEffects['controls'][number];

export function readControls(reading: StintReading, object: StepVerb, step: number, origin: Origin): void {
  if (!object.verb.underControl || object.hardware === null) return;
  const requests = controlsOf(reading.facts, object.hardware);
  if (requests.length === 0) {
    if (reading.stint.under.length > 0) return;
    unknown(
      reading,
      `${origin.words} must not be done live, and no request is named for ${object.hardware.id} (controls=)`,
      origin.span,
    );
  }
  for (const request of requests) {
    reading.controls.push({ request, fromStep: step, toStep: step + 1, origin: { ...origin, from: 'control' } });
  }
}

function controlsOf(facts: CampaignFacts, piece: Hardware): readonly string[] {
  const found = new Set<string>();
  let part: Hardware | undefined = piece;
  for (let depth = 0; part !== undefined && depth <= facts.hardware.size; depth++) {
    for (const request of part.controls) found.add(request);
    part = part.of === null ? undefined : facts.hardware.get(part.of);
  }
  return [...found];
}

/** One line per request and unbroken run of steps; a longer run swallows what lies in it. Requests in the order of the text. */
export function joinControls(controls: readonly Control[]): readonly Control[] {
  const order = [...new Set(controls.map((one) => one.request))];
  const sorted = [...controls].sort(
    (a, b) => order.indexOf(a.request) - order.indexOf(b.request) || a.fromStep - b.fromStep,
  );
  const joined: Control[] = [];
  for (const one of sorted) {
    const last = joined.at(-1);
    if (last !== undefined && last.request === one.request && one.fromStep <= last.toStep) {
      joined[joined.length - 1] = { ...last, toStep: Math.max(last.toStep, one.toStep) };
    } else joined.push(one);
  }
  return joined;
}
