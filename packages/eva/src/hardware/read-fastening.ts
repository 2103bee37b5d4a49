/**
 * What fasteners and lines do to the piece that they belong to: it may be taken only when all have let go; it is driven only
 * when it is in its seat; it is fastened when all are fast; and something else holds it when the last one lets go.
 */
import type { Hardware } from '../campaign/campaign.ts';
import type { Kind } from '../kinds/kind.ts';
import { type StepVerb, stepVerbs } from '../kinds/step-verbs.ts';
import { type CampaignFacts, fixedPlace, kindOf } from './campaign-facts.ts';
import type { Origin } from './effects.ts';
import { placesInReach } from './reach.ts';
import { aspectVariable, holderValue, holderVariable } from './state-variables.ts';
import { ask, type StintReading, unknown, write } from './stint-reading.ts';

/** Every fastener and line of a piece has let go. @returns false when it has none, so that its own aspect must be asked. */
export function askAllFree(reading: StintReading, piece: Hardware, step: number, origin: Origin): boolean {
  const { facts } = reading;
  const fasteners = facts.fastenersOf.get(piece.id) ?? [];
  for (const one of [...fasteners, ...(facts.linesOf.get(piece.id) ?? [])]) {
    const free = kindOf(facts, one)?.attaches?.free ?? [];
    ask(reading, one.id, free, step, false, { ...origin, words: `${origin.words}, ${one.id} free of it` });
  }
  return fasteners.length > 0;
}

/** A fastener or line can only be made fast on a piece that is in its seat. */
export function askInSeat(reading: StintReading, object: StepVerb, step: number, origin: Origin): void {
  const { kind, verb, hardware } = object;
  if (kind.attaches === undefined || hardware === null || verb.leaves === null) return;
  if (verb.aspect !== kind.aspects[0]?.id || kind.attaches.free.includes(verb.leaves)) return;
  const whole = fittedWhole(reading.facts, hardware);
  if (whole === null) return;
  ask(reading, whole.piece.id, whole.seating.inPlace, step, false, {
    ...origin,
    words: `${origin.words}, ${whole.piece.id} in its seat`,
  });
}

/** Who confirms that a piece is hard down needs every fastener of this seat fast. */
export function askAllFast(reading: StintReading, object: StepVerb, step: number, origin: Origin): void {
  const { kind, verb, hardware } = object;
  if (hardware === null || kind.seating === undefined || verb.leaves !== kind.seating.fastened) return;
  const here = new Set(placesInReach(reading.facts, reading.stint, step));
  for (const one of reading.facts.fastenersOf.get(hardware.id) ?? []) {
    const place = fixedPlace(one, reading.facts.hardware, reading.facts.library);
    if (place !== null && !here.has(place)) continue;
    const fast = kindOf(reading.facts, one)?.attaches?.fast ?? [];
    ask(reading, one.id, fast, step, false, { ...origin, words: `${origin.words}, ${one.id} fast` });
  }
}

/**
 * After a step: where this stint has now made all fasteners of a seat fast, the piece is fastened; where it has let all of them
 * go, it is only seated. The fasteners of one seat are those that start at the same place: a box has its own on the carrier and
 * others where it goes. A stint that works on some of them says nothing of the piece.
 */
export function writeSeating(reading: StintReading, touched: readonly StepVerb[], step: number, origin: Origin): void {
  for (const whole of touchedWholes(reading.facts, touched)) {
    const changed = new Set(
      touched.flatMap(({ hardware }) => (hardware?.of === whole.piece.id ? [holderValue(hardware.at)] : [])),
    );
    const seat = (reading.facts.fastenersOf.get(whole.piece.id) ?? []).filter((one) =>
      changed.has(holderValue(one.at)),
    );
    const all = (which: 'fast' | 'free'): boolean =>
      seat.every((one) => {
        const value = reading.own.get(one.id)?.value;
        return value !== undefined && kindOf(reading.facts, one)?.attaches?.[which].includes(value) === true;
      });
    const words = `${origin.words}, the last of ${seat.length} on ${whole.piece.id}`;
    if (all('fast')) write(reading, whole.piece.id, whole.seating.fastened, step, { ...origin, words });
    else if (all('free')) write(reading, whole.piece.id, whole.seating.seated, step, { ...origin, words });
  }
}

/**
 * Make before break: when a step may let go the last fastener of a loose piece, something must already hold the piece: guides
 * that keep it (`soft-capture`), a tether, a grip, or somebody's hands. Where the campaign never says what, that is unknown.
 */
export function askRetained(
  reading: StintReading,
  touched: readonly StepVerb[],
  step: number,
  retention: RetentionFacts,
  origin: Origin,
): void {
  for (const { piece, kind } of touchedWholes(reading.facts, touched)) {
    if (piece.properties['soft-capture'] === true || !mayLetGo(reading, piece, touched, retention)) continue;
    const index = kind.aspects.findIndex((aspect) => aspect.id === 'retainer');
    if (index < 0) continue;
    const holder = reading.own.get(holderVariable(piece.id))?.value;
    if (holder !== undefined && (holder.startsWith('role:') || holder.startsWith('arm:'))) continue;
    const variable = aspectVariable(piece.id, index, 'retainer');
    const words = `make before break: ${origin.words} may let go ${piece.id}`;
    if (reading.own.has(variable) || retention.retainedSomewhere.has(piece.id)) {
      ask(reading, variable, RETAINED, step, false, { ...origin, from: 'carry', words });
    } else {
      unknown(reading, `${words}, and nothing is said to hold it (tether, grip, or soft-capture #true)`, origin.span);
    }
  }
}

const RETAINED = ['tethered', 'gripped'];

export interface RetentionFacts {
  /** Pieces that some step tethers or grips, or that start so. */
  readonly retainedSomewhere: ReadonlySet<string>;
  /** By fastener: the stints that let it go, by their place in the text. */
  readonly releasedIn: ReadonlyMap<string, readonly number[]>;
  /** By stint key: its place in the text. */
  readonly textOrder: ReadonlyMap<string, number>;
}

export function retentionFacts(facts: CampaignFacts): RetentionFacts {
  const retainedSomewhere = new Set<string>();
  const releasedIn = new Map<string, number[]>();
  const textOrder = new Map<string, number>();
  for (const piece of facts.campaign.hardware) {
    if (RETAINED.includes(piece.initial['retainer'] ?? '')) retainedSomewhere.add(piece.id);
  }
  for (const [order, stint] of facts.campaign.tasks.flatMap((task) => task.stints).entries()) {
    textOrder.set(stint.key, order);
    for (const object of stint.steps.flatMap((step) => stepVerbs(step, facts.hardware, facts.library).known)) {
      const { hardware, verb } = object;
      if (hardware === null) continue;
      if (verb.aspect === 'retainer' && RETAINED.includes(verb.leaves ?? '')) retainedSomewhere.add(hardware.id);
      if (!letsGo(object)) continue;
      releasedIn.set(hardware.id, [...(releasedIn.get(hardware.id) ?? []), order]);
    }
  }
  return { retainedSomewhere, releasedIn, textOrder };
}

/**
 * After this step, may every fastener of the piece be free: by this stint so far, by stints above it in the text, or from the
 * start? Where the plan turns the order of the text round, the timeline is checked by the retention rule.
 */
function mayLetGo(
  reading: StintReading,
  piece: Hardware,
  touched: readonly StepVerb[],
  retention: RetentionFacts,
): boolean {
  if (!touched.some((object) => object.hardware?.of === piece.id && letsGo(object))) return false;
  return (reading.facts.fastenersOf.get(piece.id) ?? []).every((one) => {
    const free = kindOf(reading.facts, one)?.attaches?.free ?? [];
    const written = reading.own.get(one.id)?.value;
    if (written !== undefined) return free.includes(written);
    const here = retention.textOrder.get(reading.stint.key) ?? 0;
    const releases = retention.releasedIn.get(one.id) ?? [];
    if (releases.includes(here)) return false;
    const aspect = kindOf(reading.facts, one)?.aspects[0]?.id ?? '';
    return releases.some((order) => order < here) || free.includes(one.initial[aspect] ?? '');
  });
}

function letsGo(object: StepVerb): boolean {
  const { kind, verb } = object;
  return kind.attaches?.as === 'fastener' && verb.leaves !== null && kind.attaches.free.includes(verb.leaves);
}

interface Whole {
  readonly piece: Hardware;
  readonly kind: Kind;
  readonly seating: NonNullable<Kind['seating']>;
}

/** The fitted piece that a fastener or line belongs to; null for what sits on structure or on a cable. */
function fittedWhole(facts: CampaignFacts, part: Hardware): Whole | null {
  const piece = part.of === null ? undefined : facts.hardware.get(part.of);
  const kind = piece === undefined ? null : kindOf(facts, piece);
  return piece === undefined || kind?.seating === undefined || kind === null
    ? null
    : { piece, kind, seating: kind.seating };
}

function touchedWholes(facts: CampaignFacts, touched: readonly StepVerb[]): readonly Whole[] {
  const wholes = new Map<string, Whole>();
  for (const { hardware, kind, verb } of touched) {
    if (hardware === null || kind.attaches?.as !== 'fastener' || verb.leaves === null) continue;
    const whole = fittedWhole(facts, hardware);
    if (whole !== null) wholes.set(whole.piece.id, whole);
  }
  return [...wholes.values()];
}
