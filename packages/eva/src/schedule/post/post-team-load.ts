/**
 * Implied by the lanes together, and a better bound on the finish where it is open who does what: all work, all ways and all
 * passages of everybody outside fit side by side before both are in.
 */
import type { LinearTerm } from '@handrail/solver/model/model';
import type { EvaDraft, StintDraft } from '../eva-draft.ts';
import { egressTimes } from '../eva-problem.ts';
import { durationInCells } from '../grid.ts';
import { roleRange } from '../team-mode.ts';

export function postTeamLoad(draft: EvaDraft): void {
  const { problem, builder } = draft;
  const { crew, eva } = problem;
  if (crew.length < 2 || eva.ingress.length !== crew.length || draft.travelTotals.length === 0) return;
  const out = egressTimes(problem);
  // Everybody has from their passage out to their passage in; after that come the passages behind them and the hatch.
  let fixed = 0;
  let after = durationInCells(eva.closeHatchS);
  for (const { durationS } of [...eva.ingress].reverse()) {
    after += durationInCells(durationS);
    fixed += after;
  }
  for (const { id } of crew) fixed += out.get(id)?.[1] ?? 0;
  const terms: LinearTerm[] = draft.travelTotals.map((variable) => ({ coefficient: 1, variable }));
  terms.push({ coefficient: -crew.length, variable: draft.bothIn });
  const work = new Map<number, number>();
  for (const stint of draft.stints.values()) {
    const { variable } = stint.presence;
    work.set(variable, (work.get(variable) ?? 0) + leastWork(draft, stint));
  }
  for (const [variable, coefficient] of work) if (coefficient > 0) terms.push({ coefficient, variable });
  builder.post({ kind: 'linear', expression: { terms, constant: fixed }, bound: 0, when: [], tag: 'team' });
}

/** Cells of people outside that the stint takes whoever does it. */
function leastWork({ problem }: EvaDraft, { stint, modes }: StintDraft): number {
  const outside = new Set(problem.crew.map(({ id }) => id));
  const totals = modes.map(({ mode: { assigned, boundaries } }) =>
    stint.roles.reduce((sum, role, index) => {
      if (!outside.has(assigned[index] ?? '')) return sum;
      const [from, to] = roleRange(stint, role);
      return sum + (boundaries[to] as number) - (boundaries[from] as number);
    }, 0),
  );
  return Math.min(...totals);
}
