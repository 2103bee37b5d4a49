/** A bound on a proof variable: at least, or at most, a number. */
export interface Atom {
  readonly variable: number;
  readonly isAtLeast: boolean;
  readonly bound: number;
}

export function negated({ variable, isAtLeast, bound }: Atom): Atom {
  return { variable, isAtLeast: !isAtLeast, bound: isAtLeast ? bound - 1 : bound + 1 };
}

export function atomText({ variable, isAtLeast, bound }: Atom): string {
  return `${variable}${isAtLeast ? '>=' : '<='}${bound}`;
}
