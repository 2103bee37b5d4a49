/** What a response leaves behind when it has not done what it is for. */
import type { Campaign } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import { stintsByKey } from '../timeline/person-course.ts';
import type { AnyResponse } from './any-response.ts';
import { piecesOf } from './concerned.ts';

export interface LeftState {
  readonly variable: string;
  readonly title: string;
  readonly value: string;
}

/** @param inHand stint and step of who has the trouble; null: none */
export function leftStates(
  campaign: Campaign,
  hardware: HardwareModel,
  response: AnyResponse,
  inHand: { readonly stint: string; readonly step: number } | null,
): readonly LeftState[] {
  const step = inHand === null ? undefined : stintsByKey(campaign).get(inHand.stint)?.steps[inHand.step];
  const pieces = step === undefined || response.leavesIt === null ? [] : piecesOf(campaign, response, step);
  return [
    ...pieces.map((piece) => ({ variable: piece.id, value: response.leavesIt as string })),
    ...response.leaves.map(({ variable, value }) => ({ variable, value })),
  ].map((one) => ({ ...one, title: hardware.variables.get(one.variable)?.title ?? one.variable }));
}
