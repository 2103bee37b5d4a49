/**
 * One execution of a strategy: everything starts as soon as its waits allow, seeing only what has happened and been heard of.
 * For trying strategies out; a controllable network never fails here, whatever the lengths within the bounds.
 */
import type { Wait } from './check-controllability.ts';
import type { Stnu } from './stnu.ts';

export type Execution =
  | { readonly ok: true; readonly timesS: readonly number[] }
  | { readonly ok: false; readonly timesS: readonly number[]; readonly words: string };

/**
 * @param lengthsS the length of each contingent link
 * @param originS event 0 happens then; nothing happens before
 */
export function runStrategy(
  stnu: Stnu,
  strategy: readonly Wait[],
  lengthsS: readonly number[],
  originS = 0,
): Execution {
  const times = Array.from({ length: stnu.events }, () => Number.NaN);
  const linkOf = new Map(stnu.contingents.map((link, index) => [link.to, index]));
  const startedBy = new Map<number, number[]>();
  stnu.contingents.forEach(({ from }, index) => {
    const list = startedBy.get(from);
    if (list === undefined) startedBy.set(from, [index]);
    else list.push(index);
  });
  const waits = new Map<number, Wait[]>();
  const add = (wait: Wait): void => {
    const list = waits.get(wait.event);
    if (list === undefined) waits.set(wait.event, [wait]);
    else list.push(wait);
  };
  for (const wait of strategy) add(wait);
  for (const { from, to, leastS, mostS } of stnu.requirements) {
    if (leastS !== null && leastS >= 0) add({ event: to, after: from, waitS: leastS, until: null, heardS: 0 });
    if (mostS !== null && mostS <= 0) add({ event: from, after: to, waitS: -mostS, until: null, heardS: 0 });
  }
  const heard = (event: number, by: number): number => {
    const link = linkOf.get(event);
    const time = times[event] as number;
    if (link === undefined) return time;
    const contingent = stnu.contingents[link] as Stnu['contingents'][number];
    const shared = ((stnu.lanes?.[event] ?? 0) & (stnu.lanes?.[by] ?? 0)) !== 0;
    return shared ? time : time + (contingent.delayS ?? 0);
  };
  const over = (wait: Wait): number => {
    const after = times[wait.after] as number;
    if (wait.until !== null) {
      const { to } = stnu.contingents[wait.until] as Stnu['contingents'][number];
      const latest = after + wait.waitS;
      const called = Math.max(heard(to, wait.event), (times[to] as number) + wait.heardS);
      if (Number.isNaN(after)) return called;
      return Number.isNaN(called) ? latest : Math.min(latest, called);
    }
    const link = linkOf.get(wait.after);
    if (link === undefined) return after + wait.waitS;
    const { from, mostS } = stnu.contingents[link] as Stnu['contingents'][number];
    const known = Math.max(after + wait.waitS, heard(wait.after, wait.event));
    const sure = (times[from] as number) + mostS + wait.waitS;
    if (Number.isNaN(known)) return sure;
    return Number.isNaN(sure) ? known : Math.min(known, sure);
  };
  const together = zeroGroups(stnu, waits);
  const running = new Map<number, number>();
  const happen = (event: number, time: number): void => {
    times[event] = time;
    for (const link of startedBy.get(event) ?? []) running.set(link, time + (lengthsS[link] as number));
  };
  happen(0, originS);
  for (;;) {
    let next: { time: number; event: number; link: number } | null = null;
    for (const [link, time] of running) {
      if (next === null || time < next.time) next = { time, event: stnu.contingents[link]?.to as number, link };
    }
    for (let event = 0; event < stnu.events; event++) {
      if (!Number.isNaN(times[event]) || linkOf.has(event)) continue;
      let time = originS;
      for (const member of together.get(event) ?? [event]) {
        for (const wait of waits.get(member) ?? []) {
          if (together.get(event)?.has(wait.after) === true && Number.isNaN(times[wait.after])) continue;
          const done = over(wait);
          if (Number.isNaN(done)) time = Number.POSITIVE_INFINITY;
          else if (done > time) time = done;
        }
      }
      if (Number.isFinite(time) && (next === null || time < next.time)) next = { time, event, link: -1 };
    }
    if (next === null) break;
    if (next.link >= 0) running.delete(next.link);
    happen(next.event, next.time);
  }
  const never = times.findIndex((time) => Number.isNaN(time));
  if (never >= 0) return { ok: false, timesS: times, words: `event ${never} never happens` };
  for (const { from, to, leastS, mostS } of stnu.requirements) {
    const length = (times[to] as number) - (times[from] as number);
    if ((leastS !== null && length < leastS) || (mostS !== null && length > mostS)) {
      const words = `${length} s from ${from} to ${to}, not in [${leastS ?? '−∞'}, ${mostS ?? '∞'}]`;
      return { ok: false, timesS: times, words };
    }
  }
  return { ok: true, timesS: times };
}

/** Events that wait for each other without any time between: they happen at once, when the waits of all are over. */
function zeroGroups(stnu: Stnu, waits: ReadonlyMap<number, readonly Wait[]>): ReadonlyMap<number, ReadonlySet<number>> {
  const ends = new Set(stnu.contingents.map(({ to }) => to));
  const reach = (from: number): Set<number> => {
    const seen = new Set<number>([from]);
    for (const event of seen) {
      for (const { after, waitS, until } of waits.get(event) ?? []) {
        if (waitS === 0 && until === null && !ends.has(after)) seen.add(after);
      }
    }
    return seen;
  };
  const reached = Array.from({ length: stnu.events }, (_, event) => reach(event));
  const groups = new Map<number, Set<number>>();
  reached.forEach((seen, event) => {
    const group = new Set([...seen].filter((other) => reached[other]?.has(event) === true));
    if (group.size > 1) groups.set(event, group);
  });
  return groups;
}
