/** The shortest execution in which a pair goes the wrong way round: everything as early as it can be, given that. */
import { type Arc, SimpleNetwork } from '../network/simple-network.ts';
import type { TemporalNetwork } from '../network/temporal-network.ts';
import type { Race } from './find-races.ts';

export interface BreakingExecution {
  /** PET of every event. */
  readonly petS: readonly number[];
  /** Contingent links that take longer than planned in it, the most stretched first. */
  readonly stretched: readonly { readonly link: number; readonly takesS: number }[];
}

export function breakingExecution(
  network: TemporalNetwork,
  arcs: readonly Arc[],
  race: Race,
): BreakingExecution | null {
  // The second begins at least a second before the first is over.
  return earliestWith(network, arcs, [{ from: race.first.to, to: race.second.from, weightS: -1 }]);
}

/** Everything as early as it can be, given what must go wrong as well; null: it cannot. */
export function earliestWith(
  network: TemporalNetwork,
  arcs: readonly Arc[],
  wrong: readonly Arc[],
): BreakingExecution | null {
  const net = new SimpleNetwork(network.events.length, [...arcs, ...wrong]);
  if (!net.consistent) return null;
  const times = network.events.map((_, event) => net.least(0, event));
  const zero = times[network.petZero] as number;
  const petS = times.map((time) => time - zero);
  const stretched = network.contingents
    .map(({ from, to, plannedS }, link) => {
      const takesS = (petS[to] as number) - (petS[from] as number);
      return { link, takesS, overS: takesS - plannedS };
    })
    .filter(({ overS }) => overS > 0)
    .sort((a, b) => b.overS - a.overS)
    .map(({ link, takesS }) => ({ link, takesS }));
  return { petS, stretched };
}
