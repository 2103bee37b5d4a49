import type { Point, State } from '@handrail/solver/model/model';
import type { Names } from './names.ts';

/** Each need chooses who supplies its value, the initial value or a writer; every other writer stays out from between. */
export function stateText(constraint: State, names: Names, id: number): string[] {
  const writers = constraint.writers.map((writer, i) => ({
    owner: writer.from.interval,
    present: bothPresent(writer, names),
    from: names.point(writer.from),
    to: names.point(writer.to),
    value: writer.value,
    rank: `rank${id}[${i + 1}]`,
  }));
  const lines: string[] = [];
  if (writers.length > 0) lines.push(`array[1..${writers.length}] of var 1..${writers.length}: rank${id};`);
  const earlier = (a: (typeof writers)[number], b: (typeof writers)[number]) =>
    `${a.rank} < ${b.rank} /\\ ${a.to} <= ${b.from}`;
  writers.forEach((a, i) => {
    for (const b of writers.slice(i + 1)) {
      lines.push(names.when([a.present, b.present], `(${earlier(a, b)}) \\/ (${earlier(b, a)})`));
    }
  });
  constraint.needs.forEach((need, n) => {
    const owner = need.from.interval;
    const present = bothPresent(need, names);
    const own = writers.filter((writer) => writer.owner === owner);
    const from = earliest(
      [need.from, ...constraint.writers.filter((w) => w.from.interval === owner).map((w) => w.from)],
      names,
    );
    const to = names.point(need.to);
    const foreign = writers.filter((writer) => !own.includes(writer));
    const supply = `supply${id}_${n}`;
    lines.push(`var 0..${foreign.length}: ${supply};`);
    foreign.forEach((writer, k) => {
      const chosen = `${supply} = ${k + 1}`;
      if (!need.allowed.includes(writer.value)) {
        lines.push(names.when([present], `${supply} != ${k + 1}`));
      } else {
        lines.push(names.when([present, chosen], `${writer.present} /\\ ${writer.to} <= ${from}`));
        for (const other of foreign) {
          if (other === writer) continue;
          lines.push(
            names.when([present, chosen, other.present], `(${earlier(other, writer)}) \\/ ${other.from} >= ${to}`),
          );
        }
      }
      // Served by the initial value: nobody writes before the need is over.
      lines.push(names.when([present, `${supply} = 0`, writer.present], `${writer.from} >= ${to}`));
    });
    if (!need.allowed.includes(constraint.initial)) lines.push(names.when([present], `${supply} != 0`));
    lines.push(names.when([present === 'true' ? 'false' : `not ${present}`], `${supply} = 0`));
  });
  return lines;
}

function bothPresent({ from, to }: { readonly from: Point; readonly to: Point }, names: Names): string {
  const parts = [...new Set([names.present(from.interval), names.present(to.interval)])].filter((p) => p !== 'true');
  return parts.length === 0 ? 'true' : `(${parts.join(' /\\ ')})`;
}

function earliest(points: readonly Point[], names: Names): string {
  const instants = [...new Set(points.map((point) => names.point(point)))];
  return instants.length === 1 ? (instants[0] as string) : `min([${instants.join(', ')}])`;
}
