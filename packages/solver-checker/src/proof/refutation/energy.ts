import type { Times } from '../view.ts';

/** A member that is present, with what it asks for while it runs. */
export interface Load {
  readonly demand: number;
  readonly times: Times;
}

/** What the members cannot keep out of the stretch [a, b), times their demands, is more than there is. */
export function exceedsIn(loads: readonly Load[], capacity: number, a: number, b: number): boolean {
  if (b <= a) return false;
  let energy = 0;
  for (const { times, demand } of loads) {
    const pushedLeft = Math.min(b, times.end.min) - Math.max(a, times.start.min);
    const pushedRight = Math.min(b, times.end.max) - Math.max(a, times.start.max);
    energy += demand * Math.max(0, Math.min(pushedLeft, pushedRight, times.duration.min, b - a));
  }
  return energy > capacity * (b - a);
}

/** The stretch that a label `energy/A/B` proposes to look at; null: it proposes none. */
export function proposedStretch(label: string): readonly [number, number] | null {
  const [head, a, b] = label.split('/');
  return head === 'energy' && a !== undefined && b !== undefined ? [Number(a), Number(b)] : null;
}
