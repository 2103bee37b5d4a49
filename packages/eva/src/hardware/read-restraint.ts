/**
 * Who works from a foot restraint needs it in a socket of that place (or on the plate of the arm that they ride) as long as they
 * stand in it. Where the same stint seats or unseats it, only the steps between are asked.
 */
import type { Role } from '../campaign/campaign.ts';
import { isCarried, kindOf, placesOfRole } from './campaign-facts.ts';
import type { Origin } from './effects.ts';
import { holderVariable } from './state-variables.ts';
import { lastBoundary, reliesUntil, type StintReading, unknown } from './stint-reading.ts';

/** To be read after the steps: it looks at where the stint itself moves the restraint. */
export function readRestraint(reading: StintReading, role: Role): void {
  const { restraint } = role;
  if (restraint === null) return;
  const { facts } = reading;
  const words = `${role.candidates.join(' or ')} works from ${restraint}`;
  const origin: Origin = { from: 'restraint', step: null, words, span: role.span };
  if (!isCarried(facts, restraint)) {
    const piece = facts.hardware.get(restraint);
    const ok =
      piece !== undefined && piece.at.kind === 'place' && placesOfRole(facts.campaign, role).includes(piece.at.id);
    if (!ok) unknown(reading, `${words}, which is not at ${role.at}`, role.span);
    return;
  }
  const arms = [role.startOn, role.endOn].filter((arm) => arm !== null).map((arm) => `arm:${arm}`);
  const sockets = placesOfRole(facts.campaign, role)
    .flatMap((place) => facts.fixedHoldersAt.get(place) ?? [])
    .filter((piece) => kindOf(facts, piece)?.holds === 'one-restraint')
    .map((piece) => `hardware:${piece.id}`);
  const allowed = [...new Set([...sockets, ...arms])];
  if (allowed.length === 0) {
    unknown(reading, `${words}, but there is no socket at ${role.at}`, role.span);
    return;
  }
  let asked = false;
  const toStep = reading.stint.steps.length === 0 ? lastBoundary(reading.stint) : role.toStep;
  const variable = holderVariable(restraint);
  const writes = reading.leaves.filter((leave) => leave.variable === variable);
  const first = writes[0];
  const last = writes.at(-1);
  const beforeTo = Math.min(toStep, first?.step ?? toStep);
  const startsInHand = reading.needs.some(
    (need) =>
      need.variable === variable && need.when === 'start' && !need.allowed.some((value) => allowed.includes(value)),
  );
  if (!startsInHand && (beforeTo > role.fromStep || writes.length === 0)) {
    reading.needs.push({ variable, allowed, when: 'during', fromStep: role.fromStep, toStep: beforeTo, origin });
    asked = true;
  }
  if (last !== undefined && allowed.includes(last.value)) {
    asked = true;
    if (last.step < role.toStep) reliesUntil(reading, variable, role.toStep - 1);
  }
  if (writes.slice(0, -1).some((leave) => allowed.includes(leave.value))) asked = true;
  if (!asked) unknown(reading, `${words}, but this stint never has it in a socket at ${role.at}`, role.span);
}
