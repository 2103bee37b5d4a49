/** Why there is no plan at all, in trade words: requirements that collide and of which none can be dropped. */
import type { Campaign } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import { describeTag, isBackground } from './describe-tag.ts';
import { type CollisionOptions, findCollision } from './find-collision.ts';
import type { EvaPlan } from './plan-eva.ts';

/** null: a plan exists, or it could not be told within the budget. */
export function whyNoPlan(
  campaign: Campaign,
  hardware: HardwareModel,
  { evaModel }: EvaPlan,
  options: CollisionOptions,
): { readonly words: readonly string[]; readonly isIrreducible: boolean } | null {
  const isLast = (tag: string | null): boolean => tag !== null && isBackground(tag);
  const constraints = [...evaModel.model.constraints].sort((a, b) => Number(isLast(a.tag)) - Number(isLast(b.tag)));
  const collision = findCollision({ ...evaModel.model, constraints }, options);
  if (collision === null) return null;
  const context = { campaign, hardware, wall: evaModel.problem.wall };
  const telling = collision.tags.filter((tag) => !isBackground(tag));
  return {
    words: [...telling, ...collision.tags.filter(isBackground)].map((tag) => describeTag(context, tag)),
    isIrreducible: collision.isIrreducible,
  };
}
