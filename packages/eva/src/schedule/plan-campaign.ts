/**
 * The campaign: EVAs are planned one after the other in the order they fly, each from the hardware as the one before leaves
 * it. A task that may fall in several EVAs goes to the first that takes it by rank; where something is left out, tasks that
 * could also fly later are moved on to make room, and the change is kept when the ranks gain.
 *
 * What is proved is proved EVA by EVA, for the tasks offered to it and the hardware as it then stands; how tasks are shared
 * among EVAs is searched, not proved. Same campaign, seed and budget give the same timeline on every machine.
 */
import type { ProofSink } from '@handrail/solver/model/answer';
import type { Campaign, Eva, Pin, Task } from '../campaign/campaign.ts';
import type { Finding } from '../finding/finding.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import type { EvaTimeline, Timeline } from '../timeline/timeline.ts';
import { afterEvents, type AsLeft, asLeft, asStated } from './as-left.ts';
import { evaProblem, type ProblemInput } from './eva-problem.ts';
import { planEva } from './plan-eva.ts';
import type { EvaOutcome } from './eva-outcome.ts';
import { planFindings } from './plan-findings.ts';
import { runningClocks } from './running-clocks.ts';
import { vehicleTravel } from './travel.ts';
import { whyLeftOut } from './why-left-out.ts';

export interface PlanOptions {
  readonly seed: number;
  /** Conflicts per EVA; absent: until every level is proved. */
  readonly conflictBudget?: number;
  /** Asked often; true stops the search and keeps the best so far. */
  readonly shouldStop?: () => boolean;
  /** Plan this EVA alone; those before it are planned only to know how they leave the hardware. */
  readonly onlyEva?: string;
  /** A timeline to start from and stay near. */
  readonly near?: Timeline;
  /** Instead of the campaign's own pins. */
  readonly pins?: readonly Pin[];
  /** Other ways of sharing tasks among EVAs that are tried when something is left out. Default 6. */
  readonly sharingTries?: number;
  /** Where the proof of an EVA goes: asked anew for every search; the plan that stands names its own (`EvaPlan.proof`). */
  readonly proofFor?: (eva: string) => ProofSink | null;
  /** Leave out the question why tasks are left out: their reason is then only what is known without a search. */
  readonly skipReasons?: boolean;
}

export type PlanEvent =
  /** A better timeline of one EVA; earlier EVAs stand, later ones are not in it yet. */
  | { readonly kind: 'incumbent'; readonly timeline: Timeline; readonly eva: string; readonly conflicts: number }
  | { readonly kind: 'progress'; readonly eva: string; readonly conflicts: number };

export interface CampaignPlan {
  readonly timeline: Timeline;
  readonly evas: readonly EvaOutcome[];
  readonly findings: readonly Finding[];
}

/** Conflicts for each question asked to find out why a task is left out. */
const REASON_BUDGET = 3000;

export function* planCampaign(
  campaign: Campaign,
  hardware: HardwareModel,
  options: PlanOptions,
): Generator<PlanEvent, CampaignPlan> {
  const planner = new CampaignPlanner(campaign, hardware, options);
  let best = yield* planner.pass([], new Map());
  let tries = options.onlyEva === undefined ? (options.sharingTries ?? 6) : 0;
  for (let improved = true; improved && tries > 0; ) {
    improved = false;
    for (const move of planner.movesOn(best)) {
      if (tries-- <= 0 || planner.isStopped()) break;
      const kept = best.outcomes.slice(
        0,
        best.outcomes.findIndex(({ eva }) => eva === move.eva),
      );
      const barred = new Map(best.barred).set(move.task, new Set([...(best.barred.get(move.task) ?? []), move.eva]));
      const other = yield* planner.pass(kept, barred);
      if (!planner.isBetter(other, best)) continue;
      best = other;
      improved = true;
      break;
    }
  }
  return planner.finish(best);
}

interface Pass {
  readonly outcomes: readonly EvaOutcome[];
  /** Task → EVAs it is kept out of. */
  readonly barred: ReadonlyMap<string, ReadonlySet<string>>;
}

class CampaignPlanner {
  private readonly campaign: Campaign;
  private readonly hardware: HardwareModel;
  private readonly options: PlanOptions;
  private readonly pins: readonly Pin[];
  private readonly evas: readonly Eva[];

  constructor(campaign: Campaign, hardware: HardwareModel, options: PlanOptions) {
    this.campaign = campaign;
    this.hardware = hardware;
    this.options = options;
    this.pins = options.pins ?? campaign.pins;
    const evas = [...campaign.evas].sort((a, b) => a.egressUtcMs - b.egressUtcMs);
    const last = evas.findIndex(({ id }) => id === options.onlyEva);
    this.evas = last === -1 ? evas : evas.slice(0, last + 1);
  }

  isStopped(): boolean {
    return this.options.shouldStop?.() === true;
  }

  /** Plans all EVAs after those kept. */
  *pass(kept: readonly EvaOutcome[], barred: Pass['barred']): Generator<PlanEvent, Pass> {
    const outcomes = [...kept];
    for (const eva of this.evas.slice(kept.length)) {
      const input = this.inputFor(eva, outcomes, barred);
      const near = this.options.near?.evas.find((timeline) => timeline.eva === eva.id) ?? null;
      const running = planEva(evaProblem(input), {
        ...this.options,
        near,
        proof: this.options.proofFor?.(eva.id) ?? null,
      });
      let step = running.next();
      for (; step.done !== true; step = running.next()) {
        const event = step.value;
        if (event.kind === 'progress') yield { kind: 'progress', eva: eva.id, conflicts: event.conflicts };
        else {
          const timeline = this.timelineOf(this.planned(outcomes).concat(event.timeline), []);
          yield { kind: 'incumbent', timeline, eva: eva.id, conflicts: event.conflicts };
        }
      }
      outcomes.push({ eva: eva.id, input, plan: step.value });
    }
    return { outcomes, barred };
  }

  private inputFor(eva: Eva, before: readonly EvaOutcome[], barred: Pass['barred']): ProblemInput {
    const { campaign, hardware } = this;
    const done = new Set(before.flatMap(({ plan }) => plan.timeline?.tasks ?? []));
    const tasks = campaign.tasks.filter(
      (task) => this.evasOf(task).includes(eva.id) && !done.has(task.id) && barred.get(task.id)?.has(eva.id) !== true,
    );
    const state = this.stateBefore(eva, before);
    const travel = vehicleTravel(campaign, hardware, eva, state.values, new Set(tasks.map(({ id }) => id)));
    return {
      campaign,
      hardware,
      travel,
      eva,
      tasks,
      initial: state.values,
      armPoses: state.armPoses,
      pins: this.pins,
      flown: flownEnds(this.planned(before)),
      mayFlyLater: this.stillToFly(eva, done),
      running: runningClocks(campaign, hardware, this.planned(before)),
    };
  }

  private stillToFly(eva: Eva, done: ReadonlySet<string>): ReadonlySet<string> {
    const later = new Set(
      this.campaign.evas.filter(({ egressUtcMs }) => egressUtcMs > eva.egressUtcMs).map(({ id }) => id),
    );
    const open = this.campaign.tasks.filter(
      (task) => !done.has(task.id) && this.evasOf(task).some((id) => later.has(id)),
    );
    return new Set(open.map(({ id }) => id));
  }

  private stateBefore(eva: Eva, before: readonly EvaOutcome[]): AsLeft {
    const { campaign, hardware } = this;
    let state = asStated(campaign, hardware);
    let untilMs = Number.NEGATIVE_INFINITY;
    for (const { plan } of before) {
      if (plan.timeline === null) continue;
      const { petZeroUtcMs, bothInS } = plan.timeline;
      state = afterEvents(campaign, state, untilMs, petZeroUtcMs);
      state = asLeft(campaign, hardware, state, plan.timeline);
      untilMs = petZeroUtcMs + bothInS * 1000;
    }
    return afterEvents(campaign, state, untilMs, eva.egressUtcMs);
  }

  private evasOf(task: Task): readonly string[] {
    const pin = this.pins.find((candidate) => candidate.kind === 'eva' && candidate.task === task.id);
    return pin?.kind === 'eva' ? [pin.eva] : task.evas;
  }

  /** Ways to make room: a task that is in an EVA where something less important was left out, and could fly later. */
  *movesOn({ outcomes }: Pass): Generator<{ readonly task: string; readonly eva: string }> {
    const inSomewhere = new Set(outcomes.flatMap(({ plan }) => plan.timeline?.tasks ?? []));
    for (const { eva, input, plan } of outcomes) {
      const left = input.tasks.filter(({ id }) => !inSomewhere.has(id) && !plan.evaModel.screened.reasons.has(id));
      if (left.length === 0) continue;
      const at = this.evas.findIndex(({ id }) => id === eva);
      const later = new Set(this.evas.slice(at + 1).map(({ id }) => id));
      const movable = input.tasks.filter(
        (task) => plan.timeline?.tasks.includes(task.id) === true && this.evasOf(task).some((id) => later.has(id)),
      );
      for (const { id } of movable.reverse()) yield { task: id, eva };
    }
  }

  isBetter(a: Pass, b: Pass): boolean {
    const tasksOf = ({ outcomes }: Pass) => new Set(outcomes.flatMap(({ plan }) => plan.timeline?.tasks ?? []));
    const [inA, inB] = [tasksOf(a), tasksOf(b)];
    for (const { id } of [...this.campaign.tasks].sort((x, y) => x.rank - y.rank)) {
      if (inA.has(id) !== inB.has(id)) return inA.has(id);
    }
    return false;
  }

  finish({ outcomes, barred }: Pass): CampaignPlan {
    const { onlyEva } = this.options;
    const shown = onlyEva === undefined ? outcomes : outcomes.filter(({ eva }) => eva === onlyEva);
    const planned = new Set(outcomes.flatMap(({ plan }) => plan.timeline?.tasks ?? []));
    const leftOut = [...this.campaign.tasks]
      .sort((a, b) => a.rank - b.rank)
      .filter((task) => !planned.has(task.id) && (onlyEva === undefined || this.evasOf(task).includes(onlyEva)))
      .map((task) => ({ task: task.id, why: this.why(task, shown, barred) }));
    const timeline = this.timelineOf(this.planned(shown), leftOut);
    return { timeline, evas: shown, findings: planFindings(this.campaign, timeline, shown) };
  }

  private why(task: Task, outcomes: readonly EvaOutcome[], barred: Pass['barred']): string {
    const reasons = outcomes.flatMap(({ eva, input, plan }) => {
      if (!this.evasOf(task).includes(eva)) return [];
      if (barred.get(task.id)?.has(eva) === true) return [`${eva}: it makes room for more important work`];
      const known = plan.evaModel.screened.reasons.get(task.id);
      const inEva = new Set(plan.timeline?.tasks ?? []);
      if (known !== undefined) return [`${eva}: ${known}`];
      if (this.options.skipReasons === true) return [`${eva}: not asked`];
      const { seed, shouldStop } = this.options;
      const budget = { seed, conflictBudget: REASON_BUDGET, ...(shouldStop === undefined ? {} : { shouldStop }) };
      return [`${eva}: ${whyLeftOut(input, task, inEva, budget)}`];
    });
    return reasons.length === 0 ? 'none of the EVAs it may fall in is planned' : reasons.join('. ');
  }

  private planned(outcomes: readonly EvaOutcome[]): EvaTimeline[] {
    return outcomes.flatMap(({ plan }) => plan.timeline ?? []);
  }

  private timelineOf(evas: readonly EvaTimeline[], leftOut: Timeline['leftOut']): Timeline {
    const { id, documentHash, library } = this.campaign;
    return { format: 'handrail-timeline', version: 1, campaign: id, documentHash, library, evas, leftOut };
  }
}

/** UTC ends of planned stints, ms. */
export function flownEnds(evas: readonly EvaTimeline[]): ReadonlyMap<string, number> {
  return new Map(
    evas.flatMap(({ petZeroUtcMs, stints }) =>
      stints.map(({ stint, endS }) => [stint, petZeroUtcMs + endS * 1000] as const),
    ),
  );
}
