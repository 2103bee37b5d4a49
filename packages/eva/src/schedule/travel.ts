/** Hand-over-hand travel as planning asks for it. The table behind it is built per person, for the values at PET 0. */
import type { Campaign, Eva, Person } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import { travelTable, type TravelTable } from '../vehicle/travel-table.ts';
import { lastingValues } from './lasting-values.ts';

export interface Travel {
  /** Seconds for this person with these items in hand; null: no way. */
  secondsBetween(person: Person, from: string, to: string, items: readonly string[]): number | null;
  /** Places passed, ends included, and the anchor worked from at the end. */
  routeBetween(
    person: Person,
    from: string,
    to: string,
    items: readonly string[],
  ): { readonly path: readonly string[]; readonly anchor: string | null };
}

/**
 * Travel over the rails of the vehicle. A rail with conditions counts as a way only where every value that its variables can
 * take during this EVA opens it: a plan never rests on a rail that work, a request or an outside event might close.
 */
export function vehicleTravel(
  campaign: Campaign,
  hardware: HardwareModel,
  eva: Eva,
  initial: ReadonlyMap<string, string>,
  taskIds: ReadonlySet<string>,
): Travel {
  const valuation = lastingValues(campaign, hardware, eva, initial, taskIds);
  const tables = new Map<string, TravelTable>();
  const tableOf = (person: Person) => {
    let table = tables.get(person.id);
    if (table === undefined) {
      table = travelTable(campaign, person.role === 'outside' ? { valuation, person: person.id } : { valuation });
      tables.set(person.id, table);
    }
    return table;
  };
  const known = new Set(campaign.vehicle.places.map(({ id }) => id));
  return {
    secondsBetween(person, from, to, items) {
      if (from === to) return 0;
      if (!known.has(from) || !known.has(to)) return 0;
      return tableOf(person).secondsBetween(from, to, heaviestLoad(campaign, items), person.pace);
    },
    routeBetween(person, from, to, items) {
      if (!known.has(from) || !known.has(to)) return { path: from === to ? [from] : [from, to], anchor: null };
      const route = tableOf(person).routeBetween(from, to, heaviestLoad(campaign, items));
      return { path: route?.path ?? [from, to], anchor: route?.anchor ?? null };
    },
  };
}

/** The load class that slows most among the items; null when none of them slows. */
export function heaviestLoad(campaign: Campaign, items: readonly string[]): string | null {
  let found: { readonly id: string; readonly factor: number } | null = null;
  for (const item of items) {
    const loadClass = campaign.hardware.find(({ id }) => id === item)?.loadClass ?? null;
    const load = campaign.vehicle.loadClasses.find(({ id }) => id === loadClass);
    if (load !== undefined && (found === null || load.factor > found.factor)) found = load;
  }
  return found?.id ?? null;
}
