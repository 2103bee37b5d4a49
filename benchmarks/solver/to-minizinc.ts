import type { Model } from '@handrail/solver/model/model';
import { constraintText } from './minizinc/constraint-text.ts';
import { Names } from './minizinc/names.ts';

/**
 * A model as MiniZinc text, with the globals Chuffed explains well. Exact for every constraint kind, with one objective at a time:
 * the first levels are held at the values in `fixed`, the next one is minimised; none is when all are fixed.
 * `objective_value` in the output is the value of that level.
 * @checked tests/reference/solver-oracle, against enumeration
 */
export function toMiniZinc(model: Model, fixed: readonly number[] = []): string {
  const names = new Names(model);
  const lines = ['include "globals.mzn";'];
  model.variables.forEach(({ min, max }, id) => {
    if (names.isBoolean(id))
      lines.push(`var bool: b${id};`, `var ${min}..${max}: v${id} :: output = bool2int(b${id});`);
    else lines.push(`var ${min}..${max}: v${id} :: output;`);
  });
  model.intervals.forEach(({ start, end }, id) => {
    const present = [names.present(id)];
    lines.push(names.when(present, `v${start} + ${names.duration(id)} = v${end}`));
    if ((model.variables[start]?.min ?? 0) < 0) lines.push(names.when(present, `v${start} >= 0`));
    if ((model.variables[end]?.max ?? 0) > model.horizon)
      lines.push(names.when(present, `v${end} <= ${model.horizon}`));
    if (names.shortest(id) < 0) lines.push(names.when(present, `${names.duration(id)} >= 0`));
  });
  model.constraints.forEach((constraint, id) => lines.push(...constraintText(constraint, names, id)));
  fixed.forEach((value, level) => {
    const objective = model.objectives[level];
    if (objective !== undefined) lines.push(`constraint ${names.sum(objective.minimise)} = ${value};`);
  });
  const search = `:: int_search([${searchVariables(model, names).join(', ')}], smallest, indomain_min)`;
  const objective = model.objectives[fixed.length];
  if (objective === undefined) {
    lines.push(`solve ${search} satisfy;`);
  } else {
    lines.push(`var int: objective_value :: output = ${names.sum(objective.minimise)};`);
    lines.push(`solve ${search} minimize objective_value;`);
  }
  return `${lines.join('\n')}\n`;
}

/** Starts of the intervals, by the smallest first: the usual fixed search of scheduling. */
function searchVariables(model: Model, names: Names): string[] {
  const starts = [...new Set(model.intervals.map((_, id) => names.start(id)))];
  return starts.length > 0 ? starts : model.variables.map((_, id) => `v${id}`);
}
