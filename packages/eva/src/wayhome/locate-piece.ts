/** Where a piece is in a state: at a place, with a person, on an arm; followed through bags and sockets. */
import type { Hardware } from '../campaign/campaign.ts';
import { type CampaignFacts, fixedPlace, isCarried } from '../hardware/campaign-facts.ts';

export type Whereabouts =
  | { readonly kind: 'place'; readonly id: string }
  | { readonly kind: 'person'; readonly id: string }
  | { readonly kind: 'arm'; readonly id: string };

export type ValueOf = (variable: string) => string;

/** null: it cannot be told. */
export function locatePiece(facts: CampaignFacts, piece: Hardware, valueOf: ValueOf): Whereabouts | null {
  let at: Hardware | undefined = piece;
  for (let depth = 0; at !== undefined && depth <= facts.hardware.size; depth++) {
    if (!isCarried(facts, at.id)) {
      if (at.at.kind === 'person' || at.at.kind === 'arm') return { kind: at.at.kind, id: at.at.id };
      const place = fixedPlace(at, facts.hardware, facts.library);
      if (place !== null) return { kind: 'place', id: place };
      at = at.at.kind === 'hardware' ? facts.hardware.get(at.at.id) : undefined;
      continue;
    }
    const holder = valueOf(`${at.id}.holder`);
    const colon = holder.indexOf(':');
    const [kind, id] = [holder.slice(0, colon), holder.slice(colon + 1)];
    if (kind === 'place' || kind === 'person' || kind === 'arm') return { kind, id };
    at = kind === 'hardware' ? facts.hardware.get(id) : undefined;
  }
  return null;
}
