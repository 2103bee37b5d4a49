/**
 * What the inference looks up again and again: pieces by id, what fastens and feeds what, what is at a place for good. Facts of the
 * campaign's start only; nothing here depends on when anything happens.
 */
import type { Campaign, Hardware, Location, Role } from '../campaign/campaign.ts';
import type { Kind } from '../kinds/kind.ts';
import type { KindsLibrary } from '../kinds/kinds-library.ts';

export interface CampaignFacts {
  readonly campaign: Campaign;
  readonly library: KindsLibrary;
  readonly hardware: ReadonlyMap<string, Hardware>;
  /** Fasteners (as: 'fastener') and lines (as: 'line') by the piece that they hold or feed. */
  readonly fastenersOf: ReadonlyMap<string, readonly Hardware[]>;
  readonly linesOf: ReadonlyMap<string, readonly Hardware[]>;
  /** Pieces that stay where they are and can hold others (sockets, bays, anchors), by place. */
  readonly fixedHoldersAt: ReadonlyMap<string, readonly Hardware[]>;
}

export function campaignFacts(campaign: Campaign, library: KindsLibrary): CampaignFacts {
  const hardware = new Map(campaign.hardware.map((piece) => [piece.id, piece]));
  const fastenersOf = new Map<string, Hardware[]>();
  const linesOf = new Map<string, Hardware[]>();
  const fixedHoldersAt = new Map<string, Hardware[]>();
  for (const piece of campaign.hardware) {
    const kind = library.kinds.get(piece.kind);
    if (kind === undefined) continue;
    if (piece.of !== null && kind.attaches !== undefined) {
      append(kind.attaches.as === 'fastener' ? fastenersOf : linesOf, piece.of, piece);
    }
    if (!kind.carried && kind.holds !== 'nothing') {
      const place = fixedPlace(piece, hardware, library);
      if (place !== null) append(fixedHoldersAt, place, piece);
    }
  }
  return { campaign, library, hardware, fastenersOf, linesOf, fixedHoldersAt };
}

export function kindOf(facts: CampaignFacts, piece: Hardware): Kind | null {
  return facts.library.kinds.get(piece.kind) ?? null;
}

export function isCarried(facts: CampaignFacts, hardwareId: string): boolean {
  const piece = facts.hardware.get(hardwareId);
  return piece !== undefined && kindOf(facts, piece)?.carried === true;
}

/** The place of a piece that cannot be carried away; null when it is on or in something that can. */
export function fixedPlace(
  piece: Hardware,
  hardware: ReadonlyMap<string, Hardware>,
  library: KindsLibrary,
): string | null {
  let at: Location = piece.at;
  for (let depth = 0; depth <= hardware.size; depth++) {
    if (at.kind === 'place') return at.id;
    if (at.kind !== 'hardware') return null;
    const holder = hardware.get(at.id);
    if (holder === undefined || library.kinds.get(holder.kind)?.carried === true) return null;
    at = holder.at;
  }
  return null;
}

/** Places that a role touches: its own, or its pose's. Works for people and arms. */
export function placesOfRole(campaign: Campaign, role: Role): readonly string[] {
  if (role.name !== 'arm') return role.at === role.to ? [role.at] : [role.at, role.to];
  const poses = campaign.arms.flatMap((arm) => arm.poses);
  const places = [role.at, role.to].map((id) => poses.find((pose) => pose.id === id)?.place ?? null);
  return [...new Set(places.filter((place) => place !== null))];
}

/** A place, hardware, person or arm id as a location; null when nothing has this id. */
export function locate(facts: CampaignFacts, id: string): Location | null {
  if (facts.hardware.has(id)) return { kind: 'hardware', id };
  const { campaign } = facts;
  if (campaign.people.some((person) => person.id === id)) return { kind: 'person', id };
  if (campaign.arms.some((arm) => arm.id === id)) return { kind: 'arm', id };
  if (campaign.vehicle.places.some((place) => place.id === id)) return { kind: 'place', id };
  return null;
}

function append(map: Map<string, Hardware[]>, key: string, piece: Hardware): void {
  const list = map.get(key);
  if (list === undefined) map.set(key, [piece]);
  else list.push(piece);
}
