/** Where the kit of a response is when it is needed: who has it, how far away it lies, whether somebody is using it. */
import type { Hardware } from '../campaign/campaign.ts';
import { stintsByKey } from '../timeline/person-course.ts';
import type { EvaProgress } from '../wayhome/eva-progress.ts';
import { locatePiece, type Whereabouts } from '../wayhome/locate-piece.ts';
import type { WayHomeGround } from '../wayhome/safe-until.ts';
import type { Segment } from '../wayhome/segments.ts';

export interface ResponseKit {
  /** Hardware id, or kind of tool, as the response names it. */
  readonly asked: string;
  /** The piece that serves; null: the campaign has none. */
  readonly piece: string | null;
  /** "with EV1", "at bay"; null: nowhere that can be told. */
  readonly where: string | null;
  /** Seconds to it and back from who responds; 0: in their hands or where they are. null: out of their reach, or not known. */
  readonly fetchS: number | null;
  /** Who else works with it just then, and in which stint; null: nobody. */
  readonly inUseBy: { readonly person: string; readonly stint: string } | null;
}

/** @param responding the segment of who responds; the nearest piece that nobody uses serves, else the nearest */
export function responseKit(
  ground: WayHomeGround,
  progress: EvaProgress,
  kit: readonly string[],
  responding: Segment,
  now: readonly Segment[],
  values: ReadonlyMap<string, string>,
): readonly ResponseKit[] {
  return kit.map((asked) => {
    const found = ground.campaign.hardware
      .filter((piece) => piece.id === asked || piece.kind === asked)
      .map((piece) => kitOf(ground, progress, asked, piece, responding, now, values));
    const cost = (one: ResponseKit): number => (one.inUseBy === null ? 0 : 1e6) + (one.fetchS ?? 1e7);
    return (
      found.toSorted((a, b) => cost(a) - cost(b))[0] ?? { asked, piece: null, where: null, fetchS: null, inUseBy: null }
    );
  });
}

function kitOf(
  ground: WayHomeGround,
  progress: EvaProgress,
  asked: string,
  piece: Hardware,
  responding: Segment,
  now: readonly Segment[],
  values: ReadonlyMap<string, string>,
): ResponseKit {
  const valueOf = (variable: string): string =>
    values.get(variable) ?? ground.hardware.variables.get(variable)?.initial ?? 'unknown';
  const at = locatePiece(ground.facts, piece, valueOf);
  const holder = at?.kind === 'person' ? now.find((segment) => segment.person === at.id) : undefined;
  return {
    asked,
    piece: piece.id,
    where: at === null ? null : `${at.kind === 'place' ? 'at' : 'with'} ${at.id}`,
    fetchS: fetchSeconds(ground, progress, at, holder, responding, values),
    inUseBy: usedBy(ground, piece, responding, now),
  };
}

function fetchSeconds(
  ground: WayHomeGround,
  progress: EvaProgress,
  at: Whereabouts | null,
  holder: Segment | undefined,
  responding: Segment,
  values: ReadonlyMap<string, string>,
): number | null {
  if (at === null || at.kind === 'arm') return null;
  if (at.kind === 'person' && at.id === responding.person) return 0;
  // With somebody inside it is not out here.
  if (at.kind === 'person' && (holder === undefined || holder.kind === 'inside')) return null;
  const place = at.kind === 'place' ? at.id : (holder?.place ?? '');
  if (place === responding.place) return 0;
  const travel = progress.travelOf(responding.person, values);
  const pace = ground.campaign.people.find((person) => person.id === responding.person)?.pace ?? 1;
  const [there, back] = [
    travel.secondsBetween(responding.place, place, null, pace),
    travel.secondsBetween(place, responding.place, null, pace),
  ];
  return there === null || back === null ? null : there + back;
}

function usedBy(
  ground: WayHomeGround,
  piece: Hardware,
  responding: Segment,
  now: readonly Segment[],
): ResponseKit['inUseBy'] {
  const stints = stintsByKey(ground.campaign);
  for (const { person, stint, step } of now) {
    if (person === responding.person || stint === null || step === null || !stints.has(stint)) continue;
    const tools = ground.hardware.effects.get(stint)?.tools ?? [];
    if (tools.some(({ tool, steps }) => tool === piece.id && steps.includes(step))) return { person, stint };
  }
  return null;
}
