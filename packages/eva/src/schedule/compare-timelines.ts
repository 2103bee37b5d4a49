/** What changed between two timelines: stints moved, people changed, tasks in and out, when both are in. */
import type { EvaTimeline, PlannedStint, Timeline } from '../timeline/timeline.ts';

export interface TimelineChanges {
  readonly evas: readonly EvaChanges[];
  readonly tasksIn: readonly string[];
  readonly tasksOut: readonly string[];
}
export interface EvaChanges {
  readonly eva: string;
  /** Seconds later; null: the EVA is in only one of the two. */
  readonly bothInLaterS: number | null;
  readonly stints: readonly StintChange[];
}
export interface StintChange {
  readonly stint: string;
  readonly kind: 'moved' | 'added' | 'removed';
  /** Seconds later by its start; 0 where only people or length changed. */
  readonly laterS: number;
  readonly longerS: number;
  readonly from: PlannedStint | null;
  readonly to: PlannedStint | null;
  /** Roles filled by somebody else: index and the two bodies. */
  readonly people: readonly { readonly role: number; readonly from: string; readonly to: string }[];
}

export function compareTimelines(a: Timeline, b: Timeline): TimelineChanges {
  const evas = [...new Set([...a.evas, ...b.evas].map(({ eva }) => eva))];
  const [before, after] = [a, b].map(({ evas: list }) => new Set(list.flatMap(({ tasks }) => tasks))) as [
    Set<string>,
    Set<string>,
  ];
  return {
    evas: evas.map((id) => compareEva(id, find(a, id), find(b, id))),
    tasksIn: [...after].filter((id) => !before.has(id)),
    tasksOut: [...before].filter((id) => !after.has(id)),
  };
}

function find(timeline: Timeline, id: string): EvaTimeline | null {
  return timeline.evas.find(({ eva }) => eva === id) ?? null;
}

function compareEva(eva: string, a: EvaTimeline | null, b: EvaTimeline | null): EvaChanges {
  const before = new Map((a?.stints ?? []).map((stint) => [stint.stint, stint]));
  const after = new Map((b?.stints ?? []).map((stint) => [stint.stint, stint]));
  const changes = [...new Set([...before.keys(), ...after.keys()])].flatMap((key) =>
    compareStint(key, before.get(key) ?? null, after.get(key) ?? null),
  );
  return { eva, bothInLaterS: a === null || b === null ? null : b.bothInS - a.bothInS, stints: changes };
}

function compareStint(stint: string, from: PlannedStint | null, to: PlannedStint | null): StintChange[] {
  if (from === null || to === null) {
    return [{ stint, kind: from === null ? 'added' : 'removed', laterS: 0, longerS: 0, from, to, people: [] }];
  }
  const people = to.assigned.flatMap((id, role) => {
    const was = from.assigned[role];
    return was === undefined || was === id ? [] : [{ role, from: was, to: id }];
  });
  const laterS = to.startS - from.startS;
  const longerS = to.endS - to.startS - (from.endS - from.startS);
  if (laterS === 0 && longerS === 0 && people.length === 0) return [];
  return [{ stint, kind: 'moved', laterS, longerS, from, to, people }];
}
