/**
 * May the crew leave the vehicle as it stands? safe(σ, h): every value that was written in this EVA may be left until h as its
 * kind says, what a person holds has been put away or comes home with them, and no running clock runs out before h.
 *
 * What a kind does not judge is unknown, never safe. Values that stood so at egress are nobody's to close and are not asked.
 */
import type { Campaign, Hardware } from '../campaign/campaign.ts';
import { type CampaignFacts, campaignFacts, kindOf } from '../hardware/campaign-facts.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import type { Kind } from '../kinds/kind.ts';
import type { KindsLibrary } from '../kinds/kinds-library.ts';
import { RETAINER } from './close-piece.ts';
import { type Horizon, lastsUntil } from './horizon.ts';
import { locatePiece, type ValueOf } from './locate-piece.ts';
import type { RunningClock, WayHomeState } from './way-home-state.ts';

export interface WayHomeGround {
  readonly campaign: Campaign;
  readonly hardware: HardwareModel;
  readonly library: KindsLibrary;
  readonly facts: CampaignFacts;
}

export interface OpenPiece {
  readonly piece: Hardware;
  readonly kind: Kind;
  /** By aspect id, as it stands; a piece with no fastener fast stands on its guides, whatever was written of it. */
  readonly values: ReadonlyMap<string, string>;
  /** "old-pump is seated". */
  readonly words: string;
  /** Stint keys that wrote what is unsafe. */
  readonly by: readonly string[];
}

export interface SafeUntil {
  /** null: it cannot be told. */
  readonly safe: boolean | null;
  readonly open: readonly OpenPiece[];
  readonly clocks: readonly RunningClock[];
  readonly unknown: readonly string[];
}

export function wayHomeGround(campaign: Campaign, hardware: HardwareModel, library: KindsLibrary): WayHomeGround {
  return { campaign, hardware, library, facts: campaignFacts(campaign, library) };
}

export function valueIn(ground: WayHomeGround, state: Pick<WayHomeState, 'values'>): ValueOf {
  return (variable) => state.values.get(variable) ?? ground.hardware.variables.get(variable)?.initial ?? 'unknown';
}

export function safeUntil(ground: WayHomeGround, state: WayHomeState, horizon: Horizon): SafeUntil {
  const { facts } = ground;
  const valueOf = valueIn(ground, state);
  const touched = new Map<string, string[]>();
  for (const [variable, by] of state.writtenBy) {
    const state_ = ground.hardware.variables.get(variable);
    if (state_ === undefined || state_.about !== 'aspect') continue;
    // A fastener that lets go changes what is true of the piece that it held.
    const whole = facts.hardware.get(state_.of)?.of ?? null;
    for (const id of whole === null ? [state_.of] : [state_.of, whole]) {
      const list = touched.get(id);
      if (list === undefined) touched.set(id, [by]);
      else list.push(by);
    }
  }
  const open: OpenPiece[] = [];
  const unknown: string[] = [];
  for (const [id, by] of touched) {
    const piece = facts.hardware.get(id);
    const kind = piece === undefined ? null : kindOf(facts, piece);
    if (piece === undefined) continue;
    if (kind === null) {
      unknown.push(`${id}: no kind ${piece.kind} in the library`);
      continue;
    }
    const values = valuesNow(ground, piece, kind, valueOf);
    const bad: string[] = [];
    for (const aspect of kind.aspects) {
      const value = values.get(aspect.id) ?? 'unknown';
      if (aspect.id === RETAINER) {
        if (value === 'gripped') bad.push(value);
        continue;
      }
      const variable = variableOf(piece, kind, aspect.id);
      const derived = value !== valueOf(variable);
      if (!state.writtenBy.has(variable) && !derived) continue;
      const safe = aspect.safe[value];
      if (safe === undefined)
        unknown.push(`${piece.title} ${aspect.id} ${value}: its kind does not say how long it may stay so`);
      else if (!lastsUntil(safe, horizon)) bad.push(value);
    }
    if (bad.length > 0 && !comesHome(ground, piece, kind, bad, valueOf)) {
      open.push({ piece, kind, values, words: `${piece.title} ${bad.join(', ')}`, by });
    }
  }
  const clocks = state.clocks.filter((running) => running.leftS < untilNextEvaS(ground.campaign, state));
  const safe = open.length > 0 || clocks.length > 0 ? false : unknown.length > 0 ? null : true;
  return { safe, open, clocks, unknown };
}

/** A loose piece in somebody's hands, or in a bag on them, comes in with them; what fills the hands is put away first. */
function comesHome(
  ground: WayHomeGround,
  piece: Hardware,
  kind: Kind,
  bad: readonly string[],
  valueOf: ValueOf,
): boolean {
  if (kind.seating === undefined || !bad.every((value) => value === 'free')) return false;
  return locatePiece(ground.facts, piece, valueOf)?.kind === 'person';
}

/** The values of a piece; where it sits with every fastener of that seat let go, it stands on its guides. */
export function valuesNow(
  ground: WayHomeGround,
  piece: Hardware,
  kind: Kind,
  valueOf: ValueOf,
): ReadonlyMap<string, string> {
  const values = new Map(kind.aspects.map(({ id }) => [id, valueOf(variableOf(piece, kind, id))] as const));
  const first = kind.aspects[0]?.id;
  const { seating } = kind;
  if (seating === undefined || first === undefined) return values;
  if (!seating.inPlace.includes(values.get(first) ?? '') || values.get(first) === seating.seated) return values;
  const here = locatePiece(ground.facts, piece, valueOf);
  if (here?.kind !== 'place') return values;
  const seat = (ground.facts.fastenersOf.get(piece.id) ?? []).filter((one) => {
    const at = locatePiece(ground.facts, one, valueOf);
    return at?.kind === 'place' && at.id === here.id;
  });
  const free = (one: Hardware): boolean => kindOf(ground.facts, one)?.attaches?.free.includes(valueOf(one.id)) === true;
  // Made fast by hand for the night (`held`) counts: that is what it is for.
  if (seat.length > 0 && seat.every(free) && values.get(first) === seating.fastened) values.set(first, seating.seated);
  return values;
}

export function variableOf(piece: Hardware, kind: Kind, aspect: string): string {
  return kind.aspects[0]?.id === aspect ? piece.id : `${piece.id}.${aspect}`;
}

/** Nobody can stop a clock before somebody is outside again; after the last EVA, never. */
export function untilNextEvaS(campaign: Campaign, state: Pick<WayHomeState, 'eva' | 'petS'>): number {
  const eva = campaign.evas.find((candidate) => candidate.id === state.eva);
  const nowUtcMs = (eva?.egressUtcMs ?? 0) + state.petS * 1000;
  const later = campaign.evas.filter((candidate) => candidate.egressUtcMs > nowUtcMs && candidate.id !== state.eva);
  return Math.min(...later.map((candidate) => (candidate.egressUtcMs - nowUtcMs) / 1000), Number.POSITIVE_INFINITY);
}
