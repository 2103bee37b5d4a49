import { postAlternative } from '../constraints/alternative.ts';
import { postClause } from '../constraints/clause.ts';
import { postCumulative } from '../constraints/cumulative.ts';
import { postExtreme } from '../constraints/extreme.ts';
import { postInterval } from '../constraints/interval.ts';
import { postLinear } from '../constraints/linear.ts';
import { postPrecedence } from '../constraints/precedence.ts';
import { postReservoir } from '../constraints/reservoir.ts';
import { postSequence } from '../constraints/sequence.ts';
import { postSpan } from '../constraints/span.ts';
import { postState } from '../constraints/state.ts';
import { postWindows } from '../constraints/windows.ts';
import type { Constraint, Model } from '../model/model.ts';
import { Compilation } from './compilation.ts';
import type { RunSettings } from './run-settings.ts';

/** A model as variables, nogoods, arcs and propagators. Objectives are added by who minimises them. */
export function compileModel(model: Model, settings: RunSettings = {}): Compilation {
  const at = new Compilation(model);
  at.looksAtEnergy = settings.withoutEnergy !== true;
  model.intervals.forEach((_, id) => postInterval(id, at));
  model.constraints.forEach((constraint, index) => postConstraint(constraint, index, at));
  return at;
}

function postConstraint(c: Constraint, index: number, at: Compilation): void {
  switch (c.kind) {
    case 'precedence':
      return postPrecedence(c, index, at);
    case 'alternative':
      return postAlternative(c, index, at);
    case 'span':
      return postSpan(c, index, at);
    case 'sequence':
      return postSequence(c, index, at);
    case 'cumulative':
      return postCumulative(c, index, at);
    case 'reservoir':
      return postReservoir(c, index, at);
    case 'windows':
      return postWindows(c, index, at);
    case 'state':
      return postState(c, index, at);
    case 'clause':
      return postClause(c, index, at);
    case 'linear':
      return postLinear(c, index, at);
    default:
      return postExtreme(c, index, at);
  }
}
