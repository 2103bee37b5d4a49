/**
 * A plan is called optimal only when a program other than the engine has accepted the proof. Proofs are kept in memory while
 * the engine works and checked when it is done.
 */
import { type Finding, NOWHERE } from '../finding/finding.ts';
import type { CampaignPlan } from './plan-campaign.ts';
import type { EvaPlan } from './plan-eva.ts';
import type { EvaOutcome } from './eva-outcome.ts';
import type { EvaTimeline } from '../timeline/timeline.ts';
import type { ProofSink } from '@handrail/solver/model/answer';
import type { Model } from '@handrail/solver/model/model';
import { KeptLines } from '@handrail/solver/proof/kept-lines';
import { checkProof } from '@handrail/solver-checker/check-proof';

/** A longer proof is not kept: some hundred megabytes of text. */
const MOST_LINES = 3_000_000;

export interface KeptProof {
  readonly eva: string;
  readonly model: Model;
  readonly lines: KeptLines;
}

export class ProofShelf {
  private readonly proofs = new Map<ProofSink, KeptLines | null>();

  /** A fresh log for one search. */
  sink(): ProofSink {
    const lines = new KeptLines();
    const sink: ProofSink = {
      write: (text, count) => {
        if (lines.length < MOST_LINES) lines.write(text, count);
        else this.proofs.set(sink, null);
      },
    };
    this.proofs.set(sink, lines);
    return sink;
  }

  /** The plan with every "optimal" that its proof does not bear taken back, and a finding for each of those; `starting` is told. */
  checked(found: CampaignPlan, starting: (eva: string, lines: number) => void = () => {}): CampaignPlan {
    const findings: Finding[] = [];
    const evas = found.timeline.evas.map((timeline): EvaTimeline => {
      const outcome = found.evas.find(({ eva }) => eva === timeline.eva);
      if (timeline.claim.status !== 'optimal for these durations' || outcome === undefined) return timeline;
      starting(timeline.eva, this.linesOf(outcome)?.length ?? 0);
      const why = this.whyNot(outcome);
      if (why === null) return timeline;
      findings.push({
        rule: 'schedule/optimum-is-proved',
        severity: 'warning',
        title: `The plan of EVA ${timeline.eva} is not called optimal, its proof does not stand`,
        where: { ...NOWHERE, eva: timeline.eva, span: outcome.input.eva.span },
        why,
        mend: 'take it as the best found; please report the case',
        source: null,
        waiver: null,
      });
      return { ...timeline, claim: { ...timeline.claim, status: 'best found' } };
    });
    return { ...found, timeline: { ...found.timeline, evas }, findings: [...found.findings, ...findings] };
  }

  /** What `verify-proof` needs of each EVA: the model that was solved and the log of its proof; a log that was not kept is left out. */
  kept(found: CampaignPlan): readonly KeptProof[] {
    return found.evas.flatMap(({ eva, plan }) => {
      const lines = plan.proof === null ? null : this.proofs.get(plan.proof);
      return lines === undefined || lines === null ? [] : [{ eva, model: plan.evaModel.model, lines }];
    });
  }

  /** One EVA planned by itself: its timeline, "optimal" taken back where the proof does not bear it. */
  checkedEva(plan: EvaPlan): EvaTimeline | null {
    const { timeline } = plan;
    if (timeline === null || timeline.claim.status !== 'optimal for these durations') return timeline;
    return this.whyNot({ plan }) === null
      ? timeline
      : { ...timeline, claim: { ...timeline.claim, status: 'best found' } };
  }

  private linesOf({ plan }: Pick<EvaOutcome, 'plan'>): KeptLines | null {
    return (plan.proof === null ? null : this.proofs.get(plan.proof)) ?? null;
  }

  private whyNot(outcome: Pick<EvaOutcome, 'plan'>): string | null {
    const { plan } = outcome;
    const lines = this.linesOf(outcome);
    if (lines === null) return `the proof is longer than ${MOST_LINES} lines and was not kept`;
    const { isAccepted, claim, closed, refusal } = checkProof(plan.evaModel.model, lines);
    if (refusal !== null) return `the checker refuses line ${refusal.line} of ${lines.length}: ${refusal.reason}`;
    const isSame = plan.levels.every(({ value }, level) => closed[level] === value);
    return isAccepted && claim === 'optimal' && isSame ? null : 'the proof shows less than the answer says';
  }
}
