/**
 * Tasks and inserts by rank, and the cut rule: what stands below it is left out of the plan by pins. Moving the rule changes the
 * text, not the plan: planning is asked for by hand.
 */
import { addPin, removePin } from '@handrail/eva/campaign/edit/edit-pins';
import type { TextEdit } from '@handrail/eva/campaign/edit/text-edit';
import { ProblemList } from '@handrail/eva/campaign/problem/problem';
import { parseFile } from '@handrail/eva/campaign/text/parse-file';
import type { Campaign, Task } from '@handrail/eva/campaign/campaign';
import { change, documentStore } from '../../document/document-store.ts';
import { applyChange, FILE_NAME } from '../../document/working-copy.ts';
import { look, tell } from '../../session/session-store.ts';
import { useDerived, useDocument, useSession } from '../shell/use-stores.ts';
import styles from './ranked-list.module.css';

export function RankedList() {
  const campaign = useDerived((state) => state.opening.value?.campaign ?? null);
  const timeline = useDocument((state) => state.copy.timeline);
  const selection = useSession((state) => state.selection);
  if (campaign === null) return <div className={styles.list} />;
  const eva = new Map(timeline?.evas.flatMap((one) => one.tasks.map((task) => [task, one.eva] as const)) ?? []);
  const why = new Map(timeline?.leftOut.map((one) => [one.task, one.why] as const) ?? []);
  const pinnedOut = new Set(campaign.pins.flatMap((pin) => (pin.kind === 'out' ? [pin.task] : [])));
  const tasks = campaign.tasks.toSorted((a, b) => a.rank - b.rank);
  const cutAt = tasks.findIndex(({ id }) => pinnedOut.has(id));
  const firstCut = cutAt < 0 ? tasks.length : cutAt;
  const title = (id: string): string => campaign.evas.find((one) => one.id === id)?.title ?? id;
  const pick = (task: Task): void => {
    const planned = timeline?.evas
      .flatMap((one) => one.stints.map((stint) => ({ ...stint, eva: one.eva })))
      .find(({ stint }) => stint.startsWith(`${task.id}/`));
    if (planned === undefined) look({ selection: { what: 'task', id: task.id } });
    else look({ evaId: planned.eva, selection: { what: 'stint', id: planned.stint }, minuteS: planned.startS });
  };
  return (
    <section className={styles.list} aria-label="Ranked list" tabIndex={0}>
      <h2>Ranked list</h2>
      <ol>
        {tasks.map((task, index) => (
          <li key={task.id} className={eva.has(task.id) ? undefined : styles.out}>
            {index === firstCut ? <CutRule campaign={campaign} tasks={tasks} at={firstCut} /> : null}
            <div className={styles.row}>
              <span className={styles.rank}>{task.rank}</span>
              <button
                type="button"
                className={task.insert ? styles.insert : undefined}
                aria-pressed={selection?.id === task.id || selection?.id.startsWith(`${task.id}/`) === true}
                onClick={() => pick(task)}
              >
                {task.title}
              </button>
              <span className={styles.where}>
                {task.insert ? 'insert · ' : ''}
                {eva.has(task.id) ? title(eva.get(task.id) ?? '') : pinnedOut.has(task.id) ? 'cut' : 'not planned'}
              </span>
              {eva.has(task.id) || why.get(task.id) === undefined ? null : (
                <span className={styles.why}>{why.get(task.id)}</span>
              )}
            </div>
          </li>
        ))}
      </ol>
      {firstCut === tasks.length ? <CutRule campaign={campaign} tasks={tasks} at={firstCut} /> : null}
    </section>
  );
}

function CutRule({
  campaign,
  tasks,
  at,
}: {
  readonly campaign: Campaign;
  readonly tasks: readonly Task[];
  readonly at: number;
}) {
  return (
    <div className={styles.cut} role="group" aria-label="Cut rule">
      <span style={{ flex: 1 }}>cut rule</span>
      <button
        type="button"
        disabled={at === 0}
        aria-label={`Cut one more: ${tasks[at - 1]?.title ?? ''}`}
        onClick={() => moveCut(campaign, tasks, at - 1)}
      >
        ↑
      </button>
      <button
        type="button"
        disabled={at === tasks.length}
        aria-label={`Take one more in: ${tasks[at]?.title ?? ''}`}
        onClick={() => moveCut(campaign, tasks, at + 1)}
      >
        ↓
      </button>
    </div>
  );
}

/** Everything from `at` on is pinned out; nothing before it is. */
function moveCut(campaign: Campaign, tasks: readonly Task[], at: number): void {
  const { text, timeline } = documentStore.getState().copy;
  const parse = (now: string) => parseFile(FILE_NAME, now, new ProblemList());
  const file = parse(text);
  if (file.document === null) {
    tell('The text has a syntax error: mend it first');
    return;
  }
  const isBelow = (task: string): boolean => tasks.findIndex(({ id }) => id === task) >= at;
  const edits: TextEdit[] = campaign.pins
    .flatMap((pin) => (pin.kind === 'out' && !isBelow(pin.task) ? (removePin(file, pin) ?? []) : []))
    .sort((a, b) => b.at - a.at);
  const pinned = new Set(campaign.pins.flatMap((pin) => (pin.kind === 'out' ? [pin.task] : [])));
  let now = applyChange({ text, timeline }, { edits }).copy.text;
  for (const { id } of tasks.slice(at)) {
    if (pinned.has(id)) continue;
    const edit = addPin(parse(now), { kind: 'out', task: id });
    edits.push(edit);
    now = applyChange({ text: now, timeline }, { edits: [edit] }).copy.text;
  }
  change('Move the cut rule', { edits });
  tell(
    `${tasks.length - at} ${tasks.length - at === 1 ? 'task is' : 'tasks are'} below the cut rule. Plan again to see what that gives.`,
  );
}
