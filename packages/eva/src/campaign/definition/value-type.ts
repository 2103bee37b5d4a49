/**
 * The sorts of value that may stand in the campaign text. One description serves the checker, the reference page,
 * completion and the JSON Schema.
 */
import { type Dimension, parseQuantity } from '@handrail/quantity/quantity';
import { Fault } from '@handrail/quantity/fault';

/** People, arms, hardware and places share one set of ids, so that a sentence can name any of them without doubt. */
export type Body = 'person' | 'arm' | 'hardware' | 'place';
export type Namespace =
  | Body
  | 'task'
  | 'objective'
  | 'milestone'
  | 'eva'
  | 'request'
  | 'event'
  | 'clock'
  | 'window'
  | 'gate'
  | 'response'
  | 'load-class'
  | 'rail'
  | 'pose'
  | 'stint'
  | 'suit'
  | 'prebreathe'
  | 'partner'
  | 'antenna'
  | 'vehicle-body'
  | 'kind';

export type ValueType =
  /** A new id in this namespace. */
  | { readonly type: 'id'; readonly declares: Namespace }
  /** An id declared elsewhere; with `many`, several in one string, parted by spaces. `words` are allowed beside ids. */
  | {
      readonly type: 'reference';
      readonly to: readonly Namespace[];
      readonly many: boolean;
      readonly words: readonly string[];
    }
  /** "12 min": text with a unit; read as SI. */
  | {
      readonly type: 'quantity';
      readonly dimension: Dimension;
      readonly least: Bound | null;
      readonly most: Bound | null;
    }
  | {
      readonly type: 'number';
      readonly integer: boolean;
      readonly least: number;
      readonly most: number;
      /** The unit that the place implies: "min"; null: a pure number. */
      readonly unit: string | null;
    }
  | { readonly type: 'choice'; readonly of: readonly string[] }
  | { readonly type: 'utc' }
  | { readonly type: 'pet' }
  | { readonly type: 'flag' }
  | { readonly type: 'text' }
  /** A state variable: "j1", "old-pump.power", "tray.holder", "request:pump-bus-off". */
  | { readonly type: 'variable' }
  /** A value of a state variable, an aspect or a setting name: a word that the kinds explain. */
  | { readonly type: 'word' }
  /** Text, number or flag: checked by the kind. */
  | { readonly type: 'scalar' };

export interface Bound {
  readonly text: string;
  readonly si: number;
}

export const declaresId = (declares: Namespace): ValueType => ({ type: 'id', declares });
export const reference = (...to: Namespace[]): ValueType => ({ type: 'reference', to, many: false, words: [] });
export const references = (...to: Namespace[]): ValueType => ({ type: 'reference', to, many: true, words: [] });
export function referenceOrWord(words: readonly string[], many: boolean, ...to: Namespace[]): ValueType {
  return { type: 'reference', to, many, words };
}
export const choice = (...of: string[]): ValueType => ({ type: 'choice', of });
export const integer = (least: number, most: number): ValueType => ({
  type: 'number',
  integer: true,
  least,
  most,
  unit: null,
});
export const decimal = (least: number, most: number, unit: string | null = null): ValueType => ({
  type: 'number',
  integer: false,
  least,
  most,
  unit,
});
export const minuteCount: ValueType = decimal(0.1, 1440, 'min');
export const utc: ValueType = { type: 'utc' };
export const petTime: ValueType = { type: 'pet' };
export const flag: ValueType = { type: 'flag' };
export const text: ValueType = { type: 'text' };
export const variable: ValueType = { type: 'variable' };
export const word: ValueType = { type: 'word' };
export const scalar: ValueType = { type: 'scalar' };

/** A quantity with the least and greatest that are not absurd, as they would be written. */
export function quantity(dimension: Dimension, least: string | null = null, most: string | null = null): ValueType {
  return { type: 'quantity', dimension, least: bound(dimension, least), most: bound(dimension, most) };
}

function bound(dimension: Dimension, written: string | null): Bound | null {
  if (written === null) return null;
  const read = parseQuantity(written);
  if (!read.ok || read.dimension !== dimension) {
    throw new Fault('campaign/bad-definition', `"${written}" is not a ${dimension}`, {
      values: { written, dimension },
    });
  }
  return { text: written, si: read.si };
}
