/** What holds a person where they are, and what it takes to leave: the part of the state that belongs to one person. */
import type { Campaign } from '../campaign/campaign.ts';
import { ARM_KIND, CREW_KIND, type KindsLibrary } from '../kinds/kinds-library.ts';
import type { Segment } from './segments.ts';
import { type Basis, travelFactor, verbTime } from './step-time.ts';
import type { ArmIs, PersonNow, Start } from './way-home-state.ts';

/**
 * @param atS PET within the segment; null: anywhere in it, so that each delay is the longest that it can be
 * @param loads hardware with a load class in this person's hands
 * @returns null: inside already, or still
 */
export function personNow(
  campaign: Campaign,
  library: KindsLibrary,
  segment: Segment,
  atS: number | null,
  loads: readonly string[],
  arm: ArmIs,
  basis: Basis,
): PersonNow | null {
  if (segment.kind === 'inside') return null;
  const lengthS = segment.endS - segment.startS;
  const doneS = atS === null ? lengthS : Math.min(Math.max(atS - segment.startS, 0), lengthS);
  const leftS = atS === null ? lengthS : lengthS - doneS;
  const factor = travelFactor(campaign, basis);
  const base = { person: segment.person, inHatch: false, passageLeftS: null, loads, stuck: null };
  const start = { delayS: 0, delayWords: null, leaveS: 0, leaveWords: null };
  if (segment.kind === 'out' || segment.kind === 'in') {
    const passageLeftS = segment.kind === 'in' ? leftS : doneS;
    const place = segment.place;
    return { ...base, inHatch: true, passageLeftS, starts: [{ ...start, place, exit: place }] };
  }
  if (segment.rail !== null) {
    const [from, to] = segment.rail;
    const starts = [
      { ...start, place: from, exit: from, delayS: doneS * factor, delayWords: `back to ${from}` },
      { ...start, place: to, exit: to, delayS: leftS * factor, delayWords: `on to ${to}` },
    ];
    return { ...base, starts: from === to ? starts.slice(1) : starts };
  }
  const pace = campaign.people.find((person) => person.id === segment.person)?.pace ?? 1;
  const restraintS = segment.restraint === null ? 0 : restraintEgressS(campaign, library, pace, basis);
  if (segment.onArm === null) {
    return {
      ...base,
      starts: [
        {
          ...start,
          place: segment.place,
          exit: segment.place,
          leaveS: restraintS,
          leaveWords: restraintS === 0 ? null : 'out of the restraint',
        },
      ],
    };
  }
  const found = fromTheArm(campaign, library, segment, arm, pace, basis, restraintS);
  return { ...base, ...found };
}

/** Out of a foot restraint: the operator's figure; else at least the kind's percentile. */
export function restraintEgressS(campaign: Campaign, library: KindsLibrary, pace: number, basis: Basis): number {
  const ofKind = verbTime(library.kinds.get(CREW_KIND), 'egress-restraint', pace, basis) ?? 0;
  const stated = campaign.limits.restraintEgressS;
  if (stated === null) return ofKind;
  return basis === 'planning' ? stated * pace : Math.max(stated * pace, ofKind);
}

function fromTheArm(
  campaign: Campaign,
  library: KindsLibrary,
  segment: Segment,
  arm: ArmIs,
  pace: number,
  basis: Basis,
  restraintS: number,
): Pick<PersonNow, 'starts' | 'stuck'> {
  const on = segment.onArm;
  const body = campaign.arms.find((candidate) => candidate.id === on?.arm);
  if (on === null || body === undefined) return { starts: [], stuck: 'the arm is not known' };
  const factor = travelFactor(campaign, basis);
  const poses = [...new Set([on.fromPose, on.toPose])].map((id) => body.poses.find((pose) => pose.id === id));
  const moving = on.fromPose !== on.toPose;
  const transfer = body.transfers.find(
    (one) =>
      (one.from === on.fromPose && one.to === on.toPose) ||
      (!one.oneWay && one.to === on.fromPose && one.from === on.toPose),
  );
  if (arm === 'dead') {
    const [pose] = poses;
    const down = moving ? (transfer?.climbDown ?? null) : (pose?.climbDown ?? null);
    if (down === null) {
      const where = moving ? 'between two poses' : `at ${pose?.title ?? on.toPose}`;
      return { starts: [], stuck: `no way down from ${body.title} ${where} is stated` };
    }
    return {
      starts: [
        {
          // Where no place is, nothing can be done before the climb.
          place: (moving ? null : pose?.place) ?? `the plate of ${body.title}`,
          exit: down.place,
          delayS: 0,
          delayWords: null,
          leaveS: restraintS + down.durationS * pace * factor,
          leaveWords: `climb down to ${down.place}`,
        },
      ],
      stuck: null,
    };
  }
  const dismountS = verbTime(library.kinds.get(ARM_KIND), 'dismount', pace, basis);
  if (dismountS === null) return { starts: [], stuck: 'the library does not say how long getting off an arm takes' };
  const rideS = moving ? Math.max(transfer?.loadedS ?? 0, segment.endS - segment.startS) * factor : 0;
  const starts = poses.flatMap((pose): Start[] => {
    if (pose === undefined || pose.place === null) return [];
    return [
      {
        place: pose.place,
        exit: pose.place,
        delayS: rideS,
        delayWords: moving ? `ride to ${pose.title}` : null,
        leaveS: restraintS + dismountS,
        leaveWords: `off the plate at ${pose.place}`,
      },
    ];
  });
  return { starts, stuck: starts.length === 0 ? `${body.title} stands at no place where one gets off` : null };
}
