/**
 * One person's EVA cut into the pieces within which nothing changes but the time: a step, a rail, a passage, a wait. "How far
 * along somebody is" is the number of their segment.
 */
import type { Campaign } from '../campaign/campaign.ts';
import { personCourse, stepStart, type Stretch } from '../timeline/person-course.ts';
import type { EvaTimeline } from '../timeline/timeline.ts';

export interface Segment {
  readonly person: string;
  readonly index: number;
  /** inside: before egress or after ingress. */
  readonly kind: 'inside' | 'out' | 'in' | 'move' | 'wait' | 'work';
  /** As planned. */
  readonly startS: number;
  readonly endS: number;
  readonly place: string;
  readonly rail: readonly [string, string] | null;
  readonly stint: string | null;
  readonly step: number | null;
  readonly restraint: string | null;
  /** On the plate; the poses differ while it carries somebody from one to the other. */
  readonly onArm: { readonly arm: string; readonly fromPose: string; readonly toPose: string } | null;
  /** Names of the instants at which it starts and ends; people who share a stint share its instants. */
  readonly from: string;
  readonly till: string;
}

export type RailSeconds = (from: string, to: string) => number;

/** Boundary k of a stint: k = 0 its start, k = number of steps its end. */
export function boundaryName(stint: string, boundary: number): string {
  return `${stint}#${boundary}`;
}

export function segmentsOf(
  campaign: Campaign,
  eva: EvaTimeline,
  person: string,
  railS: RailSeconds,
): readonly Segment[] {
  const course = personCourse(campaign, eva, person);
  const hatch = campaign.vehicle.hatch ?? 'hatch';
  const found: Omit<Segment, 'index'>[] = [];
  const plain = { person, place: hatch, rail: null, stint: null, step: null, restraint: null, onArm: null };
  const [first] = course;
  const last = course.at(-1);
  const inside = (startS: number, endS: number, name: string): void => {
    found.push({
      ...plain,
      kind: 'inside',
      startS,
      endS,
      from: `${person}:${name}`,
      till: `${person}:${name}.`,
    });
  };
  if (first === undefined || last === undefined) {
    inside(0, eva.bothInS, 'all');
    return found.map((segment, index) => ({ ...segment, index }));
  }
  if (first.startS > 0) inside(0, first.startS, 'before');
  let restraint: string | null = null;
  course.forEach((stretch, at) => {
    const name = `${person}:${at}`;
    const { startS, endS } = stretch;
    const times = { startS, endS, from: name, till: `${name}.` };
    const onArm = stretch.on === null ? null : { arm: stretch.on, ...posesNow(campaign, course, at, stretch.on) };
    if (stretch.kind === 'passage') {
      const out = eva.passages.some((one) => one.person === person && one.startS === startS && one.kind === 'egress');
      found.push({ ...plain, ...times, kind: out ? 'out' : 'in' });
    } else if (stretch.kind === 'move') {
      restraint = null;
      found.push(...railsOf(plain, stretch, name, railS));
    } else if (stretch.kind === 'wait') {
      found.push({ ...plain, ...times, kind: 'wait', place: stretch.place, restraint, onArm });
    } else {
      restraint = stretch.stint?.roles[stretch.role ?? 0]?.restraint ?? null;
      found.push(...stepsOf(plain, stretch, restraint));
    }
  });
  if (last.endS < eva.bothInS && last.kind === 'passage') inside(last.endS, eva.bothInS, 'after');
  // No passage in is written: then they are still where the timeline leaves them.
  else if (last.endS < eva.bothInS) {
    const [startS, endS] = [last.endS, eva.bothInS];
    const name = `${person}:end`;
    const times = { startS, endS, from: name, till: `${name}.` };
    found.push({ ...plain, ...times, kind: 'wait', place: last.to });
  }
  return found.map((segment, index) => ({ ...segment, index }));
}

type Plain = Pick<Segment, 'person' | 'place' | 'rail' | 'stint' | 'step' | 'restraint' | 'onArm'>;

/** A move rail by rail; swaps of the tether are spread over the rails in proportion. */
function railsOf(plain: Plain, stretch: Stretch, name: string, railS: RailSeconds): Omit<Segment, 'index'>[] {
  const path = stretch.path.length > 1 ? stretch.path : [stretch.place, stretch.to];
  const weights = path.slice(1).map((to, index) => {
    const seconds = railS(path[index] as string, to);
    return Number.isFinite(seconds) && seconds > 0 ? seconds : 1;
  });
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const lengthS = stretch.endS - stretch.startS;
  let startS = stretch.startS;
  return weights.map((weight, index) => {
    const isLast = index === weights.length - 1;
    const endS = isLast ? stretch.endS : startS + (weight / total) * lengthS;
    const rail = [path[index] as string, path[index + 1] as string] as const;
    const segment = {
      ...plain,
      kind: 'move' as const,
      startS,
      endS,
      place: rail[0],
      rail,
      from: `${name}/${index}`,
      till: `${name}/${index + 1}`,
    };
    startS = endS;
    return segment;
  });
}

function stepsOf(plain: Plain, stretch: Stretch, restraint: string | null): Omit<Segment, 'index'>[] {
  const { stint, planned } = stretch;
  if (stint === null || planned === null) return [];
  const role = stint.roles[stretch.role ?? 0];
  const count = planned.stepEndsS.length;
  const fromStep = role?.fromStep ?? 0;
  const toStep = count === 0 ? fromStep + 1 : Math.min(role?.toStep ?? count, count);
  const arm = role?.endOn ?? role?.startOn ?? null;
  const armRole = stint.roles.find((one) => one.name === 'arm' && (arm === null || one.candidates.includes(arm)));
  const onArm = arm === null || armRole === undefined ? null : { arm, fromPose: armRole.at, toPose: armRole.to };
  const found: Omit<Segment, 'index'>[] = [];
  for (let step = fromStep; step < toStep; step++) {
    const startS = stepStart(planned, step);
    const endS = step === count - 1 || count === 0 ? planned.endS : (planned.stepEndsS[step] ?? planned.endS);
    found.push({
      ...plain,
      kind: 'work',
      startS,
      endS,
      place: role?.at ?? plain.place,
      stint: stint.key,
      step: count === 0 ? null : step,
      restraint,
      onArm,
      from: boundaryName(stint.key, step),
      till: boundaryName(stint.key, step + 1),
    });
  }
  return found;
}

/** While waiting on a plate: the pose to which the last stint with this arm brought it. */
function posesNow(
  campaign: Campaign,
  course: readonly Stretch[],
  at: number,
  arm: string,
): { readonly fromPose: string; readonly toPose: string } {
  for (let before = at; before >= 0; before--) {
    const role = course[before]?.stint?.roles.find((one) => one.name === 'arm' && one.candidates.includes(arm));
    if (role !== undefined) return { fromPose: role.to, toPose: role.to };
  }
  const pose = campaign.arms.find((candidate) => candidate.id === arm)?.startPose ?? '';
  return { fromPose: pose, toPose: pose };
}
