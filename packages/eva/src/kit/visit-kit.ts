import type { PlannedStint } from '../timeline/timeline.ts';
import { contentsOf, type EvaInventory, heldAt } from './inventory.ts';

/** What one person carries to and from one stay, bags with what is in them. */
export interface VisitKit {
  readonly arrivesWith: readonly string[];
  readonly leavesWith: readonly string[];
  /** Carried away that was not brought, and brought that stays behind. */
  readonly pickedUp: readonly string[];
  readonly leftBehind: readonly string[];
}

/**
 * @param person who; may be anybody, also somebody who takes no part
 * @returns pieces on the person just before the stint starts and when it has ended, in the order of the campaign; what ends
 * at the very instant of the start has ended before it
 */
export function visitKit(eva: EvaInventory, planned: PlannedStint, person: string): VisitKit {
  const arrivesWith = contentsOf(heldAt(eva, planned.startS), `person:${person}`);
  const leavesWith = contentsOf(heldAt(eva, planned.endS), `person:${person}`);
  const brought = new Set(arrivesWith);
  const taken = new Set(leavesWith);
  return {
    arrivesWith,
    leavesWith,
    pickedUp: leavesWith.filter((item) => !brought.has(item)),
    leftBehind: arrivesWith.filter((item) => !taken.has(item)),
  };
}
