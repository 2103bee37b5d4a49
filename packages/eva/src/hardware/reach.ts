/**
 * What the people of a stint can lay hands on during a step: one another's hands, the places they are at, what is fixed there.
 * A piece in a bag is in reach when the bag is.
 */
import type { Stint } from '../campaign/campaign.ts';
import { type CampaignFacts, isCarried, placesOfRole } from './campaign-facts.ts';
import type { Origin } from './effects.ts';
import { holderVariable } from './state-variables.ts';
import { ask, handsOf, reliesUntil, rolesAt, type StintReading, unknown } from './stint-reading.ts';

export function placesInReach(facts: CampaignFacts, stint: Stint, step: number): readonly string[] {
  return [...new Set(rolesAt(stint, step).flatMap(({ role }) => placesOfRole(facts.campaign, role)))];
}

/** Holder values in reach, bags and boxes that can be carried left out. */
export function reachValues(facts: CampaignFacts, stint: Stint, step: number): readonly string[] {
  const roles = rolesAt(stint, step);
  const places = placesInReach(facts, stint, step);
  const arms = roles.flatMap(({ role }) => [role.startOn, role.endOn]).filter((arm) => arm !== null);
  return [
    ...new Set([
      ...roles.map(({ role, index }) => handsOf(role, index)),
      ...arms.map((arm) => `arm:${arm}`),
      ...places.map((place) => `place:${place}`),
      ...places.flatMap((place) => facts.fixedHoldersAt.get(place) ?? []).map((piece) => `hardware:${piece.id}`),
    ]),
  ];
}

/** Which of a piece's possible holders are in reach, as the stint would name them, and the loose carriers among them. */
export function holdersInReach(
  reading: StintReading,
  variable: string,
  step: number,
): { readonly allowed: readonly string[]; readonly carriers: readonly string[]; readonly always: boolean } {
  const { facts, stint, possible } = reading;
  const reach = new Set(reachValues(facts, stint, step));
  const allowed = new Set<string>();
  const carriers: string[] = [];
  let always = true;
  for (const [value, by] of possible.get(variable) ?? []) {
    // The stint has not touched the piece yet: where only its own later steps put it, it is not.
    if (by.size === 1 && by.has(stint.key)) continue;
    const own = stint.roles.findIndex(
      (role, index) =>
        reach.has(`role:${index}`) &&
        value.startsWith('person:') &&
        role.candidates.includes(value.slice('person:'.length)),
    );
    if (own >= 0) {
      allowed.add(`role:${own}`);
      if ((stint.roles[own]?.candidates.length ?? 0) > 1) always = false;
    } else if (reach.has(value)) allowed.add(value);
    else if (value.startsWith('hardware:') && isCarried(facts, value.slice('hardware:'.length))) {
      allowed.add(value);
      carriers.push(value.slice('hardware:'.length));
    } else always = false;
  }
  return { allowed: [...allowed], carriers, always };
}

/**
 * Asks that a loose piece be in reach during a step, and the bag that it can only be in. A piece that nobody ever moves away is
 * not asked for: the answer is known from the text.
 */
export function askInReach(reading: StintReading, hardwareId: string, step: number, origin: Origin, depth = 0): void {
  const variable = holderVariable(hardwareId);
  const written = reading.own.get(variable);
  if (written !== undefined) {
    reliesUntil(reading, variable, step);
    const reach = reachValues(reading.facts, reading.stint, step);
    if (reach.includes(written.value)) return;
    const carrier = written.value.startsWith('hardware:') ? written.value.slice('hardware:'.length) : null;
    if (carrier !== null && isCarried(reading.facts, carrier)) {
      if (depth <= reading.facts.hardware.size) askInReach(reading, carrier, step, origin, depth + 1);
      return;
    }
    unknown(
      reading,
      `${origin.words}: this stint has moved ${hardwareId} to ${written.value}, out of reach`,
      origin.span,
    );
    return;
  }
  const { allowed, carriers, always } = holdersInReach(reading, variable, step);
  if (allowed.length === 0) {
    unknown(reading, `${origin.words}: nothing in the campaign brings ${hardwareId} within reach here`, origin.span);
    return;
  }
  if (!always) ask(reading, variable, allowed, step, false, origin);
  const [carrier, ...more] = carriers;
  if (carrier !== undefined && more.length === 0 && allowed.length === 1 && depth <= reading.facts.hardware.size) {
    askInReach(reading, carrier, step, origin, depth + 1);
  }
}
