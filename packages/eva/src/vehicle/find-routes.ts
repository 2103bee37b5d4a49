import { Fault } from '@handrail/quantity/fault';
import type { Campaign } from '../campaign/campaign.ts';
import type { Valuation } from './rail-network.ts';
import type { Route } from './tethered-travel.ts';
import { type TravelTable, travelTable } from './travel-table.ts';

export interface RouteQuestion {
  /** Person id: their pace, start anchor and reel count. Absent: pace as given (1), the slowest tether of all. */
  readonly person?: string;
  readonly pace?: number;
  /** Load class carried; null: hands free. */
  readonly load: string | null;
  /** State of the hardware that rails depend on; absent: as stated for the campaign's start. */
  readonly hardwareValues?: Valuation;
}

export interface FoundRoutes {
  readonly pace: number;
  readonly load: string | null;
  readonly table: TravelTable;
  /** Every ordered pair of different places, in the order of the text; seconds at the pace; null: no way. */
  readonly pairs: readonly {
    readonly from: string;
    readonly to: string;
    readonly seconds: number | null;
    readonly route: Route | null;
  }[];
}

/**
 * Shortest ways between all places for one person or pace, one load and one state of the hardware.
 * @throws Fault `routes/unknown-person`, `routes/unknown-load-class`
 */
export function findRoutes(campaign: Campaign, question: RouteQuestion): FoundRoutes {
  const person = campaign.people.find((candidate) => candidate.id === question.person);
  const pace = question.pace ?? person?.pace ?? 1;
  if (!(pace > 0))
    throw new Fault('routes/pace-not-positive', `the pace must be above 0, got ${pace}`, { values: { pace } });
  const table = travelTable(campaign, {
    ...(question.person === undefined ? {} : { person: question.person }),
    ...(question.hardwareValues === undefined ? {} : { valuation: question.hardwareValues }),
  });
  const ids = campaign.vehicle.places.map((place) => place.id);
  const pairs = ids.flatMap((from) =>
    ids
      .filter((to) => to !== from)
      .map((to) => {
        const route = table.routeBetween(from, to, question.load);
        return { from, to, seconds: route === null ? null : route.seconds * pace, route };
      }),
  );
  return { pace, load: question.load, table, pairs };
}
