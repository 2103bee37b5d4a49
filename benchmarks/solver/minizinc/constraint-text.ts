import type { Constraint, Cumulative, Extreme, Reservoir, Span, Windows } from '@handrail/solver/model/model';
import type { Names } from './names.ts';
import { sequenceText } from './sequence-text.ts';
import { stateText } from './state-text.ts';

/** The MiniZinc lines of one constraint; `id` makes the names of auxiliary variables its own. */
export function constraintText(constraint: Constraint, names: Names, id: number): string[] {
  switch (constraint.kind) {
    case 'precedence': {
      const { from, to, lag, when } = constraint;
      const conditions = [
        ...when.map((l) => names.literal(l)),
        names.present(from.interval),
        names.present(to.interval),
      ];
      return [names.when(conditions, `${names.point(to)} >= ${names.point(from)} + ${lag}`)];
    }
    case 'alternative': {
      const { master, options } = constraint;
      const count = options.map((option) => `bool2int(${names.present(option)})`).join(' + ');
      const links = options.map((option) => {
        const same = ['start', 'end', 'duration'] as const;
        const equal = same.map((part) => `${names[part](option)} = ${names[part](master)}`);
        return names.when([names.present(option)], equal.join(' /\\ '));
      });
      return [`constraint ${count || '0'} = bool2int(${names.present(master)});`, ...links];
    }
    case 'span':
      return spanText(constraint, names);
    case 'sequence':
      return sequenceText(constraint, names, id);
    case 'cumulative':
      return cumulativeText(constraint, names);
    case 'reservoir':
      return reservoirText(constraint, names);
    case 'windows':
      return windowsText(constraint, names);
    case 'state':
      return stateText(constraint, names, id);
    case 'clause':
      return [`constraint ${constraint.literals.map((literal) => names.literal(literal)).join(' \\/ ') || 'false'};`];
    case 'linear': {
      const conditions = constraint.when.map((literal) => names.literal(literal));
      return [names.when(conditions, `${names.sum(constraint.expression)} <= ${constraint.bound}`)];
    }
    default:
      return extremeText(constraint, names);
  }
}

function spanText({ cover, members }: Span, names: Names): string[] {
  const present = names.present(cover);
  const some = members.map((member) => names.present(member)).join(' \\/ ') || 'false';
  const meets = (part: 'start' | 'end') =>
    members.map((m) => `(${names.present(m)} /\\ ${names[part](m)} = ${names[part](cover)})`).join(' \\/ ') || 'false';
  const within = members.map((m) =>
    names.when(
      [names.present(m)],
      `${names.start(cover)} <= ${names.start(m)} /\\ ${names.end(m)} <= ${names.end(cover)}`,
    ),
  );
  const touching = (['start', 'end'] as const).map((part) => names.when([present], meets(part)));
  return [`constraint ${present} <-> (${some});`, ...within, ...touching];
}

function cumulativeText({ capacity, members }: Cumulative, names: Names): string[] {
  const real = members.filter(({ interval, demand }) => demand > 0 && names.duration(interval) !== '0');
  if (real.length === 0) return capacity < 0 ? ['constraint false;'] : [];
  const list = (text: (interval: number, demand: number) => string) =>
    `[${real.map(({ interval, demand }) => text(interval, demand)).join(', ')}]`;
  const starts = list((id) => names.start(id));
  const durations = list((id) => names.duration(id));
  const demands = list((id, demand) => {
    return names.isOptional(id) ? `${demand} * bool2int(${names.present(id)})` : String(demand);
  });
  return [`constraint cumulative(${starts}, ${durations}, ${demands}, ${capacity});`];
}

/** The level after each event counts everything that has happened by its instant, events of the same instant included. */
function reservoirText({ initial, min, max, events }: Reservoir, names: Names): string[] {
  if (initial < min || initial > max) return ['constraint false;'];
  return events.map((event) => {
    const instant = names.point(event.at);
    const happened = events.map((other) => {
      const both = [names.present(other.at.interval), `${names.point(other.at)} <= ${instant}`];
      return `${other.change} * bool2int(${both.filter((part) => part !== 'true').join(' /\\ ')})`;
    });
    const level = `(${[initial, ...happened].join(' + ')})`;
    return names.when([names.present(event.at.interval)], `${level} >= ${min} /\\ ${level} <= ${max}`);
  });
}

function windowsText({ mode, from, to, windows, when }: Windows, names: Names): string[] {
  const conditions = [...when.map((l) => names.literal(l)), names.present(from.interval), names.present(to.interval)];
  const [begin, finish] = [names.point(from), names.point(to)];
  if (mode === 'inside') {
    const inside = windows.map(([a, b]) => `(${begin} >= ${a} /\\ ${begin} < ${b} /\\ ${finish} <= ${b})`);
    return [names.when(conditions, inside.join(' \\/ ') || 'false')];
  }
  return windows.map(([a, b]) =>
    names.when(conditions, `${begin} >= ${b} \\/ (${begin} < ${a} /\\ ${finish} <= ${a})`),
  );
}

function extremeText({ which, result, points, otherwise }: Extreme, names: Names): string[] {
  if (points.length > 0 && points.every((point) => !names.isOptional(point.interval))) {
    return [`constraint v${result} = ${which}([${points.map((point) => names.point(point)).join(', ')}]);`];
  }
  const relation = which === 'max' ? '>=' : '<=';
  const bounds = points.map((point) => {
    return names.when([names.present(point.interval)], `v${result} ${relation} ${names.point(point)}`);
  });
  const attained = points.map((p) => `(${names.present(p.interval)} /\\ v${result} = ${names.point(p)})`);
  const none = points.map((point) => `not ${names.present(point.interval)}`);
  const nothing = `(${[...none, `v${result} = ${otherwise}`].join(' /\\ ')})`;
  return [...bounds, `constraint ${[...attained, nothing].join(' \\/ ')};`];
}
