/** What a carrying verb needs and leaves of the holder: who has the piece before, who or what has it after. */
import type { StepVerb } from '../kinds/step-verbs.ts';
import { isCarried, kindOf, locate } from './campaign-facts.ts';
import { carryTarget } from './carry-target.ts';
import type { Origin } from './effects.ts';
import { askInReach, holdersInReach, reachValues } from './reach.ts';
import { holderValue, holderVariable } from './state-variables.ts';
import {
  ask,
  handsOf,
  handsSince,
  personValue,
  roleDoing,
  type StintReading,
  unknown,
  write,
} from './stint-reading.ts';

/**
 * A small piece that the campaign never puts into anybody's hands goes straight from where it is: "stow tray-1 in=bag-2" takes
 * it off and stows it. A piece that somebody takes must be in hand first.
 */
export function goesStraight(reading: StintReading, object: StepVerb): boolean {
  const { carry } = object.verb;
  if (object.hardware === null || carry === 'none') return false;
  if (carry === 'take' || carry === 'unseat') return true;
  const variable = holderVariable(object.hardware.id);
  return [...(reading.possible.get(variable)?.keys() ?? [])].every((value) => !/^(person|arm):/.test(value));
}

/** @returns false when nothing can be said: the reason is among the unknowns */
export function readCarry(reading: StintReading, object: StepVerb, step: number, origin: Origin): boolean {
  const { facts, stint } = reading;
  const piece = object.hardware;
  if (piece === null || object.verb.carry === 'none') return false;
  const variable = holderVariable(piece.id);
  if (!isCarried(facts, piece.id)) {
    unknown(reading, `${origin.words}: a ${object.kind.title.toLowerCase()} is not carried`, origin.span);
    return false;
  }
  const target = carryTarget(facts, stint, step, object);
  if (!target.ok) {
    unknown(reading, target.words, origin.span);
    return false;
  }
  if (goesStraight(reading, object)) askForSource(reading, object, step, target.value, origin);
  else {
    const doing = roleDoing(stint, step);
    if (doing !== null) askToChange(reading, variable, [handsOf(doing.role, doing.index)], step, origin);
  }
  askForRoom(reading, piece.id, target.value, step, origin);
  write(reading, variable, target.value, step, origin);
  return true;
}

function askToChange(
  reading: StintReading,
  variable: string,
  allowed: readonly string[],
  step: number,
  origin: Origin,
): void {
  ask(reading, variable, allowed, step, true, origin, handsSince(reading.stint, allowed));
}

/** Where it is taken from: as the sentence says, else wherever in reach the campaign can have put it. */
function askForSource(reading: StintReading, object: StepVerb, step: number, target: string, origin: Origin): void {
  const { facts, stint } = reading;
  const id = object.object as string;
  const variable = holderVariable(id);
  const from = stint.steps[step]?.from ?? null;
  if (from !== null) {
    const location = locate(facts, from);
    if (location === null) {
      unknown(reading, `${origin.words}: nothing is called ${from}`, origin.span);
      return;
    }
    const value = location.kind === 'person' ? personValue(stint, step, from) : holderValue(location);
    askToChange(reading, variable, [value], step, origin);
    if (location.kind === 'hardware' && isCarried(facts, from)) askInReach(reading, from, step, origin);
    return;
  }
  const written = reading.own.get(variable);
  if (written !== undefined) {
    if (written.value === target && !target.startsWith('role:')) {
      unknown(reading, `${origin.words}: ${id} is there already`, origin.span);
    }
    askInReach(reading, id, step, origin);
    return;
  }
  const found = holdersInReach(reading, variable, step);
  const allowed = found.allowed.filter((value) => value !== target || value.startsWith('role:'));
  const carriers = found.carriers.filter((carrier) => `hardware:${carrier}` !== target);
  if (allowed.length === 0) {
    const why =
      found.allowed.length > 0 ? `${id} is there already` : `nothing in the campaign brings ${id} within reach here`;
    unknown(reading, `${origin.words}: ${why}`, origin.span);
    return;
  }
  askToChange(reading, variable, allowed, step, origin);
  const [carrier, ...more] = carriers;
  if (carrier === undefined) return;
  if (allowed.length === 1 && more.length === 0) askInReach(reading, carrier, step, origin);
  else unknown(reading, `${origin.words}: it may be in ${carriers.join(' or ')}; say from=`, origin.span);
}

/** The bag that it goes into is here; the socket or bay that it goes into is empty. */
function askForRoom(reading: StintReading, id: string, target: string, step: number, origin: Origin): void {
  if (!target.startsWith('hardware:')) return;
  const { facts, stint } = reading;
  const holderId = target.slice('hardware:'.length);
  const holder = facts.hardware.get(holderId);
  if (holder === undefined) return;
  if (isCarried(facts, holderId)) askInReach(reading, holderId, step, origin);
  else if (!reachValues(facts, stint, step).includes(target)) {
    unknown(reading, `${origin.words}: ${holderId} is not at a place of this stint`, origin.span);
  }
  const holds = kindOf(facts, holder)?.holds;
  if (holds !== 'one-restraint' && holds !== 'one-item') return;
  for (const [variable, values] of reading.possible) {
    if (variable === holderVariable(id) || !values.has(target)) continue;
    const written = reading.own.get(variable)?.value;
    const elsewhere = [...values.keys()].filter((value) => value !== target);
    if (written !== undefined && written !== target) continue;
    if (written === target || elsewhere.length === 0) {
      unknown(reading, `${origin.words}: ${variable.slice(0, -'.holder'.length)} is still in ${holderId}`, origin.span);
    } else {
      ask(reading, variable, elsewhere, step, false, { ...origin, words: `${origin.words}, ${holderId} empty` });
    }
  }
}
