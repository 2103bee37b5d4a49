/**
 * The instants of an EVA and what orders them: each person's own course, joins, lags, who writes a state before who needs it, the
 * hatch, the arms. Drawn from the planned timeline: of two things that must not meet, the one planned first comes first, whether or
 * not anything but the plan holds them to it. That is what a crew does that answers to trouble and then goes on as planned; what
 * they are held to in every execution is proof/network's.
 */
import type { Campaign } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import { stintsByKey } from '../timeline/person-course.ts';
import type { EvaTimeline } from '../timeline/timeline.ts';
import { boundaryName, type Segment } from '../wayhome/segments.ts';

export interface Edge {
  readonly from: string;
  readonly to: string;
  /** As planned, without waiting. */
  readonly plannedS: number;
}
export interface EventNetwork {
  /** In planned order. */
  readonly names: readonly string[];
  readonly planned: ReadonlyMap<string, number>;
  readonly edges: readonly Edge[];
}

export function eventNetwork(
  campaign: Campaign,
  hardware: HardwareModel,
  eva: EvaTimeline,
  a: readonly Segment[],
  b: readonly Segment[],
): EventNetwork {
  const planned = nominalTimes(campaign, eva, [...a, ...b]);
  const edges = [
    ...laneEdges(campaign, a),
    ...laneEdges(campaign, b),
    ...orderEdges(campaign, hardware, eva, planned, [...a, ...b]),
  ].filter((edge) => planned.has(edge.from) && planned.has(edge.to));
  const names = [...planned.keys()].sort((x, y) => (planned.get(x) as number) - (planned.get(y) as number));
  return { names, planned, edges };
}

/** When each instant happens as planned. */
function nominalTimes(campaign: Campaign, eva: EvaTimeline, segments: readonly Segment[]): Map<string, number> {
  const times = new Map<string, number>();
  for (const segment of segments) {
    times.set(segment.from, segment.startS);
    times.set(segment.till, segment.endS);
  }
  const stints = stintsByKey(campaign);
  for (const planned of eva.stints) {
    const count = Math.max(1, stints.get(planned.stint)?.steps.length ?? 1);
    for (let boundary = 0; boundary <= count; boundary++) {
      const atS = boundary === 0 ? planned.startS : (planned.stepEndsS[boundary - 1] ?? planned.endS);
      times.set(boundaryName(planned.stint, boundary), boundary === count ? planned.endS : atS);
    }
  }
  return times;
}

function laneEdges(campaign: Campaign, segments: readonly Segment[]): Edge[] {
  const { restraintEgressS, restraintIngressS } = campaign.limits;
  return segments.flatMap((segment, at) => {
    const next = segments[at + 1];
    // Of a wait only the change of restraints is work.
    const changeS =
      (segment.restraint === null ? 0 : (restraintEgressS ?? 0)) +
      (next?.restraint == null ? 0 : (restraintIngressS ?? 0));
    const lengthS = segment.endS - segment.startS;
    const idle = segment.kind === 'wait' || segment.kind === 'inside';
    const plannedS = idle ? Math.min(lengthS, segment.kind === 'wait' ? changeS : 0) : lengthS;
    const own = { from: segment.from, to: segment.till, plannedS };
    return next === undefined || next.from === segment.till ? [own] : [own, order(segment.till, next.from)];
  });
}

function order(from: string, to: string, lagS = 0): Edge {
  return { from, to, plannedS: lagS };
}

function orderEdges(
  campaign: Campaign,
  hardware: HardwareModel,
  eva: EvaTimeline,
  nominal: ReadonlyMap<string, number>,
  segments: readonly Segment[],
): Edge[] {
  const stints = stintsByKey(campaign);
  const planned = new Map(eva.stints.map((one) => [one.stint, one] as const));
  const countOf = (key: string): number => Math.max(1, stints.get(key)?.steps.length ?? 1);
  const startOf = (key: string): string => boundaryName(key, 0);
  const endOf = (key: string): string => boundaryName(key, countOf(key));
  const edges: Edge[] = [];
  for (const one of eva.stints) {
    const stint = stints.get(one.stint);
    if (stint === undefined) continue;
    // Steps of a stint that nobody of the two does (an arm alone) keep their order as well.
    for (let boundary = 0; boundary < countOf(one.stint); boundary++) {
      edges.push(order(boundaryName(one.stint, boundary), boundaryName(one.stint, boundary + 1)));
    }
    for (const after of stint.after) {
      if (planned.has(after.stint)) edges.push(order(endOf(after.stint), startOf(one.stint), after.leastS));
    }
  }
  for (const task of campaign.tasks) {
    for (const join of task.joins) {
      if (planned.has(join.releases) && planned.has(join.waits))
        edges.push(order(endOf(join.releases), startOf(join.waits)));
    }
  }
  // The hatch lets one person through at a time.
  const passages = segments
    .filter((one) => one.kind === 'in' || one.kind === 'out')
    .sort((x, y) => x.startS - y.startS);
  passages.slice(1).forEach((passage, at) => {
    const last = passages[at];
    if (last !== undefined && last.person !== passage.person) edges.push(order(last.till, passage.from));
  });
  for (const arm of campaign.arms) {
    const uses = eva.stints.filter((one) => one.assigned.includes(arm.id)).sort((x, y) => x.startS - y.startS);
    uses.slice(1).forEach((use, at) => {
      const last = uses[at];
      if (last !== undefined) edges.push(order(endOf(last.stint), startOf(use.stint)));
    });
  }
  return [...edges, ...stateEdges(hardware, eva, countOf, nominal)];
}

/** The last writer before a need comes before it, and the next writer after it: that is what race-free means. */
function stateEdges(
  hardware: HardwareModel,
  eva: EvaTimeline,
  countOf: (stint: string) => number,
  nominal: ReadonlyMap<string, number>,
): Edge[] {
  interface Touch {
    readonly stint: string;
    readonly from: string;
    readonly till: string;
    readonly writes: boolean;
  }
  const touches = new Map<string, Touch[]>();
  const add = (variable: string, touch: Touch): void => {
    const list = touches.get(variable);
    if (list === undefined) touches.set(variable, [touch]);
    else list.push(touch);
  };
  for (const { stint } of eva.stints) {
    const effects = hardware.effects.get(stint);
    const name = (boundary: number): string => boundaryName(stint, Math.min(Math.max(boundary, 0), countOf(stint)));
    for (const hold of effects?.holds ?? []) {
      add(hold.variable, { stint, from: name(hold.fromStep), till: name(hold.toStep), writes: true });
    }
    for (const need of effects?.needs ?? []) {
      const [from, till] =
        need.when === 'start'
          ? [0, 0]
          : need.when === 'end'
            ? [countOf(stint), countOf(stint)]
            : [need.fromStep, need.toStep];
      add(need.variable, { stint, from: name(from), till: name(till), writes: false });
    }
  }
  const edges: Edge[] = [];
  for (const list of touches.values()) {
    for (const one of list) {
      for (const two of list) {
        if (one.stint === two.stint || !(one.writes || two.writes)) continue;
        if ((nominal.get(one.till) ?? 0) <= (nominal.get(two.from) ?? 0)) edges.push(order(one.till, two.from));
      }
    }
  }
  return edges;
}

/** Longest path to each instant. Edges run forward in planned time; instants of one time may need another round. */
export function longest(
  names: readonly string[],
  edges: readonly Edge[],
  lengthOf: (edge: Edge) => number,
  floor: (name: string) => number,
): ReadonlyMap<string, number> {
  const out = new Map<string, Edge[]>();
  for (const edge of edges) {
    const list = out.get(edge.from);
    if (list === undefined) out.set(edge.from, [edge]);
    else list.push(edge);
  }
  const times = new Map(names.map((name) => [name, floor(name)] as const));
  for (let round = 0, changed = true; changed && round < 20; round++) {
    changed = false;
    for (const name of names) {
      for (const edge of out.get(name) ?? []) {
        const atS = (times.get(name) as number) + lengthOf(edge);
        if (atS > (times.get(edge.to) ?? 0) + 1e-9) {
          times.set(edge.to, atS);
          changed = true;
        }
      }
    }
  }
  return times;
}
