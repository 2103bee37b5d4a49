/** The state variables of a campaign: every aspect of every piece, the holder of every loose piece, every request. */
import type { Campaign, Hardware, Location } from '../campaign/campaign.ts';
import type { KindsLibrary } from '../kinds/kinds-library.ts';
import type { StateVariable } from './effects.ts';

export const REQUEST_CLEAR = 'clear';
export const REQUEST_IN_FORCE = 'in force';
/** The value of a held variable between the first and the last write of a stint; it satisfies nobody else. */
export const IN_WORK = 'in work';
/** What nobody has stated; it satisfies nothing. */
export const UNKNOWN = 'unknown';

/** "j1" for the first aspect of its kind, "pump.power" for the further ones. */
export function aspectVariable(hardwareId: string, aspectIndex: number, aspectId: string): string {
  return aspectIndex === 0 ? hardwareId : `${hardwareId}.${aspectId}`;
}
export function holderVariable(hardwareId: string): string {
  return `${hardwareId}.holder`;
}
export function requestVariable(requestId: string): string {
  return `request:${requestId}`;
}
/** "place:pump-bay", "hardware:bag-1", "person:EV1", "arm:crane". */
export function holderValue(location: Location): string {
  return `${location.kind}:${location.id}`;
}

/**
 * @param holders every value that each holder variable can take anywhere in the campaign, see `possibleHolders`
 */
export function stateVariables(
  campaign: Campaign,
  library: KindsLibrary,
  holders: ReadonlyMap<string, ReadonlyMap<string, unknown>>,
): Map<string, StateVariable> {
  const variables = new Map<string, StateVariable>();
  for (const piece of campaign.hardware) {
    for (const variable of aspectsOf(piece, library)) variables.set(variable.id, variable);
    if (library.kinds.get(piece.kind)?.carried !== true) continue;
    const id = holderVariable(piece.id);
    variables.set(id, {
      id,
      title: `where ${piece.title} is`,
      values: [...(holders.get(id)?.keys() ?? [holderValue(piece.at)])],
      initial: holderValue(piece.at),
      about: 'holder',
      of: piece.id,
    });
  }
  for (const request of campaign.requests) {
    const id = requestVariable(request.id);
    variables.set(id, {
      id,
      title: request.title,
      values: [REQUEST_CLEAR, REQUEST_IN_FORCE],
      initial: REQUEST_CLEAR,
      about: 'request',
      of: request.id,
    });
  }
  return variables;
}

function aspectsOf(piece: Hardware, library: KindsLibrary): StateVariable[] {
  const kind = library.kinds.get(piece.kind);
  return (kind?.aspects ?? []).map((aspect, index) => ({
    id: aspectVariable(piece.id, index, aspect.id),
    title: index === 0 ? piece.title : `${aspect.id} of ${piece.title}`,
    values: aspect.values,
    initial: piece.initial[aspect.id] ?? UNKNOWN,
    about: 'aspect' as const,
    of: piece.id,
  }));
}
