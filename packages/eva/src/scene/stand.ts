/** Where a person or an arm's tip is at one second, read off its course: at a place, or on the way along some places. */
import type { Campaign } from '../campaign/campaign.ts';
import type { Stretch } from '../timeline/person-course.ts';
import type { EvaTimeline } from '../timeline/timeline.ts';

export interface Stand {
  /** Places of the way; one: standing there. */
  readonly along: readonly string[];
  /** 0 at the start of the way, 1 at its end. */
  readonly progress: number;
  readonly stretch: Stretch | null;
}

/** Before the first stretch and after the last a person is at the hatch, inside. */
export function personStand(course: readonly Stretch[], hatch: string, petS: number): Stand {
  const stretch = course.find(({ startS, endS }) => startS <= petS && petS < endS);
  if (stretch === undefined) return { along: [hatch], progress: 0, stretch: null };
  const isWay = stretch.place !== stretch.to;
  const along = !isWay ? [stretch.place] : stretch.path.length > 1 ? stretch.path : [stretch.place, stretch.to];
  const progress = isWay ? (petS - stretch.startS) / Math.max(1, stretch.endS - stretch.startS) : 0;
  return { along, progress, stretch };
}

export interface ArmStand {
  readonly from: string;
  readonly to: string;
  readonly progress: number;
  readonly rider: string | null;
}

/** Poses of an arm over one EVA: its moves, and the stints that it takes part in. */
export function armStand(campaign: Campaign, eva: EvaTimeline, arm: string, startPose: string, petS: number): ArmStand {
  const stints = new Map(campaign.tasks.flatMap((task) => task.stints.map((stint) => [stint.key, stint] as const)));
  const doings = eva.moves
    .filter((move) => move.who === arm)
    .map(({ startS, endS, from, to }) => ({ startS, endS, from, to, rider: null as string | null, ridden: false }));
  for (const planned of eva.stints) {
    const roles = stints.get(planned.stint)?.roles ?? [];
    const own = roles.find((role, index) => role.name === 'arm' && planned.assigned[index] === arm);
    const riderIndex = roles.findIndex((role) => role.startOn === arm || role.endOn === arm);
    if (own === undefined) continue;
    const rider = planned.assigned[riderIndex] ?? null;
    const ridden = roles[riderIndex]?.endOn === arm;
    doings.push({ startS: planned.startS, endS: planned.endS, from: own.at, to: own.to, rider, ridden });
  }
  doings.sort((a, b) => a.startS - b.startS);
  let stand: ArmStand = { from: startPose, to: startPose, progress: 0, rider: null };
  for (const doing of doings) {
    if (doing.startS > petS) break;
    const isOver = petS >= doing.endS;
    stand = isOver
      ? { from: doing.to, to: doing.to, progress: 0, rider: doing.ridden ? doing.rider : null }
      : {
          from: doing.from,
          to: doing.to,
          progress: (petS - doing.startS) / Math.max(1, doing.endS - doing.startS),
          rider: doing.rider,
        };
  }
  return stand;
}
