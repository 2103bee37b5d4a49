import type { Alternative, Extreme, Span } from '@handrail/solver/model/model';
import type { Range, View } from '../view.ts';

export function refutesAlternative({ master, options }: Alternative, view: View): boolean {
  const isTwice = options.some((option, i) => view.isPresent(option) && options.indexOf(option) !== i);
  const sure = new Set(options.filter((option) => view.isPresent(option)));
  if (isTwice || sure.size > 1 || (sure.size > 0 && view.isAbsent(master))) return true;
  if (!view.isPresent(master)) return false;
  const whole = view.times(master);
  // An option's times are met with its master's already; what is left may be empty.
  const isPossible = (option: number) => {
    if (view.isAbsent(option)) return false;
    const times = view.times(option);
    return (['start', 'end', 'duration'] as const).every((part) => meets(times[part], whole[part]));
  };
  const chosen = [...sure][0];
  return chosen === undefined ? !options.some(isPossible) : !isPossible(chosen);
}

export function refutesSpan({ cover, members }: Span, view: View): boolean {
  const sure = members.filter((member) => view.isPresent(member));
  if (view.isAbsent(cover)) return sure.length > 0;
  if (!view.isPresent(cover)) return false;
  const whole = view.times(cover);
  if (sure.some((m) => view.times(m).start.max < whole.start.min || view.times(m).end.min > whole.end.max)) return true;
  const possible = members.filter((member) => !view.isAbsent(member));
  return (['start', 'end'] as const).some((part) => !possible.some((m) => meets(view.times(m)[part], whole[part])));
}

export function refutesExtreme({ which, result, points, otherwise }: Extreme, view: View): boolean {
  const range = view.variable(result);
  const sure = points.filter(({ interval }) => view.isPresent(interval));
  const isBeyond = ({ min, max }: Range) => (which === 'max' ? min > range.max : max < range.min);
  if (sure.some((point) => isBeyond(view.instant(point)))) return true;
  if (sure.length === 0 && otherwise >= range.min && otherwise <= range.max) return false;
  const possible = points.filter(({ interval }) => !view.isAbsent(interval));
  return !possible.some((point) => meets(view.instant(point), range));
}

function meets(a: Range, b: Range): boolean {
  return Math.max(a.min, b.min) <= Math.min(a.max, b.max);
}
