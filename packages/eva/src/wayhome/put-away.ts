import type { WayHomeGround } from './safe-until.ts';
import { verbSeconds } from './step-time.ts';
import type { WayHomeCase } from './way-home-state.ts';

/** To put what fills the hands where one stands, tethered. A kind that cannot be put down takes as long as the slowest that can. */
export function putSeconds(ground: WayHomeGround, id: string, pace: number, what: WayHomeCase): number {
  const piece = ground.facts.hardware.get(id) ?? null;
  const verb = ground.library.kinds.get(piece?.kind ?? '')?.verbs.find((candidate) => candidate.id === 'put');
  if (verb !== undefined) return verbSeconds(verb, piece, pace, what.basis);
  const all = [...ground.library.kinds.values()].flatMap((kind) =>
    kind.verbs.filter((candidate) => candidate.id === 'put'),
  );
  return Math.max(0, ...all.map((candidate) => verbSeconds(candidate, piece, pace, what.basis)));
}

export function putWords(ground: WayHomeGround, id: string): string {
  return `put ${ground.facts.hardware.get(id)?.title ?? id} here, tethered`;
}
