import type { Vector3 } from '@handrail/quantity/vector';
import type { Campaign } from '../campaign/campaign.ts';
import { conditionHolds, type Valuation } from '../vehicle/rail-network.ts';
import { type TravelTable, travelTable } from '../vehicle/travel-table.ts';
import type { SceneRail } from './scene.ts';
import { type ValueFrom, valueAt } from './values-over.ts';

/** What the rails depend on, at one second. */
function railValues(campaign: Campaign, changes: ReadonlyMap<string, readonly ValueFrom[]>, petS: number): Valuation {
  const variables = new Set(campaign.vehicle.rails.flatMap((rail) => rail.openWhile.map(({ variable }) => variable)));
  return new Map([...variables].map((id) => [id, valueAt(changes.get(id), petS)?.value ?? 'unknown']));
}

/** Every rail whose ends have positions, with the reason where it is closed. */
export function openRails(
  campaign: Campaign,
  changes: ReadonlyMap<string, readonly ValueFrom[]>,
  petS: number,
  placeAt: (id: string) => Vector3 | null,
): readonly SceneRail[] {
  const values = railValues(campaign, changes, petS);
  return campaign.vehicle.rails.flatMap((rail) => {
    const [fromM, toM] = [placeAt(rail.from), placeAt(rail.to)];
    if (fromM == null || toM == null) return [];
    const broken = rail.openWhile.filter((condition) => !conditionHolds(condition, values));
    const isOpen = broken.length === 0;
    const why = broken.map(
      ({ variable, allowed }) => `${variable} must be ${allowed.join(' or ')}; it is ${values.get(variable)}`,
    );
    return [{ id: rail.id, fromM, toM, isOpen, closedBecause: isOpen ? null : why.join('; ') }];
  });
}

/** Ways and tethers with the rails that are open at that second; each set of open rails is worked out once. */
export function travelByRails(
  campaign: Campaign,
  changes: ReadonlyMap<string, readonly ValueFrom[]>,
): (petS: number, person: string) => TravelTable {
  const known = new Map<string, TravelTable>();
  return (petS, person) => {
    const valuation = railValues(campaign, changes, petS);
    const key = JSON.stringify([person, ...valuation.values()]);
    let table = known.get(key);
    if (table === undefined) {
      table = travelTable(campaign, { valuation, person });
      known.set(key, table);
    }
    return table;
  };
}
