/**
 * An EVA planned again under way. What has begun stays as it is and moves under way are finished; everything else may change
 * from now on, also what is in and what is out. The plan so far is where the search starts from and what it stays near.
 *
 * Times that have passed are those of the timeline given: whoever follows the day writes what happened into it first.
 */
import { Fault } from '@handrail/quantity/fault';
import type { Campaign } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import type { EvaTimeline, PlannedMove, Timeline } from '../timeline/timeline.ts';
import { afterEvents, asLeft, asStated } from './as-left.ts';
import { evaProblem, type Past, type ProblemInput } from './eva-problem.ts';
import { flownEnds } from './plan-campaign.ts';
import { type EvaPlan, type EvaPlanEvent, type EvaPlanOptions, planEva } from './plan-eva.ts';
import { runningClocks } from './running-clocks.ts';
import { vehicleTravel } from './travel.ts';

export interface Replan {
  readonly eva: string;
  readonly nowS: number;
  /** Change as little as may be before finish and travel count. */
  readonly leastChange?: boolean;
}

/** @throws Fault `schedule/unknown-eva` when the timeline or the campaign has no such EVA. */
export function* replanEva(
  campaign: Campaign,
  hardware: HardwareModel,
  timeline: Timeline,
  { eva: id, nowS, leastChange }: Replan,
  options: EvaPlanOptions,
): Generator<EvaPlanEvent, EvaPlan> {
  const current = timeline.evas.find(({ eva }) => eva === id);
  const eva = campaign.evas.find((candidate) => candidate.id === id);
  if (current === undefined || eva === undefined) {
    throw new Fault('schedule/unknown-eva', `no EVA ${id} in the timeline`, { values: { eva: id } });
  }
  const before = timeline.evas.filter(({ petZeroUtcMs }) => petZeroUtcMs < current.petZeroUtcMs);
  const done = new Set([...before, current].flatMap(({ tasks }) => tasks));
  const later = new Set(campaign.evas.filter(({ egressUtcMs }) => egressUtcMs > eva.egressUtcMs).map((one) => one.id));
  const elsewhere = new Set(timeline.evas.flatMap(({ eva: other, tasks }) => (other === id ? [] : tasks)));
  const tasks = campaign.tasks.filter((task) => task.evas.includes(id) && !elsewhere.has(task.id));
  const state = stateBefore(campaign, hardware, timeline, current);
  const travel = vehicleTravel(campaign, hardware, eva, state.values, new Set(tasks.map((task) => task.id)));
  const input: ProblemInput = {
    campaign,
    hardware,
    travel,
    eva,
    tasks,
    initial: state.values,
    armPoses: state.armPoses,
    past: pastOf(current, nowS),
    leastChangeFrom: leastChange === true ? current : null,
    flown: flownEnds(before),
    running: runningClocks(campaign, hardware, before),
    // What the plan has for later EVAs, and what it leaves out and a later one could take.
    mayFlyLater: new Set(
      campaign.tasks
        .filter((task) => !done.has(task.id) && task.evas.some((one) => later.has(one)))
        .map((task) => task.id),
    ),
  };
  return yield* planEva(evaProblem(input), { near: current, ...options });
}

export function pastOf(current: EvaTimeline, nowS: number): Past {
  const begun = current.stints.filter(({ startS }) => startS < nowS);
  const last = new Map<string, PlannedMove>();
  for (const move of current.moves) if (move.startS < nowS) last.set(move.who, move);
  // A move that led to work already begun is no longer under way.
  const moves = [...last.values()].filter(
    (move) => !begun.some(({ assigned, startS }) => assigned.includes(move.who) && startS >= move.endS),
  );
  return { nowS, begun, moves };
}

function stateBefore(campaign: Campaign, hardware: HardwareModel, timeline: Timeline, current: EvaTimeline) {
  let state = asStated(campaign, hardware);
  let untilMs = Number.NEGATIVE_INFINITY;
  const before = timeline.evas.filter(({ petZeroUtcMs }) => petZeroUtcMs < current.petZeroUtcMs);
  for (const eva of [...before].sort((a, b) => a.petZeroUtcMs - b.petZeroUtcMs)) {
    state = asLeft(campaign, hardware, afterEvents(campaign, state, untilMs, eva.petZeroUtcMs), eva);
    untilMs = eva.petZeroUtcMs + eva.bothInS * 1000;
  }
  return afterEvents(campaign, state, untilMs, current.petZeroUtcMs);
}
