import { type Remote, wrap } from 'comlink';
import type { PlanningWorker } from './planning-worker.ts';
import type { ReadingWorker } from './reading-worker.ts';

let checking: Remote<ReadingWorker> | undefined;
let proving: Remote<ReadingWorker> | undefined;
let planning: Remote<PlanningWorker> | undefined;

const start = (): Worker => new Worker(new URL('./reading-worker.ts', import.meta.url), { type: 'module' });

/** For what must be answered while a person types or drags: reading, replay. */
export function checkingWorker(): Remote<ReadingWorker> {
  checking ??= wrap<ReadingWorker>(start());
  return checking;
}

/** For what takes a second: rules, ways home. */
export function provingWorker(): Remote<ReadingWorker> {
  proving ??= wrap<ReadingWorker>(start());
  return proving;
}

export function planningWorker(): Remote<PlanningWorker> {
  planning ??= wrap<PlanningWorker>(new Worker(new URL('./planning-worker.ts', import.meta.url), { type: 'module' }));
  return planning;
}
