import { nearestName } from '@handrail/eva/campaign/problem/nearest-name';
import type { EvaTimeline, Timeline } from '@handrail/eva/timeline/timeline';
import { EXIT } from './exit-code.ts';
import { ExitError } from './exit-error.ts';

/** @throws ExitError with code 2 when the timeline has no such EVA */
export function evaNamed(timeline: Timeline, id: string): EvaTimeline {
  const found = timeline.evas.find((eva) => eva.eva === id);
  if (found !== undefined) return found;
  const ids = timeline.evas.map((eva) => eva.eva);
  const near = nearestName(id, ids);
  throw new ExitError(
    EXIT.badInput,
    `no EVA ${id} in this timeline; ${near === null ? `it has ${ids.join(', ')}` : `did you mean ${near}?`}`,
  );
}
