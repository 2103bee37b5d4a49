/** A plan that cannot be kept whatever the durations, as a finding: the limit that breaks, the sum, and what would do. */
import { formatDuration, formatPet } from '@handrail/quantity/time';
import type { Finding } from '../../finding/finding.ts';
import { proved } from '../claim/prove-finding.ts';
import type { LinkKind, TemporalNetwork } from '../network/temporal-network.ts';
import { type Conflict, conflictInWords } from './explain-conflict.ts';

export interface LeastChanges {
  /** Largest scale of the spreads that can be kept; null: none. */
  readonly scale: number | null;
  /** Latest egress that can be kept, seconds after the planned one; null: not even on time. */
  readonly latestEgressS: number | null;
  readonly slipS: number;
}

const RULES: Partial<Record<LinkKind, `proof/${string}`>> = {
  clock: 'proof/clocks-hold-for-all-durations',
  window: 'proof/windows-hold-for-all-durations',
  gate: 'proof/gates-hold-for-all-durations',
  request: 'proof/request-holds-hold-for-all-durations',
  lag: 'proof/lags-hold-for-all-durations',
  wall: 'proof/the-wall-holds-for-all-durations',
};

export function controlFinding(network: TemporalNetwork, conflict: Conflict, changes: LeastChanges): Finding {
  const [limit] = conflict.limits;
  const rule = (limit === undefined ? undefined : RULES[limit.kind]) ?? 'proof/order-leaves-a-way';
  const broken = conflict.limits.map(({ reason }) => reason);
  const at = limit === undefined ? undefined : network.events[limit.to];
  const stint = at?.stint ?? conflict.chain.find((link) => link.stint !== null)?.stint ?? null;
  return proved(rule, {
    title:
      limit === undefined
        ? `The orders of EVA ${network.eva} contradict each other`
        : `Whatever the crew does, some durations break ${broken.length > 1 ? `${broken.slice(0, -1).join(', ')} and ${broken.at(-1)}` : broken[0]}`,
    why: conflictInWords(conflict),
    mend: mend(conflict, changes),
    eva: network.eva,
    stint,
    petS: at?.plannedS ?? null,
    span: limit?.span ?? null,
  });
}

function mend({ shortS }: Conflict, { scale, latestEgressS, slipS }: LeastChanges): string {
  const ways = [`${formatDuration(shortS)} less on the chain: drop or shorten work on it`];
  if (scale !== null)
    ways.push(`or narrower bounds: it can be kept for spreads up to ${Math.floor(scale * 100)} % of those stated`);
  if (latestEgressS !== null && slipS > 0 && latestEgressS < slipS) {
    ways.push(`or egress no later than ${formatPet(latestEgressS)} after the planned time`);
  }
  return ways.join('; ');
}
