/**
 * The rails as a graph: places as numbers, every open rail as two arcs. Whether a rail is open follows from the valuation of
 * the state variables that its `openWhile` names; a value that is not known opens nothing.
 */
import { distance } from '@handrail/quantity/vector';
import type { Campaign, Condition, Rail } from '../campaign/campaign.ts';

/** State variable id → value. */
export type Valuation = ReadonlyMap<string, string>;

export interface Arc {
  readonly from: number;
  readonly to: number;
  readonly rail: Rail;
  /** Planning figure unladen at pace 1, seconds. */
  readonly durationS: number;
  /** Along the rail, metres: as given, else the straight line between the two positions, else null. */
  readonly lengthM: number | null;
}

export interface RailNetwork {
  readonly places: readonly string[];
  readonly indexOf: ReadonlyMap<string, number>;
  /** Open arcs by the place they leave, in the order of the text. */
  readonly arcs: readonly (readonly Arc[])[];
  /** Rails that the valuation closes. */
  readonly closed: readonly Rail[];
}

/**
 * The open rails under a valuation. Places that are kept out of have no arcs. A place that the vehicle does not list but the
 * hatch names (or "outside" when no places are given at all) is a place without rails.
 */
export function railNetwork(campaign: Campaign, valuation: Valuation): RailNetwork {
  const { vehicle } = campaign;
  const places = vehicle.places.map((place) => place.id);
  if (vehicle.hatch !== null && !places.includes(vehicle.hatch)) places.push(vehicle.hatch);
  if (vehicle.hatch === null && places.length === 0) places.push('outside');
  const indexOf = new Map(places.map((id, index) => [id, index]));
  const keptOut = new Set(vehicle.places.filter((place) => place.keepOut).map((place) => place.id));
  const position = new Map(vehicle.places.map((place) => [place.id, place.positionM]));
  const arcs: Arc[][] = places.map(() => []);
  const closed: Rail[] = [];
  for (const rail of vehicle.rails) {
    if (!rail.openWhile.every((condition) => conditionHolds(condition, valuation))) {
      closed.push(rail);
      continue;
    }
    const from = indexOf.get(rail.from);
    const to = indexOf.get(rail.to);
    if (from === undefined || to === undefined || from === to) continue;
    if (keptOut.has(rail.from) || keptOut.has(rail.to)) continue;
    const a = position.get(rail.from) ?? null;
    const b = position.get(rail.to) ?? null;
    const lengthM = rail.lengthM ?? (a !== null && b !== null ? distance(a, b) : null);
    arcs[from]?.push({ from, to, rail, durationS: rail.durationS, lengthM });
    arcs[to]?.push({ from: to, to: from, rail, durationS: rail.durationS, lengthM });
  }
  return { places, indexOf, arcs, closed };
}

/** True when the variable has one of the allowed values. `unknown` and absent values satisfy nothing. */
export function conditionHolds(condition: Condition, valuation: Valuation): boolean {
  const value = valuation.get(condition.variable);
  return value !== undefined && value !== 'unknown' && condition.allowed.includes(value);
}

/**
 * The values that the campaign states for its start, under the names that conditions use: "joint" for the first aspect stated
 * of a piece, "joint.aspect" for each. What is not stated is absent, so that it opens nothing.
 */
export function statedValuation(campaign: Campaign): Valuation {
  const values = new Map<string, string>();
  for (const piece of campaign.hardware) {
    const stated = Object.entries(piece.initial);
    for (const [aspect, value] of stated) values.set(`${piece.id}.${aspect}`, value);
    const first = stated.find(([aspect]) => aspect === 'state') ?? stated[0];
    if (first !== undefined) values.set(piece.id, first[1]);
  }
  for (const request of campaign.requests) values.set(`request:${request.id}`, 'clear');
  return values;
}
