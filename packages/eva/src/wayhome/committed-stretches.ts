/**
 * Stretches of one person's EVA from which no safe stop is in reach: something open that nothing closes from there, a clock that
 * cannot be stopped, a plate without a way down if the arm stops, a step that the text calls no safe stop. The other person is
 * taken where the plan has them.
 *
 * A stretch whose only cause is a clock threatens the hardware, not the crew: they can still go home.
 */
import type { EvaProgress } from './eva-progress.ts';
import type { Solve } from './solve-state.ts';
import type { Blocked, WayHome } from './way-home-plan.ts';
import type { ArmIs } from './way-home-state.ts';
import { worstOfPair } from './worst-over-pairs.ts';

export interface CommittedStretch {
  readonly person: string;
  readonly startS: number;
  readonly endS: number;
  readonly causes: readonly Blocked[];
  /** In words, each once. */
  readonly why: readonly string[];
  /** Stint in which it begins; null: on the way. */
  readonly entry: string | null;
  /** Only while the arm does not move. */
  readonly ifArmStops: boolean;
}

export function committedStretches(
  progress: EvaProgress,
  solve: Solve,
  arms: readonly ArmIs[],
): readonly CommittedStretch[] {
  const stintsOf = new Map(progress.eva.stints.map((planned) => [planned.stint, planned.assigned] as const));
  return progress.persons.flatMap((person, at) => {
    const found: { -readonly [key in keyof CommittedStretch]: CommittedStretch[key] }[] = [];
    for (const segment of progress.segments[at] ?? []) {
      if (segment.kind === 'inside' || segment.endS <= segment.startS) continue;
      // The other's progress may change within the segment: each of their planned segments in it counts.
      const others =
        progress.persons.length < 2
          ? [null]
          : (progress.segments[1 - at] ?? []).filter(
              (other) => other.startS < segment.endS && segment.startS < other.endS,
            );
      const own = (cause: WayHome['blocked'][number]): boolean =>
        cause.by.length === 0 || cause.by.some((by) => by === person || (stintsOf.get(by)?.includes(person) ?? false));
      const ways = (arm: ArmIs): WayHome[] =>
        others.flatMap((other) => {
          const now = other === null ? [segment] : at === 0 ? [segment, other] : [other, segment];
          return worstOfPair(now, 'terminate', solve, [arm], (one) => progress.turnsAtEnd(one));
        });
      const alive = ways('alive').flatMap((way) => way.blocked.filter(own));
      const dead =
        arms.includes('dead') && segment.onArm !== null ? ways('dead').flatMap((way) => way.blocked.filter(own)) : [];
      const blocked = [...alive, ...dead];
      if (blocked.length === 0) continue;
      const causes = [...new Set(blocked.map((one) => one.cause))];
      const why = [...new Set(blocked.map((one) => one.words))];
      const last = found.at(-1);
      if (last !== undefined && last.endS >= segment.startS - 1e-6) {
        last.endS = segment.endS;
        last.causes = [...new Set([...last.causes, ...causes])];
        last.why = [...new Set([...last.why, ...why])];
        last.ifArmStops = last.ifArmStops && alive.length === 0;
        continue;
      }
      found.push({
        person,
        startS: segment.startS,
        endS: segment.endS,
        causes,
        why,
        entry: segment.stint,
        ifArmStops: alive.length === 0,
      });
    }
    return found;
  });
}
