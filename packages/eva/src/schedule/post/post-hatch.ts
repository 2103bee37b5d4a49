/**
 * The hatch: passages out one at a time from PET 0 in the written order, passages in one at a time in theirs, then it is
 * closed. Nobody works outside before their passage out or after their passage in (post-person-lanes.ts sees to that).
 */
import { endOf, startOf } from '@handrail/solver/model/build-model';
import type { IntervalId } from '@handrail/solver/model/model';
import type { EvaDraft } from '../eva-draft.ts';
import { egressTimes, WALL_TAG } from '../eva-problem.ts';
import { cellsDown, durationInCells } from '../grid.ts';

export function postHatch(draft: EvaDraft): void {
  const { problem, builder } = draft;
  const out = egressTimes(problem);
  let before: IntervalId | null = null;
  const inward = new Map<string, IntervalId>();
  for (const { person, durationS } of problem.eva.ingress) {
    const passage: IntervalId = builder.interval(`${person} in`, durationInCells(durationS));
    if (before !== null) draft.before(endOf(before), startOf(passage), 0, null);
    inward.set(person, passage);
    before = passage;
  }
  const close = builder.interval('close hatch', durationInCells(problem.eva.closeHatchS));
  if (before !== null) {
    draft.before(endOf(before), startOf(close), 0, null);
    draft.before(startOf(close), endOf(before), 0, null);
  }
  for (const { id } of problem.crew) {
    const times = out.get(id);
    const egress =
      times === undefined
        ? null
        : builder.interval(`${id} out`, times[1] - times[0], { startMin: times[0], endMax: times[1] });
    if (egress !== null) draft.before(endOf(egress), startOf(inward.get(id) ?? close), 0, null);
    draft.passages.set(id, { egress, ingress: inward.get(id) ?? null });
  }
  draft.closeHatch = close;
  draft.bothIn = builder.intervalAt(close).end;
  if (problem.wall !== null) {
    draft.post({
      kind: 'linear',
      expression: { terms: [{ coefficient: 1, variable: draft.bothIn }], constant: 0 },
      bound: cellsDown(problem.wall.petS),
      when: [],
      tag: WALL_TAG,
    });
  }
}
