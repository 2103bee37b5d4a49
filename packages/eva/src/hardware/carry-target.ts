/**
 * Where a carrying step leaves the piece. Read from the sentence alone, so that the same answer serves the list of places a
 * piece can ever be and the reading of the stint.
 */
import type { Stint, Step } from '../campaign/campaign.ts';
import type { StepVerb } from '../kinds/step-verbs.ts';
import { type CampaignFacts, kindOf, locate, placesOfRole } from './campaign-facts.ts';
import { handsOf, personValue, roleDoing, rolesAt } from './stint-reading.ts';
import { holderValue } from './state-variables.ts';

export type CarryTarget =
  | { readonly ok: true; readonly value: string }
  | { readonly ok: false; readonly words: string };

export function carryTarget(facts: CampaignFacts, stint: Stint, stepIndex: number, object: StepVerb): CarryTarget {
  const step = stint.steps[stepIndex];
  const doing = roleDoing(stint, stepIndex);
  const sentence = `"${object.verb.id} ${object.object ?? ''}"`;
  if (step === undefined || doing === null) {
    return { ok: false, words: `${sentence}: nobody in this stint does this step (by ${step?.by ?? 'nobody'})` };
  }
  if (step.to !== null) return named(facts, stint, stepIndex, step.to, sentence);
  switch (object.verb.carry) {
    case 'take':
    case 'unseat':
      return { ok: true, value: handsOf(doing.role, doing.index) };
    case 'hand-over':
      return theOther(stint, stepIndex, step, sentence);
    case 'seat':
      return seatAt(facts, placesOfRole(facts.campaign, doing.role), object, sentence);
    case 'stow':
      return { ok: false, words: `${sentence}: into what is not said (in=)` };
    default: {
      const [place, ...more] = placesOfRole(facts.campaign, doing.role);
      return place !== undefined && more.length === 0
        ? { ok: true, value: `place:${place}` }
        : {
            ok: false,
            words: `${sentence}: where to is not said (to=), and this stint touches ${1 + more.length} places`,
          };
    }
  }
}

function named(facts: CampaignFacts, stint: Stint, step: number, id: string, sentence: string): CarryTarget {
  const location = locate(facts, id);
  if (location === null) return { ok: false, words: `${sentence}: nothing is called ${id}` };
  if (location.kind === 'person' || location.kind === 'arm') {
    const here = rolesAt(stint, step).some(
      ({ role }) => role.candidates.includes(id) || role.startOn === id || role.endOn === id,
    );
    if (!here) return { ok: false, words: `${sentence}: ${id} takes no part in this step` };
  }
  if (location.kind === 'person') return { ok: true, value: personValue(stint, step, id) };
  if (location.kind === 'hardware') {
    const holder = facts.hardware.get(id);
    const kind = holder === undefined ? null : kindOf(facts, holder);
    if (kind === null || kind.holds === 'nothing') {
      return { ok: false, words: `${sentence}: ${id} holds nothing (${kind?.title.toLowerCase() ?? 'unknown kind'})` };
    }
  }
  return { ok: true, value: holderValue(location) };
}

function theOther(stint: Stint, stepIndex: number, step: Step, sentence: string): CarryTarget {
  const others = rolesAt(stint, stepIndex).filter(({ role }) => role.name !== step.by);
  const [only, ...more] = others;
  return only !== undefined && more.length === 0
    ? { ok: true, value: handsOf(only.role, only.index) }
    : { ok: false, words: `${sentence}: to whom is not said (to=)` };
}

/** The one socket or bay at the place, else the place itself. */
function seatAt(facts: CampaignFacts, places: readonly string[], object: StepVerb, sentence: string): CarryTarget {
  const wanted = object.kind.id === 'foot-restraint' ? 'one-restraint' : 'one-item';
  const seats = places
    .flatMap((place) => facts.fixedHoldersAt.get(place) ?? [])
    .filter((piece) => kindOf(facts, piece)?.holds === wanted);
  const [only, ...more] = seats;
  if (only !== undefined && more.length === 0) return { ok: true, value: `hardware:${only.id}` };
  const [place] = places;
  if (only === undefined && wanted === 'one-item' && places.length === 1 && place !== undefined) {
    return { ok: true, value: `place:${place}` };
  }
  const what = only === undefined ? 'there is none here' : `there are ${seats.map((seat) => seat.id).join(', ')}`;
  return {
    ok: false,
    words: `${sentence}: which ${wanted === 'one-restraint' ? 'socket' : 'bay'} is not said (in=); ${what}`,
  };
}
