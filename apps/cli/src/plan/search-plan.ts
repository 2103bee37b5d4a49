/**
 * Runs the search so that it can be watched and stopped: progress on stderr, Ctrl-C or a time limit keeps the best so far. What
 * comes back as optimal has a proof that the independent checker accepts.
 */
import { formatDuration } from '@handrail/quantity/time';
import type { Campaign } from '@handrail/eva/campaign/campaign';
import type { HardwareModel } from '@handrail/eva/hardware/effects';
import { type CampaignPlan, planCampaign, type PlanOptions } from '@handrail/eva/schedule/plan-campaign';
import { complain } from '../terminal/output.ts';
import { ProofShelf } from '@handrail/eva/schedule/proof-shelf';

export async function searchPlan(
  campaign: Campaign,
  hardware: HardwareModel,
  options: PlanOptions,
  proofs = new ProofShelf(),
): Promise<CampaignPlan> {
  const running = planCampaign(campaign, hardware, { ...options, proofFor: () => proofs.sink() });
  const startMs = Date.now();
  const progress = progressLine();
  let next = running.next();
  while (next.done !== true) {
    progress(
      next.value.eva,
      next.value.conflicts,
      next.value.kind === 'incumbent' ? (next.value.timeline.evas.at(-1)?.bothInS ?? null) : null,
    );
    await turn();
    next = running.next();
  }
  const isWatched = Date.now() - startMs > 1000;
  return proofs.checked(next.value, (eva, lines) => {
    if (isWatched) complain(`checking the proof of EVA ${eva}, ${lines} lines, with the second program`);
  });
}

export interface StopSign {
  /** Asked by the search; true makes it stop. */
  readonly isUp: () => boolean;
  /** The search has been told to stop, and did not end by itself. */
  readonly hasStopped: () => boolean;
  readonly release: () => void;
}

/** Ctrl-C or the time limit asks the search to stop; a second Ctrl-C ends the program at once. */
export function stopSign(timeS: number | undefined): StopSign {
  const endMs = timeS === undefined ? Number.POSITIVE_INFINITY : Date.now() + timeS * 1000;
  let isAsked = false;
  let hasStopped = false;
  const stop = () => {
    isAsked = true;
    complain('stopping; the best timeline so far is kept (Ctrl-C again ends at once, without it)');
  };
  process.once('SIGINT', stop);
  return {
    isUp: () => {
      hasStopped ||= isAsked || Date.now() > endMs;
      return hasStopped;
    },
    hasStopped: () => hasStopped,
    release: () => process.removeListener('SIGINT', stop),
  };
}

/** One line on stderr, once a second at most, only when it takes longer than a second. */
function progressLine(): (eva: string, conflicts: number, bothInS: number | null) => void {
  let lastMs = Date.now();
  let best = '';
  return (eva, conflicts, bothInS) => {
    if (bothInS !== null) best = `, both in after ${formatDuration(bothInS)}`;
    if (Date.now() - lastMs < 1000) return;
    lastMs = Date.now();
    complain(`planning EVA ${eva}: ${conflicts} ${conflicts === 1 ? 'conflict' : 'conflicts'}${best}`);
  };
}

/** Lets signals in. */
async function turn(): Promise<void> {
  await new Promise((resolve) => {
    setImmediate(resolve);
  });
}
