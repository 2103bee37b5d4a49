import type { Compilation } from '../engine/compilation.ts';
import type { Term } from '../engine/kernel.ts';
import type { Alternative } from '../model/model.ts';
import { HullPropagator } from '../propagators/hull.ts';
import { sideTerm } from './extreme.ts';

/**
 * The master runs with exactly one of its options. Inferences `presence` (clauses), `equal` (arcs), `hull`: the master's
 * bounds are those of the options that are left.
 */
export function postAlternative(c: Alternative, index: number, at: Compilation): void {
  const { kernel } = at;
  const master = at.interval(c.master);
  // An option named twice could only be present twice: never.
  const twice = new Set(c.options.filter((id, x) => c.options.indexOf(id) !== x));
  const ids = [...new Set(c.options)];
  for (const id of twice) {
    const { presence } = at.interval(id);
    kernel.postClause(presence < 0 ? [] : [presence ^ 1], index);
  }
  const options = ids.map((id) => at.interval(id));
  const literals = options.map(({ presence }) => presence);
  for (const presence of literals) {
    if (master.presence >= 0) kernel.postClause([master.presence, ...(presence < 0 ? [] : [presence ^ 1])], index);
  }
  if (literals.every((l) => l >= 0))
    kernel.postClause(master.presence < 0 ? literals : [master.presence ^ 1, ...literals], index);
  literals.forEach((a, x) => {
    for (const b of literals.slice(x + 1))
      kernel.postClause(
        [a, b].filter((l) => l >= 0).map((l) => l ^ 1),
        index,
      );
  });
  for (const option of options) {
    const conditions = [option.presence, master.presence].filter((l) => l >= 0);
    const equal = (a: Term, b: Term) => {
      kernel.postArc(a, b, 0, conditions, index, 'equal');
      kernel.postArc(b, a, 0, conditions, index, 'equal');
    };
    equal(option.start, master.start);
    if (option.end.variable !== option.start.variable || master.end.variable !== master.start.variable) {
      equal(option.end, master.end);
    } else if (option.end.offset - option.start.offset !== master.end.offset - master.start.offset) {
      kernel.postClause(
        conditions.map((l) => l ^ 1),
        index,
      );
    }
    if (option.duration !== null && master.duration !== null) equal(option.duration, master.duration);
  }
  const hull = (of: (interval: (typeof options)[number]) => Term) => {
    for (const upwards of [true, false]) {
      const candidates = options.map((option) => ({ ...sideTerm(of(option), upwards), presence: option.presence }));
      new HullPropagator(
        kernel,
        sideTerm(of(master), upwards),
        candidates,
        null,
        false,
        master.presence,
        index,
        'hull',
      );
    }
  };
  hull(({ start }) => start);
  if (master.end.variable !== master.start.variable) hull(({ end }) => end);
}
