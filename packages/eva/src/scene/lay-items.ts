/** Where every piece of hardware lies at one second: through bags, sockets and boxes to a place, a person or an arm. */
import type { Vector3 } from '@handrail/quantity/vector';
import type { Campaign, Hardware } from '../campaign/campaign.ts';
import type { HardwareModel, StateVariable } from '../hardware/effects.ts';
import { holderValue, holderVariable } from '../hardware/state-variables.ts';
import type { SceneItem } from './scene.ts';
import { type ValueFrom, valueAt } from './values-over.ts';

export interface ItemBook {
  readonly campaign: Campaign;
  readonly hardware: ReadonlyMap<string, Hardware>;
  /** Aspects of each piece, in the order of its kind. */
  readonly aspects: ReadonlyMap<string, readonly StateVariable[]>;
  readonly changes: ReadonlyMap<string, readonly ValueFrom[]>;
  readonly titles: ReadonlyMap<string, string>;
}

export function itemBook(
  campaign: Campaign,
  model: HardwareModel,
  changes: ReadonlyMap<string, readonly ValueFrom[]>,
): ItemBook {
  const aspects = new Map<string, StateVariable[]>();
  for (const variable of model.variables.values()) {
    if (variable.about !== 'aspect') continue;
    aspects.set(variable.of, [...(aspects.get(variable.of) ?? []), variable]);
  }
  const titles = new Map([
    ...campaign.vehicle.places.map(({ id, title }) => [`place:${id}`, title] as const),
    ...campaign.hardware.map(({ id, title }) => [`hardware:${id}`, title] as const),
    ...campaign.people.map(({ id }) => [`person:${id}`, id] as const),
    ...campaign.arms.map(({ id, title }) => [`arm:${id}`, title] as const),
  ]);
  return { campaign, hardware: new Map(campaign.hardware.map((piece) => [piece.id, piece])), aspects, changes, titles };
}

/**
 * @param positionOf position of "place:ID", "person:ID" or "arm:ID" now; null: not known
 */
export function layItems(
  book: ItemBook,
  petS: number,
  positionOf: (holder: string) => Vector3 | null,
): { readonly items: readonly SceneItem[]; readonly undrawn: readonly string[] } {
  const items: SceneItem[] = [];
  const undrawn: string[] = [];
  const holderOf = (piece: Hardware): ValueFrom =>
    valueAt(book.changes.get(holderVariable(piece.id)), petS) ?? {
      petS: Number.NEGATIVE_INFINITY,
      value: holderValue(piece.at),
    };
  for (const piece of book.hardware.values()) {
    const holder = holderOf(piece);
    const outermost = outermostOf(book, piece, holderOf);
    const positionM = positionOf(outermost);
    if (positionM === null) {
      undrawn.push(
        `${piece.title}: ${outermost === '' ? 'its holders go in a circle' : `${titleOf(book, outermost)} has no position`}`,
      );
      continue;
    }
    const states = (book.aspects.get(piece.id) ?? []).map((variable, index) => {
      const change = valueAt(book.changes.get(variable.id), petS) ?? {
        petS: Number.NEGATIVE_INFINITY,
        value: variable.initial,
      };
      return { ...change, words: index === 0 ? change.value : `${variable.title}: ${change.value}` };
    });
    const changedS = Math.max(holder.petS, ...states.map((state) => state.petS));
    items.push({
      id: piece.id,
      title: piece.title,
      kind: piece.kind,
      positionM,
      where: whereWords(book, holder.value),
      outermost,
      state: states.map(({ words }) => words).join(', '),
      changedS: Number.isFinite(changedS) ? changedS : null,
    });
  }
  return { items, undrawn };
}

function outermostOf(book: ItemBook, piece: Hardware, holderOf: (piece: Hardware) => ValueFrom): string {
  let holder = holderOf(piece).value;
  for (let depth = 0; depth <= book.hardware.size; depth++) {
    if (!holder.startsWith('hardware:')) return holder;
    const next = book.hardware.get(holder.slice('hardware:'.length));
    if (next === undefined) return holder;
    holder = holderOf(next).value;
  }
  return '';
}

function whereWords(book: ItemBook, holder: string): string {
  const title = titleOf(book, holder);
  if (holder.startsWith('place:')) return `at ${title}`;
  if (holder.startsWith('person:')) return `with ${title}`;
  return holder.startsWith('arm:') ? `held by ${title}` : `in or on ${title}`;
}

function titleOf(book: ItemBook, holder: string): string {
  return book.titles.get(holder) ?? holder;
}
