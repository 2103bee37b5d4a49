/**
 * The vehicle at one minute of a plan, as a drawing needs it: everything by position in the vehicle's axes, metres. What is
 * not stated is null or left out, and `notes` says so; nothing is drawn where the campaign does not say that it is.
 */
import type { Vector3 } from '@handrail/quantity/vector';
import type { Pose } from '../sky/vehicle-shape.ts';

/** What stays the same over one EVA. */
export interface SceneStage {
  readonly eva: string;
  readonly startS: number;
  readonly endS: number;
  readonly bodies: readonly SceneBody[];
  readonly notes: readonly string[];
}
export interface SceneBody {
  readonly name: string;
  /** Nine numbers a triangle, every joint at zero. */
  readonly trianglesM: ArrayLike<number>;
  /** Joint that carries it, to be looked up in `SceneMoment.joints`; null: fixed. */
  readonly joint: string | null;
}

export interface SceneMoment {
  readonly petS: number;
  readonly utcMs: number;
  /** How each joint has turned and shifted what it carries. */
  readonly joints: ReadonlyMap<string, Pose>;
  /** Unit vector to the Sun in the vehicle's axes; null: no orbit or attitude is stated. */
  readonly sunDirection: Vector3 | null;
  /** In the planet's shadow; null: no orbit is stated. */
  readonly isNight: boolean | null;
  readonly places: readonly ScenePlace[];
  readonly rails: readonly SceneRail[];
  readonly people: readonly ScenePerson[];
  readonly arms: readonly SceneArm[];
  /** Every piece of hardware whose place is known. */
  readonly items: readonly SceneItem[];
  /** Titles of pieces that cannot be drawn, with the reason. */
  readonly undrawn: readonly string[];
}
export interface ScenePlace {
  readonly id: string;
  readonly title: string;
  readonly family: string;
  readonly positionM: Vector3;
  /** Where one stands to look at it; null: not stated. */
  readonly seenFromM: Vector3 | null;
  readonly isKeepOut: boolean;
}
export interface SceneRail {
  readonly id: string;
  readonly fromM: Vector3;
  readonly toM: Vector3;
  readonly isOpen: boolean;
  /** "port-joint must be locked; it is turning"; null: open. */
  readonly closedBecause: string | null;
}
export interface ScenePerson {
  readonly id: string;
  readonly positionM: Vector3;
  /** "works at Pump bay", "moves to Spine 3", "waits at Lock porch", "inside". */
  readonly words: string;
  readonly stint: string | null;
  /** Arm whose plate they stand on. */
  readonly on: string | null;
  /** From the anchor over fairleads to the person; null: not modelled or no position. */
  readonly tetherM: readonly Vector3[] | null;
  readonly tetherWords: string | null;
  /** The route of the move under way, places in order; empty: no move. */
  readonly routeM: readonly Vector3[];
}
export interface SceneArm {
  readonly id: string;
  readonly title: string;
  /** Title of its pose, or of the two that it is between. */
  readonly words: string;
  /** Tip; its links are not stated, so they are not drawn. null: a free pose. */
  readonly tipM: Vector3 | null;
  readonly rider: string | null;
}
export interface SceneItem {
  readonly id: string;
  readonly title: string;
  readonly kind: string;
  readonly positionM: Vector3;
  /** "at Pump bay", "in Bag 1", "held by EV1". */
  readonly where: string;
  /** Place, person or arm that it is ultimately at: "place:pump-bay". */
  readonly outermost: string;
  /** "bolted", or "mated, power off"; empty: the kind has no state. */
  readonly state: string;
  /** PET of its last change in this EVA; null: unchanged. */
  readonly changedS: number | null;
}
