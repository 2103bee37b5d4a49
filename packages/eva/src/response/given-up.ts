/** What is not done any more because of trouble, and what was agreed to be cut first. */
import type { Campaign } from '../campaign/campaign.ts';
import type { EvaTimeline } from '../timeline/timeline.ts';

export interface GivenUp {
  /** Stints of the plan that are not done then, by planned start. */
  readonly undone: readonly string[];
  /** By the cut order: tasks not begun that have to go until both are in by the limit. Work alone is counted; ways come on top. */
  readonly cutFirst: readonly { readonly task: string; readonly freesS: number }[];
}

/**
 * @param goingOn null: the crew goes home, all that is not finished is undone. Else by how much the limit is missed, and the stints
 * that cannot be done any more
 */
export function givenUp(
  campaign: Campaign,
  eva: EvaTimeline,
  petS: number,
  goingOn: { readonly shortS: number; readonly undone: readonly string[] } | null,
): GivenUp {
  const inOrder = [...eva.stints].sort((a, b) => a.startS - b.startS);
  if (goingOn === null) {
    return { undone: inOrder.filter((one) => one.endS > petS).map((one) => one.stint), cutFirst: [] };
  }
  const undone = inOrder.map((one) => one.stint).filter((key) => goingOn.undone.includes(key));
  const cutFirst: { task: string; freesS: number }[] = [];
  let shortS = goingOn.shortS;
  const order = campaign.cutOrders.find((one) => one.eva === eva.eva)?.tasks ?? [];
  for (const task of order) {
    if (shortS <= 0) break;
    const planned = eva.stints.filter((one) => one.stint.startsWith(`${task}/`));
    if (planned.length === 0 || planned.some((one) => one.startS <= petS)) continue;
    const freesS = longestWork(planned);
    cutFirst.push({ task, freesS });
    shortS -= freesS;
  }
  return { undone, cutFirst };
}

/** The most that one person works in it. */
function longestWork(planned: EvaTimeline['stints']): number {
  const byPerson = new Map<string, number>();
  for (const { assigned, startS, endS } of planned) {
    for (const person of assigned) byPerson.set(person, (byPerson.get(person) ?? 0) + endS - startS);
  }
  return Math.max(0, ...byPerson.values());
}
