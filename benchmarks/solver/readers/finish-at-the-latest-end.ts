import { endOf, startOf, type ModelBuilder } from '@handrail/solver/model/build-model';
import type { IntervalId } from '@handrail/solver/model/model';

/** Posts that a closing milestone follows every one of `last`, and minimises it: the makespan. */
export function finishAtTheLatestEnd(builder: ModelBuilder, last: readonly IntervalId[]): IntervalId {
  const milestone = builder.interval('finish', 0);
  for (const id of last) {
    builder.post({ kind: 'precedence', from: endOf(id), to: startOf(milestone), lag: 0, when: [], tag: null });
  }
  const variable = builder.intervalAt(milestone).start;
  builder.minimise('makespan', { terms: [{ coefficient: 1, variable }], constant: 0 });
  return milestone;
}
