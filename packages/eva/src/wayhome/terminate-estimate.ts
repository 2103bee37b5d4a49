/**
 * How long until both may leave, from any minute of a timeline: the time to close what is open (the kinds' own closing
 * verbs) and to travel to the hatch. A simple estimate for terminate mode: each person closes what the stint they are in
 * has left unsafe for the night, alone, one thing after another, with the 50th percentile of the kinds' times, then goes
 * home by the shortest open way. It is neither an upper bound nor a replayed plan, and it says so wherever it is shown.
 */
import type { Campaign } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import type { Kind, Verb } from '../kinds/kind.ts';
import type { EvaTimeline } from '../timeline/timeline.ts';
import { personCourse, stepStart, type Stretch } from '../timeline/person-course.ts';

export interface TerminateSample {
  readonly petS: number;
  readonly place: string;
  /** Time to bring everything this person has open to a value that is safe for the night. */
  readonly closeS: number;
  /** null: no way from here (a keep-out, an arm plate without climb-down). */
  readonly travelS: number | null;
  /** Hardware that is open and that no closing verb of its kind closes: the estimate does not count it. */
  readonly unknown: readonly string[];
  /** What is to be closed, in words: "cover-7: close". */
  readonly closing: readonly string[];
}

export interface TerminateInput {
  readonly campaign: Campaign;
  readonly hardware: HardwareModel;
  readonly kinds: ReadonlyMap<string, Kind>;
  readonly homeSeconds: (place: string, pace: number) => number | null;
}

/** Samples at every change: the start and end of each stretch and the end of each step. */
export function terminateEstimate(input: TerminateInput, eva: EvaTimeline, person: string): readonly TerminateSample[] {
  const pace = input.campaign.people.find((candidate) => candidate.id === person)?.pace ?? 1;
  const samples: TerminateSample[] = [];
  for (const stretch of personCourse(input.campaign, eva, person)) {
    const travelTo = (place: string): number | null => homeFrom(input, stretch, place, pace);
    if (stretch.stint === null || stretch.planned === null) {
      const open = { closeS: 0, unknown: [], closing: [] };
      samples.push({ petS: stretch.startS, place: stretch.place, travelS: travelTo(stretch.place), ...open });
      samples.push({ petS: stretch.endS, place: stretch.to, travelS: travelTo(stretch.to), ...open });
      continue;
    }
    const steps = stretch.stint.steps.length;
    for (let step = 0; step <= steps; step++) {
      const petS = step === 0 ? stretch.planned.startS : stepStart(stretch.planned, step);
      if (petS < stretch.startS || petS > stretch.endS) continue;
      const place = step === steps ? stretch.to : stretch.place;
      samples.push({ petS, place, travelS: travelTo(place), ...openAfter(input, stretch.stint.key, step) });
    }
  }
  return samples;
}

function homeFrom(input: TerminateInput, stretch: Stretch, place: string, pace: number): number | null {
  if (stretch.on === null) return input.homeSeconds(place, pace);
  const arm = input.campaign.arms.find((candidate) => candidate.id === stretch.on);
  const climb = arm?.poses.find((pose) => pose.place === place)?.climbDown ?? null;
  if (climb === null) return null;
  const rest = input.homeSeconds(climb.place, pace);
  return rest === null ? null : climb.durationS + rest;
}

/** What the stint itself has left in an unsafe value after its first `step` steps. */
function openAfter(
  input: TerminateInput,
  stintKey: string,
  step: number,
): { closeS: number; unknown: readonly string[]; closing: readonly string[] } {
  const effects = input.hardware.effects.get(stintKey);
  const values = new Map<string, string>();
  for (const leave of effects?.leaves ?? []) {
    if (leave.step < step) values.set(leave.variable, leave.value);
  }
  let closeS = 0;
  const unknown: string[] = [];
  const closing: string[] = [];
  for (const [variable, value] of values) {
    const state = input.hardware.variables.get(variable);
    if (state === undefined || state.about !== 'aspect') continue;
    const kind = kindOf(input, state.of);
    const aspectId = variable.includes('.') ? variable.slice(variable.indexOf('.') + 1) : kind?.aspects[0]?.id;
    const aspect = kind?.aspects.find((candidate) => candidate.id === aspectId);
    const safe = aspect?.safe[value];
    if (safe === 'always' || safe === 'next-eva' || safe === 'tonight') continue;
    const verb = kind === undefined ? undefined : closingVerb(kind, aspectId ?? null, value);
    if (verb === undefined) {
      unknown.push(`${variable} ${value}`);
      continue;
    }
    closeS += verb.timeS.likely;
    closing.push(`${verb.id} ${state.of}`);
  }
  return { closeS, unknown, closing };
}

function kindOf(input: TerminateInput, hardwareId: string): Kind | undefined {
  const hardware = input.campaign.hardware.find((piece) => piece.id === hardwareId);
  return hardware === undefined ? undefined : input.kinds.get(hardware.kind);
}

function closingVerb(kind: Kind, aspect: string | null, value: string): Verb | undefined {
  return kind.verbs
    .filter((verb) => verb.closing && (verb.aspect ?? kind.aspects[0]?.id ?? null) === aspect)
    .filter((verb) => verb.needs.length === 0 || verb.needs.includes(value))
    .sort((a, b) => a.timeS.likely - b.timeS.likely)[0];
}
