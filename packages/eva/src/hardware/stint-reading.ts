/**
 * One stint being read, sentence by sentence. It keeps what the stint itself has written so far, so that "release b1, drive
 * b1" asks the world only for what the first of the two needs.
 */
import type { Role, Stint } from '../campaign/campaign.ts';
import type { Span } from '../campaign/span.ts';
import type { CampaignFacts } from './campaign-facts.ts';
import type { Leave, Need, Origin, StintEffects } from './effects.ts';

export interface StintReading {
  readonly facts: CampaignFacts;
  readonly stint: Stint;
  /** Every value that each holder variable can take in the campaign, and who puts it there. */
  readonly possible: ReadonlyMap<string, ReadonlyMap<string, ReadonlySet<string>>>;
  /** The stint's own last write of each variable so far. */
  readonly own: Map<string, { readonly value: string; readonly step: number }>;
  /** The last step that relies on one of the stint's own writes: nobody else may change it before. */
  readonly reliesUntil: Map<string, number>;
  readonly needs: Need[];
  readonly leaves: Leave[];
  readonly tools: Map<string, { steps: number[]; span: Span }>;
  readonly controls: StintEffects['controls'][number][];
  readonly unknowns: { words: string; span: Span }[];
}

export function beginReading(facts: CampaignFacts, stint: Stint, possible: StintReading['possible']): StintReading {
  return {
    facts,
    stint,
    possible,
    own: new Map(),
    reliesUntil: new Map(),
    needs: [],
    leaves: [],
    tools: new Map(),
    controls: [],
    unknowns: [],
  };
}

/**
 * Asks for a value at step k. `since`: somebody who joins the stint later brings it, so it is asked from that step on. `changes`: the step is going to write the variable, so the value is asked just before the
 * start of the stint and must stay until this step begins; otherwise it is asked throughout the step.
 *
 * What the stint itself wrote before answers the need, or contradicts it: then no order of stints can help, and the
 * contradiction is reported in words.
 */
export function ask(
  reading: StintReading,
  variable: string,
  allowed: readonly string[],
  step: number,
  changes: boolean,
  origin: Origin,
  since = 0,
): void {
  const written = reading.own.get(variable);
  if (written !== undefined) {
    if (!allowed.includes(written.value)) {
      const since = written.step < 0 ? 'at its start' : `in step ${written.step + 1}`;
      unknown(
        reading,
        `${origin.words} needs ${variable} = ${allowed.join(' or ')}, but this stint leaves it ${written.value} ${since}`,
        origin.span,
      );
    }
    reliesUntil(reading, variable, step);
    return;
  }
  if (!changes) {
    push(reading, { variable, allowed, when: 'during', fromStep: step, toStep: step + 1, origin });
    return;
  }
  if (since > 0) {
    push(reading, { variable, allowed, when: 'during', fromStep: since, toStep: Math.max(step, since + 1), origin });
    return;
  }
  push(reading, { variable, allowed, when: 'start', fromStep: 0, toStep: 0, origin });
  if (step > 0) push(reading, { variable, allowed, when: 'during', fromStep: 0, toStep: step, origin });
}

/** The second half of a need of a step that changes the value: from the start of the stint until that step. */
export function isUntilOwnStep(need: Need): boolean {
  return need.when === 'during' && need.fromStep === 0 && need.toStep > 0 && need.origin.step === need.toStep;
}

export function write(reading: StintReading, variable: string, value: string, step: number, origin: Origin): void {
  reading.own.set(variable, { value, step });
  reading.leaves.push({ variable, value, step, origin });
}

export function reliesUntil(reading: StintReading, variable: string, step: number): void {
  reading.reliesUntil.set(variable, Math.max(step, reading.reliesUntil.get(variable) ?? -1));
}

export function unknown(reading: StintReading, words: string, span: Span): void {
  if (!reading.unknowns.some((one) => one.words === words)) reading.unknowns.push({ words, span });
}

/** The end of the last step; a stint without steps counts as one, so that "throughout" is never empty. */
export function lastBoundary(stint: Stint): number {
  return Math.max(1, stint.steps.length);
}

/** Roles that take part in this step, with their indices. */
export function rolesAt(stint: Stint, step: number): readonly { readonly index: number; readonly role: Role }[] {
  return stint.roles.map((role, index) => ({ index, role })).filter(({ role }) => covers(role, step));
}

/**
 * The role that does this step; null when the text gives it to somebody who is not there. Where an arm works alone there is no
 * lead, and the arm does what a lead would.
 */
export function roleDoing(stint: Stint, step: number): { readonly index: number; readonly role: Role } | null {
  const by = stint.steps[step]?.by;
  const here = rolesAt(stint, step);
  const named = here.find(({ role }) => role.name === by);
  if (named !== undefined) return named;
  const armAlone = by === 'lead' && stint.roles.every((role) => role.name === 'arm');
  return armAlone ? (here[0] ?? null) : null;
}

/** A person in a holder value: the role that only they can fill, else the person by name. */
export function personValue(stint: Stint, step: number, person: string): string {
  const only = rolesAt(stint, step).find(
    ({ role }) => role.name !== 'arm' && role.candidates.length === 1 && role.candidates[0] === person,
  );
  return only === undefined ? `person:${person}` : `role:${only.index}`;
}

/** The first step at which all of these are only hands that take part: who comes later brings the piece then. */
export function handsSince(stint: Stint, allowed: readonly string[]): number {
  const starts = allowed.map((value) =>
    value.startsWith('role:') ? (stint.roles[Number(value.slice('role:'.length))]?.fromStep ?? 0) : 0,
  );
  return starts.length === 0 ? 0 : Math.min(...starts);
}

/** What a role's hands are called in a holder value. An arm is always itself. */
export function handsOf(role: Role, index: number): string {
  const [only, ...others] = role.candidates;
  return role.name === 'arm' && only !== undefined && others.length === 0 ? `arm:${only}` : `role:${index}`;
}

function covers(role: Role, step: number): boolean {
  return step >= role.fromStep && step < role.toStep;
}

function push(reading: StintReading, need: Need): void {
  const same = (other: Need): boolean =>
    other.variable === need.variable &&
    other.when === need.when &&
    other.fromStep === need.fromStep &&
    other.toStep === need.toStep &&
    other.allowed.length === need.allowed.length &&
    other.allowed.every((value, index) => value === need.allowed[index]);
  if (!reading.needs.some(same)) reading.needs.push(need);
}
