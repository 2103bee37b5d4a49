/**
 * The vehicle, its people and its hardware at any second of one EVA: what the drawing of the vehicle shows, and its table twin.
 * Built once for a timeline; a moment costs no search, so that it can be scrubbed.
 */
import type { Vector3 } from '@handrail/quantity/vector';
import type { Campaign } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import { rotate } from '../sky/rotation.ts';
import { add } from '../sky/vector-algebra.ts';
import type { Pose } from '../sky/vehicle-shape.ts';
import { contains } from '../sky/window-set.ts';
import { personCourse } from '../timeline/person-course.ts';
import type { EvaTimeline, Timeline } from '../timeline/timeline.ts';
import type { TravelTable } from '../vehicle/travel-table.ts';
import { itemBook, layItems } from './lay-items.ts';
import { openRails, travelByRails } from './open-rails.ts';
import { pointAlong } from './point-along.ts';
import type { SceneArm, SceneMoment, ScenePerson, ScenePlace, SceneStage } from './scene.ts';
import { armStand, personStand } from './stand.ts';
import { sunOver } from './sun-over.ts';
import { turnedJoints } from './turned-joints.ts';
import { valuesOver } from './values-over.ts';

export interface VehicleScene {
  readonly stage: SceneStage;
  readonly at: (petS: number) => SceneMoment;
}

/** Before PET 0 and after both are in, the scene can be looked at this much longer. */
const EDGE_S = 600;

/** @returns null where the timeline has no such EVA */
export function vehicleScene(
  campaign: Campaign,
  hardware: HardwareModel,
  timeline: Timeline,
  evaId: string,
): VehicleScene | null {
  const eva = timeline.evas.find((one) => one.eva === evaId);
  if (eva === undefined) return null;
  const changes = valuesOver(campaign, hardware, timeline, evaId);
  const book = itemBook(campaign, hardware, changes);
  const sun = sunOver(campaign, eva, EDGE_S);
  const turned = turnedJoints(campaign, changes, eva);
  const courses = campaign.people
    .filter(({ role }) => role === 'outside')
    .map((person) => ({ person, course: personCourse(campaign, eva, person.id) }));
  const startPoses = new Map(
    campaign.arms.map((arm) => [arm.id, poseAtStart(campaign, timeline, eva, arm.id, arm.startPose)]),
  );
  const travels = travelByRails(campaign, changes);
  const hatch = campaign.vehicle.hatch ?? 'hatch';
  const posePlace = new Map(
    campaign.arms.flatMap((arm) => arm.poses.map((pose) => [`${arm.id}/${pose.id}`, pose] as const)),
  );

  const at = (petS: number): SceneMoment => {
    const utcMs = eva.petZeroUtcMs + petS * 1000;
    const sunDirection = sun?.directionAt(utcMs) ?? null;
    const joints = turned(petS, sunDirection);
    const places = placesAt(campaign, joints);
    const positions = new Map(places.map((place) => [place.id, place.positionM]));
    const placeAt = (id: string): Vector3 | null => positions.get(id) ?? null;
    const arms = campaign.arms.map((arm): SceneArm => {
      const stand = armStand(campaign, eva, arm.id, startPoses.get(arm.id) ?? arm.startPose, petS);
      const [from, to] = [posePlace.get(`${arm.id}/${stand.from}`), posePlace.get(`${arm.id}/${stand.to}`)];
      const ends = [from, to].map((pose) => (pose?.place == null ? null : placeAt(pose.place)));
      const tipM = ends[0] == null || ends[1] == null ? null : pointAlong([ends[0], ends[1]], stand.progress);
      const toTitle = to?.title ?? stand.to;
      const words = stand.from === stand.to ? toTitle : `on its way: ${from?.title ?? stand.from} → ${toTitle}`;
      return { id: arm.id, title: arm.title, tipM, words, rider: stand.rider };
    });
    const people = courses.flatMap(({ person, course }): ScenePerson[] => {
      if (course.length === 0) return [];
      const stand = personStand(course, hatch, petS);
      const way = stand.along.map(placeAt);
      if (way.some((point) => point === null)) return [];
      const { stretch } = stand;
      const on = stretch?.on ?? null;
      const tip = on === null ? null : (arms.find((arm) => arm.id === on)?.tipM ?? null);
      const positionM = tip ?? pointAlong(way as Vector3[], stand.progress);
      const tether =
        stretch === null ? null : tetherOf(travels(petS, person.id), stand.along, stand.progress, placeAt, positionM);
      return [
        {
          id: person.id,
          positionM,
          words: doingWords(campaign, stretch, stand.along),
          stint: stretch?.stint?.key ?? null,
          on,
          tetherM: tether?.points ?? null,
          tetherWords: tether?.words ?? null,
          routeM: stretch?.kind === 'move' ? (way as Vector3[]) : [],
        },
      ];
    });
    const holders = new Map<string, Vector3>([
      ...places.map((place) => [`place:${place.id}`, place.positionM] as const),
      ...people.map((person) => [`person:${person.id}`, person.positionM] as const),
      ...arms.flatMap((arm) => (arm.tipM === null ? [] : [[`arm:${arm.id}`, arm.tipM] as const])),
    ]);
    return {
      petS,
      utcMs,
      joints,
      sunDirection,
      isNight: sun === null ? null : contains(sun.night, utcMs),
      places,
      rails: openRails(campaign, changes, petS, placeAt),
      people,
      arms,
      ...layItems(book, petS, (holder) => holders.get(holder) ?? null),
    };
  };
  return { stage: stageOf(campaign, eva), at };
}

function stageOf(campaign: Campaign, eva: EvaTimeline): SceneStage {
  const notes: string[] = [];
  if (campaign.sky.bodies.length === 0) notes.push('no bodies are stated: only places and rails are drawn');
  if (campaign.sky.orbit === null) notes.push('no orbit is stated: the light is not the Sun’s');
  else if (campaign.sky.attitude === null) notes.push('no attitude is stated: the light is not the Sun’s');
  const unplaced = campaign.vehicle.places.filter(({ positionM }) => positionM === null);
  if (unplaced.length > 0)
    notes.push(`not drawn, no position stated: ${unplaced.map(({ title }) => title).join(', ')}`);
  if (campaign.arms.length > 0) notes.push('of an arm only the tip is drawn: its links are not stated');
  return {
    eva: eva.eva,
    startS: -EDGE_S,
    endS: eva.bothInS + EDGE_S,
    bodies: campaign.sky.bodies.map(({ name, trianglesM, joint }) => ({ name, trianglesM, joint })),
    notes,
  };
}

function placesAt(campaign: Campaign, joints: ReadonlyMap<string, Pose>): readonly ScenePlace[] {
  const carriers = new Map(campaign.sky.worksites.map(({ name, joint }) => [name, joint]));
  return campaign.vehicle.places.flatMap(({ id, title, family, positionM, seenFromM, keepOut }) => {
    if (positionM === null) return [];
    const pose = joints.get(carriers.get(id) ?? '');
    const moved = pose === undefined ? positionM : add(rotate(pose.turn, positionM), pose.shiftM);
    return [{ id, title, family, positionM: moved, seenFromM, isKeepOut: keepOut }];
  });
}

function tetherOf(
  travel: TravelTable,
  along: readonly string[],
  progress: number,
  placeAt: (id: string) => Vector3 | null,
  personM: Vector3,
): { readonly points: readonly Vector3[]; readonly words: string } | null {
  const place = along[Math.min(along.length - 1, Math.floor(progress * (along.length - 1)))] ?? '';
  const path = travel.tetherAt(place);
  if (path === null) return null;
  const points = path.points.map(placeAt);
  if (points.some((point) => point === null)) return null;
  const words = `from ${path.anchor}, ${path.reelM.toFixed(1)} m paid out at ${place}`;
  return { points: [...(points as Vector3[]), personM], words };
}

function doingWords(
  campaign: Campaign,
  stretch: ReturnType<typeof personStand>['stretch'],
  along: readonly string[],
): string {
  const title = (id: string): string => campaign.vehicle.places.find((place) => place.id === id)?.title ?? id;
  if (stretch === null) return 'inside';
  if (stretch.kind === 'passage') return `passes the hatch at ${title(stretch.place)}`;
  if (stretch.kind === 'move') return `moves to ${title(along.at(-1) ?? stretch.to)}`;
  return stretch.kind === 'wait'
    ? `waits at ${title(stretch.place)}`
    : `${stretch.stint?.title ?? 'works'}, at ${title(stretch.place)}`;
}

function poseAtStart(campaign: Campaign, timeline: Timeline, eva: EvaTimeline, arm: string, stated: string): string {
  let pose = stated;
  for (const before of timeline.evas.toSorted((a, b) => a.petZeroUtcMs - b.petZeroUtcMs)) {
    if (before.petZeroUtcMs >= eva.petZeroUtcMs) break;
    pose = armStand(campaign, before, arm, pose, Number.POSITIVE_INFINITY).to;
  }
  return pose;
}
