/** The replay's own reading of the rails: no table and no search shared with planning. */
import type { Campaign, LoadClass, Rail } from '../../../campaign/campaign.ts';
import type { ReplayContext } from '../replay-context.ts';
import type { StateHistory } from '../states/state-history.ts';

/** Rails between two neighbours. */
export function railsBetween(campaign: Campaign, from: string, to: string): readonly Rail[] {
  return campaign.vehicle.rails.filter(
    (rail) => (rail.from === from && rail.to === to) || (rail.from === to && rail.to === from),
  );
}

/** The condition of a rail that does not hold somewhere in [fromMs, toMs), in words; null: open throughout. */
export function whyClosed(rail: Rail, history: StateHistory, fromMs: number, toMs: number): string | null {
  for (const { variable, allowed } of rail.openWhile) {
    const wrong = history
      .during(variable, fromMs, Math.max(toMs, fromMs + 1), null)
      .find(({ value }) => value === 'unknown' || !allowed.includes(value));
    if (wrong !== undefined) {
      const why = wrong.value === 'unknown' ? 'nobody has said how it stands' : `it is ${wrong.value}`;
      return `rail ${rail.id} is open while ${variable} is ${allowed.join(' or ')}; ${why}`;
    }
  }
  return null;
}

/** Loose pieces with a load class in somebody's hands at an instant. */
export function loadsInHand(context: ReplayContext, history: StateHistory, who: string, ms: number): readonly string[] {
  return itemsInHand(context, history, who, ms).filter((item) => context.hardware.get(item)?.loadClass != null);
}

/** Loose pieces in somebody's hands or on their hooks at an instant: held by them, not in a bag of theirs. */
export function itemsInHand(context: ReplayContext, history: StateHistory, who: string, ms: number): readonly string[] {
  const value = context.arms.has(who) ? `arm:${who}` : `person:${who}`;
  const items: string[] = [];
  for (const variable of context.model.variables.values()) {
    if (variable.about !== 'holder') continue;
    if (history.before(variable.id, ms, null).value === value) items.push(variable.of);
  }
  return items;
}

export function loadClassOf(context: ReplayContext, item: string): LoadClass | null {
  const id = context.hardware.get(item)?.loadClass ?? null;
  return context.campaign.vehicle.loadClasses.find((load) => load.id === id) ?? null;
}

/** The quickest time over open rails between two places, unladen or with a load; Infinity: none. One row at a time, by rounds. */
export function quickestS(
  campaign: Campaign,
  from: string,
  to: string,
  factor: number,
  isOpen: (rail: Rail) => boolean,
): number {
  const best = new Map<string, number>([[from, 0]]);
  for (let round = 0; round < campaign.vehicle.places.length; round++) {
    let changed = false;
    for (const rail of campaign.vehicle.rails) {
      if (!isOpen(rail)) continue;
      for (const [a, b] of [
        [rail.from, rail.to],
        [rail.to, rail.from],
      ] as const) {
        const time = (best.get(a) ?? Number.POSITIVE_INFINITY) + rail.durationS * factor;
        if (time < (best.get(b) ?? Number.POSITIVE_INFINITY)) {
          best.set(b, time);
          changed = true;
        }
      }
    }
    if (!changed) break;
  }
  return best.get(to) ?? Number.POSITIVE_INFINITY;
}
