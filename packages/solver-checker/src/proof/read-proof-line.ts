import type { Point } from '@handrail/solver/model/model';
import type { Atom } from './atom.ts';
import { ProofFault } from './proof-fault.ts';

/** A stretch of time between instants: it begins with the earliest of `from`. */
export interface Stretch {
  readonly from: readonly Point[];
  readonly to: Point;
}

export type ProofLine =
  | { readonly kind: 'version'; readonly version: number }
  | { readonly kind: 'order'; readonly variable: number; readonly first: Stretch; readonly second: Stretch }
  | {
      readonly kind: 'support';
      readonly variable: number;
      readonly constraint: number;
      readonly need: number;
      readonly writer: number;
    }
  | { readonly kind: 'objective'; readonly variable: number; readonly level: number }
  | { readonly kind: 'total'; readonly variable: number; readonly constraint: number }
  | {
      readonly kind: 'inference';
      readonly constraint: number;
      readonly label: string;
      readonly premises: readonly Atom[];
      readonly conclusion: Atom | null;
    }
  | { readonly kind: 'nogood'; readonly id: number; readonly atoms: readonly Atom[]; readonly hints: readonly number[] }
  | { readonly kind: 'drop'; readonly id: number }
  | { readonly kind: 'solution'; readonly values: readonly number[] }
  | { readonly kind: 'cut'; readonly level: number; readonly bound: number }
  | { readonly kind: 'closed'; readonly level: number; readonly value: number }
  | { readonly kind: 'assumptions'; readonly atoms: readonly Atom[] }
  | { readonly kind: 'end'; readonly claim: 'optimal' | 'infeasible' | 'open' };

/** One line of a proof as data. @throws ProofFault on anything that is not in the format. */
export function readProofLine(text: string): ProofLine {
  const [head = '', ...words] = text.split(' ');
  switch (head) {
    case 'handrail-proof':
      return { kind: 'version', version: whole(words[0]) };
    case 'o':
      return { kind: 'order', variable: whole(words[0]), first: stretch(words[1]), second: stretch(words[2]) };
    case 'w': {
      const [variable, constraint, need, writer] = words.map(whole) as [number, number, number, number];
      return { kind: 'support', variable, constraint, need, writer: writer ?? whole(undefined) };
    }
    case 'z':
      return { kind: 'objective', variable: whole(words[0]), level: whole(words[1]) };
    case 't':
      return { kind: 'total', variable: whole(words[0]), constraint: whole(words[1]) };
    case 'i': {
      const arrow = words.indexOf('->');
      if (arrow < 2 || words.length - arrow > 2) throw new ProofFault(`not an inference: ${text}`);
      const conclusion = words[arrow + 1];
      return {
        kind: 'inference',
        constraint: whole(words[0]),
        label: words[1] as string,
        premises: words.slice(2, arrow).map(atom),
        conclusion: conclusion === undefined ? null : atom(conclusion),
      };
    }
    case 'n': {
      const semicolon = words.indexOf(';');
      if (semicolon < 1) throw new ProofFault(`not a nogood: ${text}`);
      const atoms = words.slice(1, semicolon).map(atom);
      return { kind: 'nogood', id: whole(words[0]), atoms, hints: words.slice(semicolon + 1).map(whole) };
    }
    case 'd':
      return { kind: 'drop', id: whole(words[0]) };
    case 's':
      return { kind: 'solution', values: words.map(whole) };
    case 'c':
      return { kind: 'cut', level: whole(words[0]), bound: whole(words[1]) };
    case 'f':
      return { kind: 'closed', level: whole(words[0]), value: whole(words[1]) };
    case 'a':
      return { kind: 'assumptions', atoms: words.map(atom) };
    case 'end': {
      const claim = words[0];
      if (claim === 'optimal' || claim === 'infeasible' || claim === 'open') return { kind: 'end', claim };
      throw new ProofFault(`not a claim: ${text}`);
    }
    default:
      throw new ProofFault(`not a line of a proof: ${text}`);
  }
}

function whole(word: string | undefined): number {
  if (word === undefined || !/^-?\d+$/.test(word)) throw new ProofFault(`not a number: ${word ?? '(nothing)'}`);
  return Number(word);
}

function atom(word: string): Atom {
  const parts = /^(\d+)([<>])=(-?\d+)$/.exec(word);
  if (parts === null) throw new ProofFault(`not an atom: ${word}`);
  return { variable: Number(parts[1]), isAtLeast: parts[2] === '>', bound: Number(parts[3]) };
}

function stretch(word: string | undefined): Stretch {
  const parts = /^((?:\d+[se]-?\d+,?)+)-(\d+[se]-?\d+)$/.exec(word ?? '');
  if (parts === null) throw new ProofFault(`not a stretch: ${word ?? '(nothing)'}`);
  return { from: (parts[1] as string).split(',').map(point), to: point(parts[2] as string) };
}

function point(word: string): Point {
  const parts = /^(\d+)([se])(-?\d+)$/.exec(word);
  if (parts === null) throw new ProofFault(`not an instant: ${word}`);
  return { interval: Number(parts[1]), of: parts[2] === 's' ? 'start' : 'end', offset: Number(parts[3]) };
}
