import type { Literal } from '@handrail/solver/model/model';
import { type Atom, negated } from './atom.ts';
import type { Bounds } from './bounds.ts';
import type { Inference } from './infers.ts';

/**
 * Whether a nogood follows by nothing but the inferences and the nogoods given. `bounds` are given back as they came.
 *
 * What a nogood says: its atoms cannot all hold, each atom on an owned time taken as "if the owner holds", except that one of
 * them, whichever, may have to be taken together with its owner. So that, when all but one hold, the opposite of that one follows
 * where its owner holds. An atom without an owner is both at once; a nogood of owned atoms alone is tried with each of them.
 */
export function followsByPropagation(
  atoms: readonly Atom[],
  inferences: readonly Inference[],
  nogoods: readonly (readonly Atom[])[],
  bounds: Bounds,
): boolean {
  if (leadsToFailure(atoms, null, inferences, nogoods, bounds)) return true;
  const owners = atoms.map(({ variable }) => bounds.reading.ownerOf(variable));
  return (
    atoms.length > 0 &&
    owners.every((owner) => owner !== null && leadsToFailure(atoms, owner, inferences, nogoods, bounds))
  );
}

function leadsToFailure(
  atoms: readonly Atom[],
  owner: Literal | null,
  inferences: readonly Inference[],
  nogoods: readonly (readonly Atom[])[],
  bounds: Bounds,
): boolean {
  const mark = bounds.mark();
  if (owner !== null) bounds.setLiteral(owner);
  for (const atom of atoms) if (!bounds.isContradictory) bounds.set(atom);
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
      const open = nogood.filter((atom) => !bounds.has(atom));
      if (open.length > 1) continue;
      // All hold, one of them for certain, or there is none: that is the failure.
      if (open.length === 0 && (nogood.length === 0 || nogood.some((atom) => bounds.hasFirmly(atom)))) hasFailed = true;
      else
        for (const atom of open.length === 1 ? open : nogood)
          if (!bounds.isContradictory && bounds.set(negated(atom))) isNew = true;
    }
  }
  const failed = hasFailed || bounds.isContradictory;
  bounds.revert(mark);
  return failed;
}
