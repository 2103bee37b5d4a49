import { ModelBuilder, endOf, not, startOf } from '@handrail/solver/model/build-model';
import type { IntervalId, Literal, Model } from '@handrail/solver/model/model';
import { finishAtTheLatestEnd } from './finish-at-the-latest-end.ts';

/**
 * Project scheduling with skills (MSPSP, `.dzn`): each activity needs so many people of each skill at once, a person lends one
 * skill to one activity at a time. Minimise the makespan. @source [YOUNG-FEYDY-SCHUTT-2017]
 *
 * Who works on what is a boolean a person and activity; two activities that share a person come one after the other, by a pair of
 * booleans on which each precedence hangs. Redundant, for a view that does not wait for names: a cumulative for sets of skills, whose
 * capacity is the number of people with any of these skills, and an order for each pair of activities that people do not suffice for at once.
 */
export function readMultiSkill(text: string, name: string): Model {
  const { durations, needs, masters, arcs } = readTables(text);
  const people = masters.map((_, person) => person);
  const builder = new ModelBuilder(
    name,
    durations.reduce((sum, duration) => sum + duration, 0),
  );
  const ids = durations.map((duration, i) => builder.interval(`activity ${i + 1}`, duration));
  for (const [a, b] of arcs) {
    const [from, to] = [endOf(ids[a] as number), startOf(ids[b] as number)];
    builder.post({ kind: 'precedence', from, to, lag: 0, when: [], tag: null });
  }
  /** Per activity and person: whether that person works on it. */
  const works = needs.map((need, activity) => {
    const skills = need.flatMap((count, skill) => (count > 0 ? [skill] : []));
    const lends: Literal[][] = skills.map(() => []);
    const crew = new Map<number, Literal>();
    for (const person of people) {
      const able = skills.filter((skill) => masters[person]?.[skill]);
      if (able.length === 0) continue;
      const title = `person ${person + 1} on activity ${activity + 1}`;
      const isOn = builder.boolean(title);
      crew.set(person, isOn);
      const roles = able.map((skill) => {
        const role = able.length === 1 ? isOn : builder.boolean(`${title} with skill ${skill + 1}`);
        lends[skills.indexOf(skill)]?.push(role);
        return role;
      });
      if (roles.length > 1) postOneRole(builder, isOn, roles);
    }
    skills.forEach((skill, k) => postCount(builder, lends[k] ?? [], need[skill] as number));
    postCount(
      builder,
      [...crew.values()],
      need.reduce((sum, count) => sum + count, 0),
    );
    return crew;
  });
  postSkillSets(builder, ids, needs, masters);
  const isAfter = reachability(durations.length, arcs);
  needs.forEach((need, a) => {
    for (let b = a + 1; b < needs.length; b++) {
      if (isAfter[a]?.[b] || isAfter[b]?.[a]) continue;
      const joint = need.map((count, skill) => count + (needs[b]?.[skill] as number));
      const shared = people.flatMap((person) => {
        const [one, two] = [works[a]?.get(person), works[b]?.get(person)];
        return one === undefined || two === undefined ? [] : [[not(one), not(two)]];
      });
      const mustBeApart = !canBeMet(joint, masters);
      if (shared.length === 0 && !mustBeApart) continue;
      const orders = [
        [a, b],
        [b, a],
      ].map(([first, second]) => {
        const isFirst = builder.boolean(`activity ${(first as number) + 1} before ${(second as number) + 1}`);
        const [from, to] = [endOf(ids[first as number] as number), startOf(ids[second as number] as number)];
        builder.post({ kind: 'precedence', from, to, lag: 0, when: [isFirst], tag: null });
        return isFirst;
      });
      if (mustBeApart) builder.post({ kind: 'clause', literals: orders, tag: null });
      else for (const pair of shared) builder.post({ kind: 'clause', literals: [...pair, ...orders], tag: null });
    }
  });
  finishAtTheLatestEnd(builder, ids.slice(-1));
  return builder.build();
}

function postCount(builder: ModelBuilder, literals: readonly Literal[], count: number): void {
  for (const sign of [1, -1]) {
    const terms = literals.map(({ variable }) => ({ coefficient: sign, variable }));
    builder.post({ kind: 'linear', expression: { terms, constant: 0 }, bound: sign * count, when: [], tag: null });
  }
}

/** Which activities come after which by the arcs alone. */
function reachability(count: number, arcs: readonly (readonly [number, number])[]): boolean[][] {
  const after = Array.from({ length: count }, () => Array<boolean>(count).fill(false));
  for (const [a, b] of arcs) (after[a] as boolean[])[b] = true;
  for (let k = 0; k < count; k++) {
    for (const row of after) if (row[k]) for (let j = 0; j < count; j++) if (after[k]?.[j]) row[j] = true;
  }
  return after;
}

/** A person who works lends exactly one of the skills; one who does not lends none. */
function postOneRole(builder: ModelBuilder, works: Literal, roles: readonly Literal[]): void {
  builder.post({ kind: 'clause', literals: [not(works), ...roles], tag: null });
  roles.forEach((role, i) => {
    builder.post({ kind: 'clause', literals: [not(role), works], tag: null });
    for (const other of roles.slice(i + 1)) {
      builder.post({ kind: 'clause', literals: [not(role), not(other)], tag: null });
    }
  });
}

function postSkillSets(
  builder: ModelBuilder,
  ids: readonly IntervalId[],
  needs: readonly (readonly number[])[],
  masters: readonly (readonly boolean[])[],
): void {
  const skills = needs[0]?.length ?? 0;
  const every = Array.from({ length: skills }, (_, skill) => skill);
  const sets: number[][] = every.map((skill) => [skill]);
  for (const a of every) for (const b of every.slice(a + 1)) sets.push([a, b]);
  if (skills <= 4) for (const out of every) sets.push(every.filter((skill) => skill !== out));
  sets.push(every);
  const posted = new Set<string>();
  for (const set of sets) {
    if (posted.has(String(set))) continue;
    posted.add(String(set));
    const capacity = masters.filter((person) => set.some((skill) => person[skill])).length;
    const members = needs.flatMap((need, i) => {
      const demand = set.reduce((sum, skill) => sum + (need[skill] as number), 0);
      return demand > 0 ? [{ interval: ids[i] as number, demand }] : [];
    });
    const total = members.reduce((sum, { demand }) => sum + demand, 0);
    if (total > capacity) builder.post({ kind: 'cumulative', capacity, members, tag: null });
  }
}

/** Bipartite matching by augmenting paths: one person for every unit of need. */
function canBeMet(need: readonly number[], masters: readonly (readonly boolean[])[]): boolean {
  const units = need.flatMap((count, skill) => Array<number>(count).fill(skill));
  const unitOf: (number | null)[] = masters.map(() => null);
  const place = (unit: number, tried: Set<number>): boolean =>
    masters.some((skills, person) => {
      if (!skills[units[unit] as number] || tried.has(person)) return false;
      tried.add(person);
      const held = unitOf[person] ?? null;
      if (held !== null && !place(held, tried)) return false;
      unitOf[person] = unit;
      return true;
    });
  return units.every((_, unit) => place(unit, new Set()));
}

function readTables(text: string) {
  const list = (key: string) => text.match(new RegExp(`^${key}\\s*=\\s*\\[([^\\]]*)\\]`, 'm'))?.[1] ?? '';
  const numbers = (key: string) =>
    list(key)
      .split(',')
      .filter((item) => item.trim() !== '')
      .map(Number);
  const rows = (key: string) =>
    list(key)
      .split('|')
      .map((row) =>
        row
          .split(',')
          .map((item) => item.trim())
          .filter((item) => item !== ''),
      )
      .filter((row) => row.length > 0);
  const [before, after] = [numbers('pred'), numbers('succ')];
  const tables = {
    durations: numbers('dur'),
    needs: rows('sreq').map((row) => row.map(Number)),
    masters: rows('mastery').map((row) => row.map((item) => item === 'true')),
    arcs: before.map((from, i) => [from - 1, (after[i] as number) - 1] as const),
  };
  if (tables.durations.length === 0 || tables.needs.length !== tables.durations.length || tables.masters.length === 0) {
    throw new Error('not a project with skills');
  }
  return tables;
}
