import type { Compilation } from '../engine/compilation.ts';
import type { Span } from '../model/model.ts';
import { HullPropagator } from '../propagators/hull.ts';
import { sideTerm } from './extreme.ts';

/** The cover runs exactly from its first to its last present member. Inferences `presence`, `bound`, `span`. */
export function postSpan(c: Span, index: number, at: Compilation): void {
  const { kernel } = at;
  const cover = at.interval(c.cover);
  const members = [...new Set(c.members)].map((id) => at.interval(id));
  const always = members.some(({ presence }) => presence < 0);
  for (const { presence } of members) {
    if (cover.presence >= 0) kernel.postClause([cover.presence, ...(presence < 0 ? [] : [presence ^ 1])], index);
  }
  if (!always) {
    const some = members.map(({ presence }) => presence);
    kernel.postClause(cover.presence < 0 ? some : [cover.presence ^ 1, ...some], index);
  }
  for (const member of members) {
    const conditions = [member.presence, cover.presence].filter((l) => l >= 0);
    kernel.postArc(cover.start, member.start, 0, conditions, index, 'bound');
    kernel.postArc(member.end, cover.end, 0, conditions, index, 'bound');
  }
  const starts = members.map(({ start, presence }) => ({ ...sideTerm(start, false), presence }));
  const ends = members.map(({ end, presence }) => ({ ...sideTerm(end, true), presence }));
  new HullPropagator(kernel, sideTerm(cover.start, false), starts, null, true, cover.presence, index, 'span');
  new HullPropagator(kernel, sideTerm(cover.end, true), ends, null, true, cover.presence, index, 'span');
}
