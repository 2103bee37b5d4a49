import type { Literal } from '@handrail/solver/model/model';
import { type Atom, negated } from './atom.ts';
import type { Bounds } from './bounds.ts';
import type { Inference } from './infers.ts';

/**
 * Whether the atoms cannot all hold: taken as true, with their owners, they lead to a failure by nothing but the inferences and
 * the nogoods given. `bounds` are given back as they came.
 */
export function leadsToFailure(
  atoms: readonly Atom[],
  inferences: readonly Inference[],
  nogoods: readonly (readonly Atom[])[],
  bounds: Bounds,
): boolean {
  const mark = bounds.mark();
  for (const atom of atoms) {
    if (bounds.isContradictory) break;
    const owner = bounds.reading.ownerOf(atom.variable);
    if (owner !== null) bounds.setLiteral(owner);
    if (!bounds.isContradictory) bounds.set(atom);
  }
  let hasFailed = false;
  for (let isNew = true; isNew && !bounds.isContradictory && !hasFailed; ) {
    isNew = false;
    // Conflicts are written down from the failure backwards; so the last inference is likely to come first.
    for (let i = inferences.length - 1; i >= 0 && !bounds.isContradictory && !hasFailed; i--) {
      const { premises, conclusion } = inferences[i] as Inference;
      if ((conclusion !== null && bounds.has(conclusion)) || !premises.every((atom) => bounds.has(atom))) continue;
      if (conclusion === null) hasFailed = true;
      else if (bounds.set(conclusion)) isNew = true;
    }
    for (const nogood of nogoods) {
      if (bounds.isContradictory || hasFailed) break;
      const target = openAtom(nogood, bounds);
      if (target === null) hasFailed = true;
      else if (target !== undefined && bounds.set(negated(target))) isNew = true;
    }
  }
  const failed = hasFailed || bounds.isContradictory;
  bounds.revert(mark);
  return failed;
}

/**
 * The one atom of a nogood that its others, holding for certain, forbid; null when all of them hold; undefined when more are
 * open. An atom that holds where its owner does counts beside one whose owner brings that owner with it.
 */
function openAtom(nogood: readonly Atom[], bounds: Bounds): Atom | null | undefined {
  const open = nogood.filter((atom) => !bounds.hasFirmly(atom));
  if (open.length === 0) return null;
  if (open.length === 1) return open[0];
  return open.find((target) => {
    const owner: Literal | null = bounds.reading.ownerOf(target.variable) ?? asLiteral(target, bounds);
    if (owner === null) return false;
    return open.every((other) => {
      const theirs = bounds.reading.ownerOf(other.variable);
      return other === target || (bounds.has(other) && theirs !== null && bounds.reading.implies(owner, theirs));
    });
  });
}

/** A boolean's atom as a literal: where it holds, so does all that it brings with it. */
function asLiteral({ variable, isAtLeast, bound }: Atom, bounds: Bounds): Literal | null {
  const variables = bounds.reading.model.variables;
  const declared = variables[variable];
  if (declared === undefined || declared.min < 0 || declared.max > 1) return null;
  if (isAtLeast && bound === 1) return { variable, holds: 1 };
  return !isAtLeast && bound === 0 ? { variable, holds: 0 } : null;
}
