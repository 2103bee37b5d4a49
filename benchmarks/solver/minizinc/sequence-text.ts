import { FORBIDDEN, type Sequence } from '@handrail/solver/model/model';
import type { Names } from './names.ts';

/**
 * Where going through a third member is never quicker, no pair is forbidden and no total is asked for, pairs say it all.
 * Otherwise a circuit through the present members and a start node, whose arcs carry the transition times.
 */
export function sequenceText(constraint: Sequence, names: Names, id: number): string[] {
  const members = constraint.members.map(({ interval }) => interval);
  const gap = (i: number, j: number) => {
    const [a, b] = [constraint.members[i], constraint.members[j]];
    return constraint.transitions[(a?.endType ?? 0) * constraint.types + (b?.startType ?? 0)] as number;
  };
  const lines = isPairwise(constraint, names, gap)
    ? pairs(members, names, gap)
    : [...pairs(members, names, leastGaps(members, names, gap)), ...circuit(constraint, members, names, gap, id)];
  for (const [bound, isFirst] of [
    [constraint.first, true],
    [constraint.last, false],
  ] as const) {
    if (bound === null) continue;
    for (const other of members) {
      if (other === bound) continue;
      const [a, b] = isFirst ? [bound, other] : [other, bound];
      lines.push(names.when([names.present(a), names.present(b)], `${names.end(a)} <= ${names.start(b)}`));
    }
  }
  return lines;
}

function isPairwise(constraint: Sequence, names: Names, gap: (i: number, j: number) => number): boolean {
  if (constraint.transitionTotal !== null) return false;
  const indices = [...constraint.members.keys()];
  if (constraint.transitions.every((time) => time === 0)) return constraint.first === null && constraint.last === null;
  if (constraint.members.some(({ interval }) => names.shortest(interval) === 0)) return false;
  return indices.every((i) =>
    indices.every((j) => {
      if (i === j) return true;
      if (gap(i, j) >= FORBIDDEN) return false;
      return indices.every((k) => {
        if (k === i || k === j) return true;
        return (
          gap(i, j) <= gap(i, k) + names.shortest((constraint.members[k] as { interval: number }).interval) + gap(k, j)
        );
      });
    }),
  );
}

function pairs(members: readonly number[], names: Names, gap: (i: number, j: number) => number): string[] {
  const free = members.every((_, i) => members.every((__, j) => i === j || gap(i, j) === 0));
  if (free && members.every((id) => !names.isOptional(id))) {
    const [starts, durations] = [members.map((id) => names.start(id)), members.map((id) => names.duration(id))];
    return members.length < 2 ? [] : [`constraint disjunctive([${starts.join(', ')}], [${durations.join(', ')}]);`];
  }
  return members.flatMap((a, i) =>
    members.slice(i + 1).map((b, k) => {
      const j = i + 1 + k;
      const orders = [
        gap(i, j) >= FORBIDDEN ? [] : `${names.end(a)} + ${gap(i, j)} <= ${names.start(b)}`,
        gap(j, i) >= FORBIDDEN ? [] : `${names.end(b)} + ${gap(j, i)} <= ${names.start(a)}`,
      ].flat();
      return names.when([names.present(a), names.present(b)], orders.join(' \\/ ') || 'false');
    }),
  );
}

/** Least time between two members whatever is done between them; FORBIDDEN where no chain of steps leads there. */
function leastGaps(members: readonly number[], names: Names, gap: (i: number, j: number) => number) {
  const least = members.map((_, i) => members.map((__, j) => (i === j ? 0 : gap(i, j))));
  members.forEach((id, k) => {
    for (const row of least) {
      row.forEach((direct, j) => {
        const via = (row[k] as number) + names.shortest(id) + (least[k]?.[j] as number);
        if (via < direct) row[j] = via;
      });
    }
  });
  return (i: number, j: number) => least[i]?.[j] as number;
}

function circuit(
  constraint: Sequence,
  members: readonly number[],
  names: Names,
  gap: (i: number, j: number) => number,
  id: number,
): string[] {
  const n = members.length;
  const next = `next${id}`;
  const home = n + 1;
  const lines = [
    `array[1..${home}] of var 1..${home}: ${next};`,
    `constraint subcircuit(${next});`,
    `constraint (${next}[${home}] = ${home}) <-> not (${members.map((m) => names.present(m)).join(' \\/ ') || 'false'});`,
  ];
  const costs: string[] = [];
  members.forEach((a, i) => {
    lines.push(`constraint ${names.present(a)} <-> (${next}[${i + 1}] != ${i + 1});`);
    const row: number[] = [];
    members.forEach((b, j) => {
      const time = i === j ? 0 : gap(i, j);
      row.push(time >= FORBIDDEN ? 0 : time);
      if (i === j) return;
      const taken = `${next}[${i + 1}] = ${j + 1}`;
      const follows = `${names.end(a)} + ${time} <= ${names.start(b)}`;
      lines.push(time >= FORBIDDEN ? `constraint not (${taken});` : `constraint (${taken}) -> (${follows});`);
    });
    costs.push(`[${[...row, 0].join(', ')}][${next}[${i + 1}]]`);
    if (a === constraint.first) lines.push(names.when([names.present(a)], `${next}[${home}] = ${i + 1}`));
    if (a === constraint.last) lines.push(names.when([names.present(a)], `${next}[${i + 1}] = ${home}`));
  });
  if (constraint.transitionTotal !== null) {
    lines.push(`constraint v${constraint.transitionTotal} = ${costs.join(' + ') || '0'};`);
  }
  return lines;
}
