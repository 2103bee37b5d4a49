/** What planning itself noticed: limits not stated, work left out, EVAs for which there is no plan. */
import type { Campaign } from '../campaign/campaign.ts';
import { type Finding, NOWHERE } from '../finding/finding.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { formatDuration } from '@handrail/quantity/time';
import { describeTag } from './describe-tag.ts';
import { evaModel } from './eva-model.ts';
import type { EvaOutcome } from './eva-outcome.ts';
import { evaProblem, type ProblemInput } from './eva-problem.ts';
import { findCollision } from './find-collision.ts';

export function planFindings(campaign: Campaign, timeline: Timeline, outcomes: readonly EvaOutcome[]): Finding[] {
  const findings: Finding[] = [];
  for (const { eva, input, plan } of outcomes) {
    const where = { ...NOWHERE, eva, span: input.eva.span };
    if (plan.evaModel.problem.wall === null) {
      findings.push({
        rule: 'schedule/wall-is-stated',
        severity: 'unknown',
        title: `Nothing says by when both must be in on EVA ${eva}`,
        where,
        why: 'neither the longest EVA nor a suit limit is stated, so no plan can be called in time',
        mend: 'state longest= on the eva or suit-limit= on each person outside',
        source: null,
        waiver: null,
      });
    }
    if (plan.timeline === null) {
      findings.push({
        rule: 'schedule/a-plan-exists',
        severity: plan.status === 'infeasible' ? 'error' : 'unknown',
        title: plan.status === 'infeasible' ? `No plan exists for EVA ${eva}` : `No plan found yet for EVA ${eva}`,
        where,
        why:
          plan.status === 'infeasible' ? collisionWords(campaign, input) : 'the search was stopped before it found one',
        mend: null,
        source: null,
        waiver: null,
      });
    }
  }
  return [...findings, ...leftOutFindings(campaign, timeline, outcomes)];
}

/** Why not even an EVA without work fits. */
function collisionWords(campaign: Campaign, input: ProblemInput): string {
  const problem = evaProblem({ ...input, beyondWall: true });
  const collision = findCollision(evaModel(problem).model, { seed: 1, conflictBudget: COLLISION_BUDGET });
  if (collision === null) return 'the passages and what has begun do not fit';
  const context = { campaign, hardware: input.hardware, wall: problem.wall };
  const named = collision.tags.map((tag) => describeTag(context, tag));
  const passagesS = [...input.eva.egress, ...input.eva.ingress].reduce(
    (sum, { durationS }) => sum + durationS,
    input.eva.closeHatchS,
  );
  return `out, in and closing the hatch take ${formatDuration(passagesS)}; that collides with ${named.join('; ')}`;
}

/** Conflicts for each question asked about what collides. */
const COLLISION_BUDGET = 3000;

function leftOutFindings(campaign: Campaign, timeline: Timeline, outcomes: readonly EvaOutcome[]): Finding[] {
  const minimum = new Map(
    outcomes.flatMap(({ input }) => input.eva.minimumSuccess.map((id) => [id, input.eva.id] as const)),
  );
  return timeline.leftOut.flatMap(({ task: id, why }) => {
    const task = campaign.tasks.find((candidate) => candidate.id === id);
    if (task === undefined) return [];
    const eva = minimum.get(id) ?? null;
    const title =
      eva === null
        ? `"${task.title}" is left out`
        : `"${task.title}" is left out, which EVA ${eva} needs for its minimum success`;
    return {
      rule: eva === null ? 'schedule/ranked-work-is-in' : 'schedule/minimum-success-is-in',
      severity: eva !== null ? ('error' as const) : task.insert ? ('note' as const) : ('warning' as const),
      title,
      where: { ...NOWHERE, eva, span: task.span },
      why,
      mend: null,
      source: null,
      waiver: null,
    };
  });
}
