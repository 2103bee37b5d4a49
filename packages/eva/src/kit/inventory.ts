import type { Campaign, Hardware } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import { holderValue, holderVariable } from '../hardware/state-variables.ts';
import { allResponses } from '../response/any-response.ts';
import { stateWrites } from '../timeline/state-writes.ts';
import type { Timeline } from '../timeline/timeline.ts';

/** Who or what holds every loose piece, over one EVA. Holders: "person:EV1", "place:porch", "hardware:bag-1", "arm:crane". */
export interface EvaInventory {
  readonly eva: string;
  /** At PET 0, as the EVA before left it. By piece id. */
  readonly atStart: ReadonlyMap<string, string>;
  /** Later changes, by time. */
  readonly changes: readonly InventoryChange[];
  /** By piece id, when the hatch is closed. */
  readonly atEnd: ReadonlyMap<string, string>;
  readonly accounts: readonly Account[];
}

export interface InventoryChange {
  readonly petS: number;
  readonly item: string;
  readonly from: string;
  readonly to: string;
  /** Stint key or event id. */
  readonly by: string;
}

/** What becomes of a piece that goes out with a person or comes in with one. */
export interface Account {
  readonly item: string;
  readonly wentOutWith: string | null;
  /** The person it comes in with; null: it stays outside. */
  readonly comesInWith: string | null;
  /** Its last holder, as it stands, and the outermost one. */
  readonly left: string;
  readonly outermost: string;
  /** Tools and bags that went out must come in; boxes and covers may stay. Stated, not guessed: true where nothing fits it to the vehicle. */
  readonly mustComeHome: boolean;
  /** Responses that ask for it, by id or by kind; it goes out for them as well. */
  readonly standsByFor: readonly string[];
}

/**
 * The kit over all EVAs, from where each piece starts and what each planned step does to its holder.
 *
 * Method: the holder writes of the timeline in order of time, EVA after EVA by their PET 0. A piece that no kind of this
 * library carries does not appear. Writes at the same instant count in the order of the timeline's list.
 */
export function inventory(campaign: Campaign, hardware: HardwareModel, timeline: Timeline): readonly EvaInventory[] {
  const loose = campaign.hardware.filter((piece) => hardware.variables.has(holderVariable(piece.id)));
  const held = new Map(loose.map((piece) => [piece.id, holderValue(piece.at)]));
  let previousEndMs = Number.NEGATIVE_INFINITY;
  const evas = [...timeline.evas].sort((a, b) => a.petZeroUtcMs - b.petZeroUtcMs);
  return evas.map((eva) => {
    const atStart = new Map(held);
    const changes: InventoryChange[] = [];
    const byVariable = new Map(loose.map((piece) => [holderVariable(piece.id), piece.id]));
    const lastS = eva.bothInS;
    for (const write of stateWrites(campaign, hardware, eva)) {
      const item = byVariable.get(write.variable);
      if (item === undefined || write.petS > lastS) continue;
      // An outside event of before or during the EVA before has been counted there.
      if (eva.petZeroUtcMs + write.petS * 1000 <= previousEndMs) continue;
      const from = held.get(item) ?? '';
      held.set(item, write.value);
      if (write.petS < 0) atStart.set(item, write.value);
      else if (from !== write.value) changes.push({ petS: write.petS, item, from, to: write.value, by: write.by });
    }
    const atEnd = new Map(held);
    previousEndMs = eva.petZeroUtcMs + lastS * 1000;
    return { eva: eva.eva, atStart, changes, atEnd, accounts: accountsOf(campaign, loose, hardware, atStart, atEnd) };
  });
}

/** Who or what holds every piece from this instant on. */
export function heldAt(eva: EvaInventory, petS: number): ReadonlyMap<string, string> {
  const held = new Map(eva.atStart);
  for (const change of eva.changes) if (change.petS <= petS) held.set(change.item, change.to);
  return held;
}

/** The holder that is in nothing else: through bags in bags to a person, place or arm; the piece itself never. */
export function outermostHolder(held: ReadonlyMap<string, string>, item: string): string {
  let holder = held.get(item) ?? '';
  for (let depth = 0; depth <= held.size; depth++) {
    const next = holder.startsWith('hardware:') ? held.get(holder.slice('hardware:'.length)) : undefined;
    if (next === undefined) return holder;
    holder = next;
  }
  return holder;
}

/** What is in a bag, bags in bags included, in the order of the campaign. */
export function contentsOf(held: ReadonlyMap<string, string>, holder: string): readonly string[] {
  return [...held.keys()].filter((item) => {
    let at = held.get(item);
    for (let depth = 0; at !== undefined && depth <= held.size; depth++) {
      if (at === holder) return true;
      at = at.startsWith('hardware:') ? held.get(at.slice('hardware:'.length)) : undefined;
    }
    return false;
  });
}

/** One row a minute: who holds what directly or in bags on them. `null` person rows are left out; places are not listed. */
export function minuteRows(
  eva: EvaInventory,
  people: readonly string[],
  untilS: number,
): readonly { readonly petS: number; readonly carried: Readonly<Record<string, readonly string[]>> }[] {
  const rows = [];
  for (let petS = 0; petS <= untilS; petS += 60) {
    const held = heldAt(eva, petS);
    rows.push({
      petS,
      carried: Object.fromEntries(people.map((person) => [person, contentsOf(held, `person:${person}`)])),
    });
  }
  return rows;
}

function accountsOf(
  campaign: Campaign,
  loose: readonly Hardware[],
  hardware: HardwareModel,
  atStart: ReadonlyMap<string, string>,
  atEnd: ReadonlyMap<string, string>,
): readonly Account[] {
  const responses = allResponses(campaign).filter((response) => response.kit.length > 0);
  return loose.flatMap((piece) => {
    const out = personOf(outermostHolder(atStart, piece.id));
    const outermost = outermostHolder(atEnd, piece.id);
    const home = personOf(outermost);
    if (out === null && home === null) return [];
    const fitted = hardware.variables.get(piece.id)?.values.includes('fastened') === true;
    return [
      {
        item: piece.id,
        wentOutWith: out,
        comesInWith: home,
        left: atEnd.get(piece.id) ?? '',
        outermost,
        mustComeHome: out !== null && !fitted,
        standsByFor: responses
          .filter(({ kit }) => kit.includes(piece.id) || kit.includes(piece.kind))
          .map(({ id }) => id),
      },
    ];
  });
}

function personOf(holder: string): string | null {
  return holder.startsWith('person:') ? holder.slice('person:'.length) : null;
}
