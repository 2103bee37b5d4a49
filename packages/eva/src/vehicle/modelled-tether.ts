import type { Campaign, DefaultUsed, Person } from '../campaign/campaign.ts';
import type { RailNetwork } from './rail-network.ts';

export interface ModelledTether {
  readonly reelM: number;
  readonly hatch: number;
  /** Index of the start anchor in `anchors`. */
  readonly start: number;
  readonly anchors: readonly { readonly id: string; readonly place: number }[];
}

/**
 * What is known of a person's safety tether; null, with the reason added to `defaults`, when something is missing that the
 * model of anchors rests on. Anchors are the pieces of hardware of kind `anchor`, and those that a person starts from.
 */
export function modelledTether(
  campaign: Campaign,
  network: RailNetwork,
  person: Person,
  defaults: DefaultUsed[],
): ModelledTether | null {
  const anchors = anchorPoints(campaign, network);
  const hatch = campaign.vehicle.hatch === null ? undefined : network.indexOf.get(campaign.vehicle.hatch);
  const start = anchors.findIndex((anchor) => anchor.id === person.startAnchor);
  const unmeasured = network.arcs.flat().find((arc) => arc.lengthM === null);
  const missing =
    hatch === undefined
      ? 'no hatch is given'
      : person.startAnchor === null
        ? `no start anchor is given for ${person.id}`
        : start === -1
          ? `the start anchor ${person.startAnchor} is not at a place`
          : person.tetherLengthM === null
            ? `no reel length is given for ${person.id}`
            : campaign.limits.tetherSwapS === null
              ? 'the time for a tether swap is not given'
              : unmeasured !== undefined
                ? `the length of rail ${unmeasured.rail.id} is not given`
                : null;
  if (missing !== null || hatch === undefined || person.tetherLengthM === null) {
    defaults.push({
      what: `tether of ${person.id}`,
      value: `not modelled: routes take no tether swaps and no reel length into account, because ${missing ?? 'it is not given'}`,
      source: 'stated default',
      span: person.span,
    });
    return null;
  }
  return { reelM: person.tetherLengthM, hatch, start, anchors };
}

function anchorPoints(campaign: Campaign, network: RailNetwork): readonly { id: string; place: number }[] {
  const starts = new Set(campaign.people.map((person) => person.startAnchor));
  const points: { id: string; place: number }[] = [];
  for (const piece of campaign.hardware) {
    if (piece.kind !== 'anchor' && !starts.has(piece.id)) continue;
    const place = piece.at.kind === 'place' ? network.indexOf.get(piece.at.id) : undefined;
    if (place !== undefined) points.push({ id: piece.id, place });
  }
  return points;
}
