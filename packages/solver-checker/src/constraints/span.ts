import type { Span } from '@handrail/solver/model/model';
import type { Assignment } from '../assignment.ts';

export function span(constraint: Span, at: Assignment): string[] {
  const { cover, members } = constraint;
  const present = members.filter((member) => at.isPresent(member));
  const name = at.interval(cover).name;
  if (!at.isPresent(cover)) {
    return present.length === 0 ? [] : [`${name} is absent but ${present.length} of its members are present`];
  }
  if (present.length === 0) return [`${name} is present but none of its members is`];
  const start = Math.min(...present.map((member) => at.startOf(member)));
  const end = Math.max(...present.map((member) => at.endOf(member)));
  if (at.startOf(cover) === start && at.endOf(cover) === end) return [];
  return [`${at.describe(cover)} does not cover its members exactly: they run over [${start}, ${end})`];
}
