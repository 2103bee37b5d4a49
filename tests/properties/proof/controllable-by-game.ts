/**
 * Dynamic controllability by playing it out: every choice of the executor against every choice of nature, second by second. A
 * second method, for networks of a handful of events; it shares nothing with the decision under test.
 *
 * At each second nature ends what it ends, then the executor, having seen that, does what it does.
 */
import type { Stnu } from '@handrail/eva/proof/control/stnu';

export function controllableByGame(stnu: Stnu, horizonS: number): boolean {
  const linkOf = new Map(stnu.contingents.map((link) => [link.to, link]));
  const known = new Map<string, boolean>();

  const broken = (times: readonly number[], now: number): boolean =>
    stnu.requirements.some(({ from, to, leastS, mostS }) => {
      const [a, b] = [times[from] as number, times[to] as number];
      if (a >= 0 && b >= 0) return (leastS !== null && b - a < leastS) || (mostS !== null && b - a > mostS);
      // Not yet there: it will be later than now.
      if (a >= 0 && b < 0) return mostS !== null && now + 1 - a > mostS;
      if (b >= 0 && a < 0) return leastS !== null && b - (now + 1) < leastS;
      return false;
    });

  /** Nature to move at `now`. */
  const nature = (times: readonly number[], now: number): boolean => {
    if (times.every((time) => time >= 0)) return true;
    if (now > horizonS) return false;
    const key = `${now}|${times.join()}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const may: number[] = [];
    const must: number[] = [];
    for (const [end, { from, leastS, mostS }] of linkOf) {
      const start = times[from] as number;
      if ((times[end] as number) >= 0 || start < 0) continue;
      if (now - start === mostS) must.push(end);
      else if (now - start >= leastS) may.push(end);
    }
    let wins = true;
    for (let choice = 0; choice < 1 << may.length && wins; choice++) {
      const after = [...times];
      for (const end of must) after[end] = now;
      may.forEach((end, bit) => {
        if ((choice >> bit) & 1) after[end] = now;
      });
      wins = executor(after, now);
    }
    known.set(key, wins);
    return wins;
  };

  const executor = (times: readonly number[], now: number): boolean => {
    const open = times.flatMap((time, event) => (time < 0 && !linkOf.has(event) ? [event] : []));
    for (let choice = 0; choice < 1 << open.length; choice++) {
      const after = [...times];
      open.forEach((event, bit) => {
        if ((choice >> bit) & 1) after[event] = now;
      });
      if (!broken(after, now) && nature(after, now + 1)) return true;
    }
    return false;
  };

  const start = Array.from({ length: stnu.events }, () => -1);
  start[0] = 0;
  return executor(start, 0);
}
