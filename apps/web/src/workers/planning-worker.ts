/** Plans beside the page, when a person asks for it. Incumbents are told as they come; a stop keeps the best so far. */
import { openCampaign } from '@handrail/eva/judge/open-campaign';
import { planCampaign, type PlanOptions } from '@handrail/eva/schedule/plan-campaign';
import { ProofShelf } from '@handrail/eva/schedule/proof-shelf';
import type { Finding } from '@handrail/eva/finding/finding';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import { expose } from 'comlink';
import { FILE_NAME } from '../document/working-copy.ts';

export interface PlanProgress {
  readonly eva: string;
  readonly conflicts: number;
  /** A better plan; null: none since the last word. */
  readonly timeline: Timeline | null;
  readonly words: string;
}
export interface PlanDone {
  readonly timeline: Timeline | null;
  readonly findings: readonly Finding[];
  readonly wasStopped: boolean;
}
export interface PlanAsk {
  readonly text: string;
  readonly near: Timeline | null;
  /** Only this EVA; null: all. */
  readonly onlyEva: string | null;
}

let isStopAsked = false;

async function plan(ask: PlanAsk, onProgress: (progress: PlanProgress) => void): Promise<PlanDone> {
  isStopAsked = false;
  const { opened } = openCampaign([{ name: FILE_NAME, text: ask.text }]);
  if (opened === null) return { timeline: null, findings: [], wasStopped: false };
  const proofs = new ProofShelf();
  const options: PlanOptions = {
    seed: 1,
    shouldStop: () => isStopAsked,
    proofFor: () => proofs.sink(),
    ...(ask.near === null ? {} : { near: ask.near }),
    ...(ask.onlyEva === null ? {} : { onlyEva: ask.onlyEva }),
  };
  const running = planCampaign(opened.campaign, opened.hardware, options);
  let toldMs = 0;
  let best: Timeline | null = null;
  for (let next = running.next(); ; next = running.next()) {
    if (next.done === true) {
      onProgress({ eva: '', conflicts: 0, timeline: null, words: 'checking the proofs with the second program' });
      const { timeline, findings } = proofs.checked(next.value);
      return { timeline, findings, wasStopped: isStopAsked };
    }
    const { eva, conflicts } = next.value;
    if (next.value.kind === 'incumbent') best = next.value.timeline;
    if (performance.now() - toldMs > 150) {
      toldMs = performance.now();
      const words = `planning ${eva}: ${conflicts} ${conflicts === 1 ? 'conflict' : 'conflicts'} learned from`;
      onProgress({ eva, conflicts, timeline: best, words });
      best = null;
      // Lets a stop come in.
      await new Promise((resolve) => setTimeout(resolve, 0));
    }
  }
}

function stop(): void {
  isStopAsked = true;
}

const planning = { plan, stop };
export type PlanningWorker = typeof planning;
expose(planning);
