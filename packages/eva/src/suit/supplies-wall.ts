import type { Campaign, Person } from '../campaign/campaign.ts';
import { suitPerson } from './eva-supplies.ts';
import type { SupplyCase } from './supply-case.ts';
import type { LimitingSupply } from './supply-curve.ts';
import { supplyWords } from './supply-words.ts';
import { supplyUse } from './supply-use.ts';

const LONGEST_S = 24 * 3600;

/** When a person's first supply would reach its reserve at one effort throughout, before there is a plan. */
export interface SuppliesWall extends LimitingSupply {
  readonly cause: string;
}

/**
 * The wall that follows from a suit where no suit-limit is stated: every constant at its worst end, the suit's `planning` effort
 * throughout, every load on. A plan whose work is harder than that on the whole is found by the rules on what is left at the hatch.
 * @returns null: no suit is stated, or no reserve is reached within a day
 * @throws as `supplyUse`
 */
export function suppliesWall(
  campaign: Campaign,
  person: Person,
  supplyCase: SupplyCase = 'worst',
): SuppliesWall | null {
  const suit = campaign.suits.find((candidate) => candidate.id === person.suit);
  const wearer = suitPerson(person);
  if (suit === undefined || wearer === null) return null;
  const effort = suit.effortUse.planning;
  const startS = -suit.beforeEgressS;
  const loads = suit.loadUse.filter(({ window }) => window !== null).map(({ load }) => load);
  const span = { startS, endS: LONGEST_S, idleEffort: null, beyondS: 0, beyondEffort: effort };
  const { limiting } = supplyUse(suit.specification, wearer, [{ startS, endS: LONGEST_S, effort, loads }], span);
  const first = limiting[supplyCase];
  if (first === null) return null;
  return {
    ...first,
    cause: `${supplyWords(first.supply)} of ${person.id} at its reserve, ${supplyCase} case at "${effort}" throughout`,
  };
}

/** The suit's limit on one person: as stated, else as it follows from the supplies; null: neither. */
export function suitWall(campaign: Campaign, person: Person): { readonly petS: number; readonly cause: string } | null {
  if (person.suitLimitS !== null) return { petS: person.suitLimitS, cause: `suit of ${person.id}` };
  const wall = suppliesWall(campaign, person);
  // Whole seconds, rounded to the safe side: the plan counts in them.
  return wall === null ? null : { petS: Math.floor(wall.petS), cause: wall.cause };
}
