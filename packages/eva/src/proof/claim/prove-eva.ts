/** The proofs of one EVA: order, then timing with the holds that the order asks for, then how much spread it bears. */
import { formatDuration } from '@handrail/quantity/time';
import type { Campaign } from '../../campaign/campaign.ts';
import type { Finding } from '../../finding/finding.ts';
import type { HardwareModel } from '../../hardware/effects.ts';
import type { Timeline } from '../../timeline/timeline.ts';
import { checkControllability } from '../control/check-controllability.ts';
import { controlFinding } from '../control/control-findings.ts';
import { type Conflict, explainConflict } from '../control/explain-conflict.ts';
import { largestSpreadScale } from '../control/largest-spread-scale.ts';
import { networkStnu } from '../control/network-stnu.ts';
import { type SpokenHold, spokenHolds } from '../control/spoken-holds.ts';
import { flexiblePlan, slipLeftS } from '../network/flexible-plan.ts';
import { type AgreedHold, moveSpreadOf, type NetworkOptions } from '../network/network-draft.ts';
import type { TemporalNetwork } from '../network/temporal-network.ts';
import { findRaces } from '../race/find-races.ts';
import { leastHolds } from '../race/least-holds.ts';
import { raceFindings } from '../race/race-findings.ts';
import { responseFindings } from '../race/response-findings.ts';
import { brokenByResponses, responseWrites } from '../race/response-writes.ts';
import { stateAccesses } from '../race/state-accesses.ts';
import type { ReplayContext } from '../replay/replay-context.ts';
import { probabilityInBounds } from './probability-in-bounds.ts';
import { proved } from './prove-finding.ts';

/** More conflicts than this of one EVA are not told one by one. */
const MOST_CONFLICTS = 8;

export interface EvaProof {
  readonly eva: string;
  readonly raceFree: boolean;
  /** Pairs of a change and another access of the same state that were looked at. */
  readonly pairs: number;
  /** Holds that would put every raced pair in order; what follows is told as if they were agreed. */
  readonly proposedHolds: readonly AgreedHold[];
  readonly controllable: boolean;
  /** The first; every further limit that breaks is a finding of its own. */
  readonly conflict: Conflict | null;
  /** The waits of the strategy, spoken. */
  readonly holds: readonly SpokenHold[];
  readonly durations: EvaDurations;
  /** Largest scale of the spreads that can be kept, λ; null: not even the planning figures. */
  readonly scale: number | null;
  /** λ is at least that: no larger one was tried. */
  readonly scaleIsMost: boolean;
  /** P(all durations whose bounds are stated lie within them, scaled by λ); null: no spread is known. */
  readonly probabilityAtScale: number | null;
  /** Latest egress that can be kept, seconds after the planned one; null: none. */
  readonly latestEgressS: number | null;
  readonly slipS: number;
  readonly reactionS: number;
  readonly events: number;
  readonly findings: readonly Finding[];
  readonly assumptions: readonly string[];
}

/** D: the set of durations for which the claim is made. */
export interface EvaDurations {
  readonly stints: number;
  /** Scale of the stated spreads that D takes; 1: as stated. */
  readonly scale: number;
  readonly bounded: number;
  /** Stint keys without bounds, taken as exactly their planning figure. */
  readonly unbounded: readonly string[];
  /** Factors of moves and passages; null: taken as exact. */
  readonly moveSpread: readonly [number, number] | null;
  /** P(all durations whose bounds are stated lie within them), independent of each other; null: no spread is known. */
  readonly probability: number | null;
}

export interface ProofOptions extends NetworkOptions {
  /** The largest scale of the spreads that is tried; absent: 3. */
  readonly mostScale?: number;
  /** Share of the variance of durations that is common to all, for P(D); absent: 0. */
  readonly paceShare?: number;
}

export function proveEva(
  campaign: Campaign,
  hardware: HardwareModel,
  timeline: Timeline,
  context: ReplayContext,
  eva: string,
  options: ProofOptions,
): EvaProof | null {
  const draw = (more: NetworkOptions): TemporalNetwork | null =>
    flexiblePlan(campaign, hardware, timeline, eva, { ...options, ...more });
  const written = draw({});
  const flown = context.flown.find((one) => one.eva.id === eva);
  if (written === null || flown === undefined) return null;
  const accesses = stateAccesses(context, written, flown.placed);
  const races = findRaces(written, accesses);
  const broken = brokenByResponses(responseWrites(context, written, flown.placed), accesses, races);
  const proposedHolds = leastHolds(written, races.arcs, races.races);
  const holds = [...(options.holds ?? []), ...proposedHolds];
  const network = draw({ holds }) ?? written;
  const isKept = (more: NetworkOptions): boolean => {
    const scaled = draw({ holds, ...more });
    return scaled !== null && checkControllability(networkStnu(scaled)).controllable;
  };
  const decided = checkControllability(networkStnu(network));
  const wantedSlipS = options.slipS ?? slipLeftS(flown.eva, flown.plan);
  const { scale, isMost } = largestSpreadScale((spreadScale) => isKept({ spreadScale }), options.mostScale ?? 3);
  const latestEgressS = decided.controllable ? wantedSlipS : latestEgress(isKept, wantedSlipS);
  const reactionS = Math.ceil(campaign.limits.reactionS ?? 30);
  const conflicts = conflictsOf(network);
  const [conflict = null] = conflicts;
  const spoken = decided.controllable ? spokenHolds(network, decided.strategy, flown.plan.petZeroUtcMs, reactionS) : [];
  const durations = durationsOf(context, eva, options, options.spreadScale ?? 1);
  const findings = [
    ...raceFindings(context, written, races, proposedHolds),
    ...responseFindings(context, written, races.arcs, broken),
    ...conflicts.map((one) => controlFinding(network, one, { scale, latestEgressS, slipS: wantedSlipS })),
    ...unknowns(campaign, network, durations),
    ...calls(network, spoken),
  ];
  return {
    eva,
    // Orders that contradict each other have no execution: that is no order.
    raceFree: races.net.consistent && races.races.length === 0,
    pairs: races.pairs,
    proposedHolds,
    controllable: decided.controllable,
    conflict,
    holds: spoken,
    durations,
    scale,
    scaleIsMost: isMost,
    probabilityAtScale: scale === null ? null : durationsOf(context, eva, options, scale).probability,
    latestEgressS,
    slipS: wantedSlipS,
    reactionS,
    events: network.events.length,
    findings,
    assumptions: network.assumptions,
  };
}

/**
 * One conflict after another: the limit that the first runs against is left out, then the next is looked for, until the rest can be
 * kept. So every limit that breaks by itself is told, not the first alone.
 */
function conflictsOf(network: TemporalNetwork): readonly Conflict[] {
  const conflicts: Conflict[] = [];
  const leftOut = new Set<TemporalNetwork['requirements'][number]>();
  while (conflicts.length < MOST_CONFLICTS) {
    const rest = { ...network, requirements: network.requirements.filter((link) => !leftOut.has(link)) };
    const decided = checkControllability(networkStnu(rest));
    if (decided.controllable) break;
    const conflict = explainConflict(rest, decided.cycle, decided.shortS);
    conflicts.push(conflict);
    const [limit] = conflict.limits;
    if (limit === undefined) break;
    leftOut.add(limit);
  }
  return conflicts;
}

/** Whole minutes; null: not even on time. */
function latestEgress(isKept: (more: NetworkOptions) => boolean, slipS: number): number | null {
  if (!isKept({ slipS: 0 })) return null;
  let [low, high] = [0, Math.ceil(slipS / 60)];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (isKept({ slipS: middle * 60 })) low = middle;
    else high = middle;
  }
  return low * 60;
}

function durationsOf(context: ReplayContext, eva: string, options: ProofOptions, scale: number): EvaDurations {
  const stints = context.flown.find((one) => one.eva.id === eva)?.placed.map(({ stint }) => stint) ?? [];
  const unbounded = stints.filter(({ duration }) => duration.spread === null).map(({ key }) => key);
  const bounded = stints.flatMap(({ duration: { spread, boundsS, agreedS } }) => {
    if (spread === null || !(spread.lowS > 0)) return [];
    const figureS = Math.min(Math.max(agreedS, boundsS[0]), boundsS[1]);
    const scaled = [figureS - scale * (figureS - boundsS[0]), figureS + scale * (boundsS[1] - figureS)] as const;
    return [{ spread, boundsS: scaled }];
  });
  return {
    stints: stints.length,
    scale,
    bounded: bounded.length,
    unbounded,
    moveSpread: moveSpreadOf(context.campaign, options),
    probability: bounded.length === 0 ? null : probabilityInBounds(bounded, options.paceShare ?? 0),
  };
}

function unknowns(campaign: Campaign, network: TemporalNetwork, durations: EvaDurations): Finding[] {
  const findings: Finding[] = [];
  const { unbounded, stints } = durations;
  if (unbounded.length > 0) {
    findings.push(
      proved('proof/durations-have-bounds', {
        severity: 'unknown',
        title: `${unbounded.length} of ${stints} stints of EVA ${network.eva} have no bounds for how long they take`,
        why: `taken as exactly their planning figures: ${unbounded.slice(0, 6).join(', ')}${unbounded.length > 6 ? ` and ${unbounded.length - 6} more` : ''}`,
        mend: 'state low, likely and high minutes for them',
        eva: network.eva,
        stint: unbounded[0] ?? null,
      }),
    );
  }
  if (durations.moveSpread === null) {
    findings.push(
      proved('proof/travel-has-bounds', {
        severity: 'warning',
        title: `The ways of EVA ${network.eva} are taken as exactly their planning figures`,
        why: 'moves, arm transfers and hatch passages have one figure and no bounds',
        mend: 'write limits { travel-spread least=… most=… }',
        eva: network.eva,
      }),
    );
  }
  if (campaign.limits.reactionS === null) {
    findings.push(
      proved('proof/reaction-time-is-stated', {
        severity: 'unknown',
        title: 'Nothing says how long it takes to hear a call and act on it',
        why: '30 s were counted from each call to what it releases',
        mend: 'state reaction in limits',
        eva: network.eva,
        span: campaign.limits.span,
      }),
    );
  }
  for (const words of network.assumptions.filter((one) => one.includes('runs past the end of this EVA'))) {
    findings.push(
      proved('proof/clocks-stop-in-their-eva', {
        severity: 'unknown',
        title: `A clock is not stopped in EVA ${network.eva}`,
        why: words,
        mend: 'stop it in the EVA that starts it, or show by another means that its limit holds',
        eva: network.eva,
      }),
    );
  }
  return findings;
}

function calls(network: TemporalNetwork, holds: readonly SpokenHold[]): Finding[] {
  if (holds.length === 0) return [];
  const late = holds.filter(({ mayBeLate }) => mayBeLate);
  const [first] = holds as [SpokenHold];
  const findings = [
    proved('proof/holds-are-called', {
      severity: 'note',
      title: `The plan of EVA ${network.eva} rests on ${holds.length === 1 ? 'a hold' : `${holds.length} holds`} beside its joins`,
      why: holds
        .map(({ words }) => words)
        .slice(0, 6)
        .join('; '),
      mend: 'brief them, and put them in the script of the reader',
      eva: network.eva,
      stint: first.stint,
      petS: first.petS,
    }),
  ];
  for (const hold of late) {
    const delayS = hold.call === null ? 0 : (network.contingents[hold.call]?.delayS ?? 0);
    findings.push(
      proved('proof/calls-are-heard', {
        severity: 'warning',
        title: 'A call that the plan waits for may fall into a coverage gap',
        why: `${hold.words}; it may be heard ${formatDuration(delayS)} late, which the proof has counted`,
        mend: 'ask for it so that it is verified in coverage',
        eva: network.eva,
        stint: hold.stint,
        petS: hold.petS,
      }),
    );
  }
  return findings;
}
