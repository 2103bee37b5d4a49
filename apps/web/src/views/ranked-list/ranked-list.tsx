/**
 * Tasks and inserts by rank, and the cut rule: what stands below it is left out of the plan by pins. Moving the rule changes the
 * text, not the plan: planning is asked for by hand.
 */
import type { Task } from '@handrail/eva/campaign/campaign';
import { useState } from 'react';
import { look } from '../../session/session-store.ts';
import { useDerived, useDocument, useSession } from '../shell/use-stores.ts';
import { CutRule } from './cut-rule.tsx';
import { Objectives } from './objectives.tsx';
import styles from './ranked-list.module.css';

export function RankedList() {
  const campaign = useDerived((state) => state.opening.value?.campaign ?? null);
  const timeline = useDocument((state) => state.copy.timeline);
  const selection = useSession((state) => state.selection);
  const [hovered, setHovered] = useState<number | null>(null);
  if (campaign === null) return <div className={styles.list} />;
  const eva = new Map(timeline?.evas.flatMap((one) => one.tasks.map((task) => [task, one.eva] as const)) ?? []);
  const why = new Map(timeline?.leftOut.map((one) => [one.task, one.why] as const) ?? []);
  const pinnedOut = new Set(campaign.pins.flatMap((pin) => (pin.kind === 'out' ? [pin.task] : [])));
  const tasks = campaign.tasks.toSorted((a, b) => a.rank - b.rank);
  const cutAt = tasks.findIndex(({ id }) => pinnedOut.has(id));
  const firstCut = cutAt < 0 ? tasks.length : cutAt;
  const title = (id: string): string => campaign.evas.find((one) => one.id === id)?.title ?? id;
  const row = (task: Task, index: number) => (
    <li
      key={task.id}
      data-task={task.id}
      className={`${styles.row} ${eva.has(task.id) ? '' : styles.out}`}
      data-hovered={hovered === null ? undefined : String(index >= hovered)}
    >
      <span className={styles.rank}>{task.rank}</span>
      <button
        type="button"
        className={task.insert ? styles.insert : undefined}
        aria-pressed={selection?.id === task.id || selection?.id.startsWith(`${task.id}/`) === true}
        onClick={() => pick(task, timeline?.evas ?? [])}
      >
        {task.title}
      </button>
      <span className={styles.where}>
        {task.insert ? <i title="insert: a get-ahead task, taken only if there is room">ins </i> : ''}
        {eva.has(task.id) ? title(eva.get(task.id) ?? '') : pinnedOut.has(task.id) ? 'cut' : 'not in'}
      </span>
      {eva.has(task.id) || why.get(task.id) === undefined ? null : (
        <span className={styles.why}>{why.get(task.id)}</span>
      )}
    </li>
  );
  return (
    <section className={styles.list} aria-label="Ranked list" tabIndex={0}>
      <Objectives campaign={campaign} planned={new Set(eva.keys())} />
      <h2>Tasks by rank</h2>
      <ol>{tasks.slice(0, firstCut).map(row)}</ol>
      <CutRule campaign={campaign} tasks={tasks} at={firstCut} onHover={setHovered} />
      <ol>{tasks.slice(firstCut).map((task, index) => row(task, firstCut + index))}</ol>
    </section>
  );
}

function pick(
  task: Task,
  evas: readonly {
    readonly eva: string;
    readonly stints: readonly { readonly stint: string; readonly startS: number }[];
  }[],
): void {
  const planned = evas
    .flatMap((one) => one.stints.map((stint) => ({ ...stint, eva: one.eva })))
    .find(({ stint }) => stint.startsWith(`${task.id}/`));
  if (planned === undefined) {
    const first = task.stints[0]?.key;
    look({ selection: first === undefined ? { what: 'task', id: task.id } : { what: 'stint', id: first } });
  } else look({ evaId: planned.eva, selection: { what: 'stint', id: planned.stint }, minuteS: planned.startS });
}
