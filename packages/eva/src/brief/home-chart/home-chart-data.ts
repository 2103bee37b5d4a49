/**
 * What the home chart shows of one EVA, before any drawing: times in seconds of PET, heights in seconds to the hatch. The
 * SVG, the table twin and the app's chart all read this.
 */
import type { Join, WindowSet } from '../../campaign/campaign.ts';
import { personCourse, type Stretch } from '../../timeline/person-course.ts';
import type { EvaTimeline } from '../../timeline/timeline.ts';
import type { CommittedStretch } from '../../wayhome/committed-stretches.ts';
import type { PersonSample } from '../../wayhome/person-samples.ts';
import type { BriefInput } from '../brief-input.ts';

export interface HomeChartData {
  readonly eva: EvaTimeline;
  readonly title: string;
  readonly shelves: readonly Shelf[];
  readonly lanes: readonly Lane[];
  readonly armRows: readonly ArmRow[];
  readonly bands: readonly Band[];
  readonly joins: readonly JoinTie[];
  readonly wall: { readonly petS: number; readonly footS: number; readonly cause: string } | null;
  /** Time from the first ingress passage to the hatch closed. */
  readonly hatchS: number;
  readonly startS: number;
  readonly endS: number;
}
export interface Shelf {
  readonly place: string;
  readonly title: string;
  readonly family: string;
  readonly homeS: number;
}
export interface Lane {
  readonly person: string;
  readonly course: readonly Stretch[];
  readonly samples: readonly PersonSample[];
  readonly committed: readonly CommittedStretch[];
}
export interface ArmRow {
  readonly arm: string;
  readonly title: string;
  readonly pieces: readonly {
    readonly startS: number;
    readonly endS: number;
    readonly words: string;
    readonly rider: string | null;
  }[];
}
export interface Band {
  readonly window: WindowSet;
  /** Seconds of PET, clipped to the chart. */
  readonly pieces: readonly (readonly [number, number])[];
}
export interface JoinTie {
  readonly join: Join;
  readonly petS: number;
  readonly says: string | null;
  readonly listens: string | null;
}

/** Before PET 0 and after the wall the chart shows this much more. */
const EDGE_S = 600;

export function homeChartData(input: BriefInput, eva: EvaTimeline): HomeChartData {
  const { campaign } = input;
  const outside = campaign.people.filter((person) => person.role === 'outside');
  const surface = input.wayHome(eva);
  const lanes = outside
    .map((person) => ({
      person: person.id,
      course: personCourse(campaign, eva, person.id),
      samples: surface.people.get(person.id) ?? [],
      committed: surface.committed.filter((stretch) => stretch.person === person.id),
    }))
    .filter((lane) => lane.course.length > 0);
  const ingress = eva.passages.filter((passage) => passage.kind !== 'egress');
  const hatchS = ingress.length === 0 ? 0 : eva.bothInS - Math.min(...ingress.map((passage) => passage.startS));
  const endS = Math.max(eva.bothInS, eva.wall?.petS ?? 0) + EDGE_S;
  const startS = -EDGE_S;
  return {
    eva,
    title: campaign.evas.find((candidate) => candidate.id === eva.eva)?.title ?? eva.eva,
    shelves: shelvesOf(input, eva, lanes),
    lanes,
    armRows: campaign.arms.map((arm) => armRow(input, eva, arm.id, arm.title)).filter((row) => row.pieces.length > 0),
    // Light of single places has rows of its own below the chart.
    bands: campaign.windows
      .filter(({ computed }) => computed === undefined || computed.place === null)
      .map((window) => ({ window, pieces: clipped(window, eva.petZeroUtcMs, startS, endS) })),
    joins: joinTies(input, eva),
    wall: eva.wall === null ? null : { petS: eva.wall.petS, footS: eva.wall.petS - hatchS, cause: eva.wall.cause },
    hatchS,
    startS,
    endS,
  };
}

function shelvesOf(input: BriefInput, eva: EvaTimeline, lanes: readonly Lane[]): readonly Shelf[] {
  const visited = new Set(lanes.flatMap((lane) => lane.course.flatMap((stretch) => [stretch.place, stretch.to])));
  const shelves: Shelf[] = [];
  for (const place of input.campaign.vehicle.places) {
    if (!visited.has(place.id)) continue;
    const homeS = input.homeSeconds(eva.eva, place.id, 1);
    if (homeS !== null) shelves.push({ place: place.id, title: place.title, family: place.family, homeS });
  }
  return shelves.sort((a, b) => a.homeS - b.homeS || (a.place < b.place ? -1 : 1));
}

function armRow(input: BriefInput, eva: EvaTimeline, arm: string, title: string): ArmRow {
  const stints = new Map(
    input.campaign.tasks.flatMap((task) => task.stints.map((stint) => [stint.key, stint] as const)),
  );
  const poses = input.campaign.arms.find((candidate) => candidate.id === arm)?.poses ?? [];
  const poseTitle = (id: string): string => poses.find((pose) => pose.id === id)?.title ?? id;
  const pieces = eva.moves
    .filter((move) => move.who === arm)
    .map((move) => ({
      startS: move.startS,
      endS: move.endS,
      words: `to ${poseTitle(move.to)}`,
      rider: null as string | null,
    }));
  for (const planned of eva.stints) {
    const stint = stints.get(planned.stint);
    if (stint === undefined) continue;
    const index = stint.roles.findIndex((role, at) => role.name === 'arm' && planned.assigned[at] === arm);
    if (index < 0) continue;
    const riderIndex = stint.roles.findIndex((role) => role.endOn === arm || role.startOn === arm);
    const rider = riderIndex < 0 ? null : (planned.assigned[riderIndex] ?? null);
    pieces.push({ startS: planned.startS, endS: planned.endS, words: stint.title, rider });
  }
  return { arm, title, pieces: pieces.sort((a, b) => a.startS - b.startS) };
}

function clipped(
  window: WindowSet,
  petZeroUtcMs: number,
  startS: number,
  endS: number,
): readonly (readonly [number, number])[] {
  return window.intervals
    .map(([from, to]) => [(from - petZeroUtcMs) / 1000, (to - petZeroUtcMs) / 1000] as const)
    .filter(([from, to]) => to > startS && from < endS)
    .map(([from, to]) => [Math.max(from, startS), Math.min(to, endS)] as const);
}

function joinTies(input: BriefInput, eva: EvaTimeline): readonly JoinTie[] {
  const joins = new Map(input.campaign.tasks.flatMap((task) => task.joins.map((join) => [join.id, join] as const)));
  const planned = new Map(eva.stints.map((stint) => [stint.stint, stint] as const));
  return eva.joins.flatMap((tie) => {
    const join = joins.get(tie.join);
    if (join === undefined) return [];
    return [
      {
        join,
        petS: tie.releasedS,
        says: join.says ?? planned.get(join.releases)?.assigned[0] ?? null,
        listens: join.listens ?? planned.get(join.waits)?.assigned[0] ?? null,
      },
    ];
  });
}
