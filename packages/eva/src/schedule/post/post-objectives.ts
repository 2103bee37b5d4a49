/**
 * The levels, each counted only among the plans best at those before: rank (what is left out, the most important first),
 * margin (by how much the wanted margin to the wall and to the clocks is missed), change (only when asked for: how far the plan is
 * from the one before), finish (both in), travel (time spent on the
 * way and in and out of restraints, all persons).
 */
import { not } from '@handrail/solver/model/build-model';
import type { LinearTerm, Literal } from '@handrail/solver/model/model';
import type { EvaDraft } from '../eva-draft.ts';
import { CELL_S, cellsDown, cellsUp } from '../grid.ts';
import { differenceOf } from './post-clocks.ts';

/** Ranks in one level: powers of two must stay below 2^30. */
const RANKS_PER_LEVEL = 28;

export function postObjectives(draft: EvaDraft): void {
  postRanks(draft);
  postMargin(draft);
  postChange(draft);
  draft.builder.minimise('finish', { terms: [{ coefficient: 1, variable: draft.bothIn }], constant: 0 });
  if (draft.travelTotals.length === 0) return;
  draft.builder.minimise('travel', {
    terms: draft.travelTotals.map((variable) => ({ coefficient: 1, variable })),
    constant: 0,
  });
}

function postRanks(draft: EvaDraft): void {
  const presences = draft.problem.tasks.flatMap(({ id }) => draft.tasks.get(id) ?? []);
  for (let from = 0; from < presences.length; from += RANKS_PER_LEVEL) {
    const level = presences.slice(from, from + RANKS_PER_LEVEL);
    let constant = 0;
    const terms: LinearTerm[] = level.map((presence, index) => {
      const weight = 2 ** (level.length - 1 - index);
      const absent = not(presence);
      if (absent.holds === 0) constant += weight;
      return { coefficient: absent.holds === 0 ? -weight : weight, variable: absent.variable };
    });
    draft.builder.minimise('rank', { terms, constant });
  }
}

function postMargin(draft: EvaDraft): void {
  const { problem, builder } = draft;
  const wanted = problem.campaign.limits.marginS;
  if (wanted === null) return;
  const margin = cellsUp(wanted);
  const wall = problem.wall === null ? null : cellsDown(problem.wall.petS);
  if (wall === null && draft.clockRuns.length === 0) return;
  const missed = builder.variable('margin missed', 0, problem.horizon + margin);
  const atLeast = (
    { terms, constant }: { readonly terms: readonly LinearTerm[]; readonly constant: number },
    limit: number,
    when: readonly Literal[],
  ) => {
    builder.post({
      kind: 'linear',
      expression: { terms: [...terms, { coefficient: -1, variable: missed }], constant },
      bound: limit - Math.min(margin, limit),
      when,
      tag: null,
    });
  };
  if (wall !== null) atLeast({ terms: [{ coefficient: 1, variable: draft.bothIn }], constant: 0 }, wall, []);
  for (const { clock, start, stop, when } of draft.clockRuns) {
    const limit = cellsDown(problem.campaign.clocks.find(({ id }) => id === clock)?.limitS ?? 0);
    atLeast(differenceOf(draft, start, stop), limit, when);
  }
  builder.minimise('margin', { terms: [{ coefficient: 1, variable: missed }], constant: 0 });
}

/** Another person in a stint weighs as much as ten minutes of moving it: both have to be briefed anew. */
const OTHER_PERSON_S = 600;

function postChange(draft: EvaDraft): void {
  const before = draft.problem.leastChangeFrom;
  if (before === null) return;
  const { builder, problem } = draft;
  const terms: LinearTerm[] = [];
  let constant = 0;
  for (const planned of before.stints) {
    const stint = draft.stints.get(planned.stint);
    if (stint === undefined) continue;
    const start = builder.intervalAt(stint.master).start;
    const was = Math.round(planned.startS / CELL_S);
    const moved = builder.variable(`${planned.stint} moved`, 0, problem.horizon);
    for (const sign of [1, -1]) {
      builder.post({
        kind: 'linear',
        expression: {
          terms: [
            { coefficient: sign, variable: start },
            { coefficient: -1, variable: moved },
          ],
          constant: -sign * was,
        },
        bound: 0,
        when: [stint.presence],
        tag: null,
      });
    }
    terms.push({ coefficient: 1, variable: moved });
    for (const { mode, interval } of stint.modes) {
      const isSame = mode.assigned.every((id, role) => id === planned.assigned[role]);
      const chosen = builder.intervalAt(interval).presence;
      if (isSame || chosen === null) continue;
      const weight = OTHER_PERSON_S / CELL_S;
      if (chosen.holds === 0) constant += weight;
      terms.push({ coefficient: chosen.holds === 0 ? -weight : weight, variable: chosen.variable });
    }
  }
  if (terms.length > 0) builder.minimise('change', { terms, constant });
}
