/** Whom a response concerns at an instant of an EVA, and what of theirs it is about. */
import { formatPet } from '@handrail/quantity/time';
import type { Campaign, Hardware, Stint, Step } from '../campaign/campaign.ts';
import type { EvaTimeline } from '../timeline/timeline.ts';
import type { Segment } from '../wayhome/segments.ts';
import type { AnyResponse } from './any-response.ts';

/** The kind whose trouble may also come up while the vehicle's own hatch is being closed. */
const HATCH_KIND = 'hatch';

export interface Concerned {
  /** Segments of those who have the trouble: one of them, or of several who might have it. */
  readonly segments: readonly Segment[];
  /** null: it can come up here. Else why it cannot. */
  readonly notHere: string | null;
  /** It is the hatch of the vehicle that is being closed. */
  readonly closingHatch: boolean;
}

/**
 * @param now the segment of each person at `petS`
 * @param all every segment of each person, to say when it can come up
 * @param who who has it; null: anybody whom it can concern
 */
export function concernedBy(
  campaign: Campaign,
  eva: EvaTimeline,
  stints: ReadonlyMap<string, Stint>,
  response: AnyResponse,
  now: readonly Segment[],
  all: readonly (readonly Segment[])[],
  petS: number,
  who: string | null,
): Concerned {
  const closingHatch =
    response.kinds.includes(HATCH_KIND) &&
    eva.passages.some((one) => one.kind === 'close-hatch' && one.startS <= petS && petS < one.endS);
  const segments = now
    .filter((segment) => who === null || segment.person === who)
    .filter((segment) => closingHatch || concerns(campaign, stints, response, segment, petS));
  if (segments.length > 0) return { segments, notHere: null, closingHatch };
  const elsewhere = occasionsOf(campaign, stints, response, all).filter((one) => who === null || one.person === who);
  return {
    segments,
    notHere: `${whyNotHere(response, petS, who)}; ${whenWords(eva, response, elsewhere)}`,
    closingHatch,
  };
}

/** Every segment of the EVA in which it can come up, by time. The closing of the vehicle's own hatch is nobody's segment. */
export function occasionsOf(
  campaign: Campaign,
  stints: ReadonlyMap<string, Stint>,
  response: AnyResponse,
  segments: readonly (readonly Segment[])[],
): readonly Segment[] {
  return segments
    .flat()
    .filter((segment) => concerns(campaign, stints, response, segment, segment.startS))
    .sort((a, b) => a.startS - b.startS);
}

function concerns(
  campaign: Campaign,
  stints: ReadonlyMap<string, Stint>,
  response: AnyResponse,
  segment: Segment,
  petS: number,
): boolean {
  if (segment.kind === 'inside' || petS < segment.startS) return false;
  if (response.armStops && segment.onArm === null) return false;
  if (response.stint !== null) return segment.stint === response.stint;
  if (response.kinds.length === 0 || response.armStops) return true;
  return piecesInHand(campaign, stints, response, segment).length > 0;
}

/** The pieces of the kinds of the response that this step works on. */
export function piecesInHand(
  campaign: Campaign,
  stints: ReadonlyMap<string, Stint>,
  response: AnyResponse,
  segment: Segment,
): readonly Hardware[] {
  const step = stepOf(stints, segment);
  return step === null ? [] : piecesOf(campaign, response, step);
}

export function piecesOf(campaign: Campaign, response: AnyResponse, step: Step): readonly Hardware[] {
  if (response.verbs.length > 0 && !response.verbs.includes(step.verb)) return [];
  return campaign.hardware.filter((piece) => step.objects.includes(piece.id) && response.kinds.includes(piece.kind));
}

export function stepOf(stints: ReadonlyMap<string, Stint>, segment: Segment): Step | null {
  if (segment.stint === null || segment.step === null) return null;
  return stints.get(segment.stint)?.steps[segment.step] ?? null;
}

function whenWords(eva: EvaTimeline, response: AnyResponse, occasions: readonly Segment[]): string {
  const closing = response.kinds.includes(HATCH_KIND) ? eva.passages.filter((one) => one.kind === 'close-hatch') : [];
  const words = [
    ...occasions.map(({ startS, stint }) => `PET ${formatPet(startS)}${stint === null ? '' : ` in ${stint}`}`),
    ...closing.map(({ startS }) => `PET ${formatPet(startS)}, closing the hatch`),
  ];
  if (words.length === 0) return `in EVA ${eva.eva} it cannot come up at all`;
  const rest = words.length - 3;
  return `it can at ${words.slice(0, 3).join(', ')}${rest > 0 ? ` and ${rest} more` : ''}`;
}

function whyNotHere(response: AnyResponse, petS: number, who: string | null): string {
  const at = `PET ${formatPet(petS)}`;
  const nobody = who ?? 'nobody';
  const not = who === null ? '' : 'not ';
  if (response.armStops) return `${nobody} is ${not}on an arm at ${at}`;
  if (response.stint !== null) return `${nobody} is ${not}in ${response.stint} at ${at}`;
  if (response.kinds.length > 0) {
    const work = response.verbs.length === 0 ? 'work on' : response.verbs.join(' or ');
    return `${nobody} has ${who === null ? '' : 'no step '}to ${work} a ${response.kinds.join(' or a ')} at ${at}`;
  }
  return `${nobody} is ${not}outside at ${at}`;
}
