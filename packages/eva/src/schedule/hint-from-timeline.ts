/** What a timeline says of the variables of a model: a place for the search to start from and stay near. */
import type { IntervalId, Literal } from '@handrail/solver/model/model';
import type { EvaTimeline } from '../timeline/timeline.ts';
import type { EvaModel } from './eva-model.ts';
import { CELL_S } from './grid.ts';

/** By variable; undefined: no wish. Stints that the model does not know are passed over. */
export function hintFromTimeline({ draft, model }: EvaModel, timeline: EvaTimeline): (number | undefined)[] {
  const hint: (number | undefined)[] = model.variables.map(() => undefined);
  const literal = ({ variable, holds }: Literal, isTrue: boolean) => {
    hint[variable] = isTrue ? holds : 1 - holds;
  };
  const times = (id: IntervalId, startS: number, endS: number) => {
    const { start, end, duration } = draft.builder.intervalAt(id);
    hint[start] = Math.round(startS / CELL_S);
    hint[end] = Math.round(endS / CELL_S);
    if (typeof duration !== 'number') hint[duration.variable] = Math.round((endS - startS) / CELL_S);
  };
  const planned = new Map(timeline.stints.map((stint) => [stint.stint, stint]));
  for (const [task, presence] of draft.tasks) literal(presence, timeline.tasks.includes(task));
  for (const [key, { master, modes }] of draft.stints) {
    const known = planned.get(key);
    if (known === undefined) continue;
    times(master, known.startS, known.endS);
    for (const { mode, interval } of modes) {
      const isTaken = mode.assigned.every((id, role) => known.assigned[role] === id);
      const { presence } = draft.builder.intervalAt(interval);
      if (presence !== null && interval !== master) literal(presence, isTaken);
      if (isTaken) times(interval, known.startS, known.endS);
    }
  }
  for (const passage of timeline.passages) {
    if (passage.kind === 'close-hatch') {
      if (draft.closeHatch !== null) times(draft.closeHatch, passage.startS, passage.endS);
      continue;
    }
    const known = passage.person === null ? undefined : draft.passages.get(passage.person);
    const id = passage.kind === 'egress' ? known?.egress : known?.ingress;
    if (id !== undefined && id !== null) times(id, passage.startS, passage.endS);
  }
  return hint;
}
