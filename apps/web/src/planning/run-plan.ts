import type { Timeline } from '@handrail/eva/timeline/timeline';
import { proxy } from 'comlink';
import { change, documentStore } from '../document/document-store.ts';
import { tell } from '../session/session-store.ts';
import { checkingWorker, planningWorker } from '../workers/connect.ts';
import { NO_RUN, planRunStore } from './plan-run-store.ts';

/** Starts a search. Better plans are offered as they come; the document stays as it is. */
export async function runPlan(onlyEva: string | null): Promise<void> {
  if (planRunStore.getState().isRunning) return;
  const { copy } = documentStore.getState();
  planRunStore.setState({ ...NO_RUN, isRunning: true, words: 'reading the campaign' });
  try {
    const done = await planningWorker().plan(
      { text: copy.text, near: copy.timeline, onlyEva },
      proxy(({ words, timeline }) => {
        planRunStore.setState({ words });
        // While a part is planned anew, what is offered is the whole as it would then be.
        if (timeline !== null) void offer(whole(copy.timeline, timeline, onlyEva), false);
      }),
    );
    if (done.timeline === null) {
      planRunStore.setState({ ...NO_RUN, words: 'the text has errors: mend them first', findings: done.findings });
      tell('Nothing was planned: the text has errors');
      return;
    }
    await offer(whole(copy.timeline, done.timeline, onlyEva), true);
    planRunStore.setState({
      isRunning: false,
      findings: done.findings,
      words: done.wasStopped ? 'stopped: this is the best so far' : 'done',
    });
    tell(
      done.wasStopped
        ? 'Stopped. The best plan so far is offered.'
        : 'A plan is offered: compare, then take it or leave it.',
    );
  } catch (cause) {
    const words = cause instanceof Error ? cause.message : String(cause);
    planRunStore.setState({ ...NO_RUN, words });
    tell(`Planning failed: ${words}`);
  }
}

export function stopPlan(): void {
  void planningWorker().stop();
  planRunStore.setState({ words: 'stopping; the best so far is kept' });
}

/** The offer becomes the plan in hand, as one step that can be undone. */
export function takeOffer(): void {
  const { offered } = planRunStore.getState();
  if (offered === null) return;
  change('Take the new plan', { edits: [], timeline: offered });
  planRunStore.setState(NO_RUN);
  tell('The new plan is in hand. Undo brings the old one back.');
}

export function leaveOffer(): void {
  if (planRunStore.getState().isRunning) stopPlan();
  planRunStore.setState(NO_RUN);
  tell('The plan in hand stays as it was.');
}

async function offer(timeline: Timeline, isFinal: boolean): Promise<void> {
  const { copy } = documentStore.getState();
  const judged = await checkingWorker().judge(copy.text, timeline, 'replay', Date.now());
  const was = planRunStore.getState();
  if (!was.isRunning || (was.isFinal && !isFinal)) return;
  planRunStore.setState({ offered: timeline, judged, isFinal });
}

function whole(before: Timeline | null, planned: Timeline, onlyEva: string | null): Timeline {
  if (before === null || onlyEva === null) return planned;
  const part = planned.evas.find(({ eva }) => eva === onlyEva);
  if (part === undefined) return before;
  const isThere = before.evas.some(({ eva }) => eva === onlyEva);
  const evas = isThere ? before.evas.map((eva) => (eva.eva === onlyEva ? part : eva)) : [...before.evas, part];
  return { ...planned, evas };
}
