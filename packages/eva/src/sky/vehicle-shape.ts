import { Fault } from '@handrail/quantity/fault';
import { norm, type Vector3 } from '@handrail/quantity/vector';
import { inRange } from './in-range.ts';
import { IDENTITY, type Matrix3, multiply, rotate, transpose, turnAbout } from './rotation.ts';
import { add, cross, dot, scale, unit } from './vector-algebra.ts';

/** What of the vehicle can cast a shadow or stand in the way of a beam. All coordinates in body axes with every joint at zero. */
export interface VehicleShape {
  readonly bodies: readonly ShapeBody[];
  readonly joints: readonly Joint[];
}

export interface ShapeBody {
  readonly name: string;
  /** Nine numbers a triangle, m. Both sides cast shadow. */
  readonly trianglesM: ArrayLike<number>;
  /** The joint that carries it; null: fixed to the vehicle. */
  readonly joint: string | null;
}

export interface Joint {
  readonly name: string;
  /** The joint that carries this one; null: the vehicle. */
  readonly parent: string | null;
  readonly pivotM: Vector3;
  /** Direction of the axis; the angle is right-handed about it. */
  readonly axis: Vector3;
  readonly motion: JointMotion;
}

export type JointMotion =
  | { readonly kind: 'held'; readonly angleRad: number }
  /** Turns so that `facing` (its part across the axis) looks as nearly at the Sun as the limits allow, plus `biasRad`. */
  | {
      readonly kind: 'tracks-sun';
      readonly facing: Vector3;
      readonly biasRad: number;
      readonly limitsRad: readonly [number, number] | null;
    };

/** Where a carried part has gone: p_vehicle = turn · p + shiftM. */
export interface Pose {
  readonly turn: Matrix3;
  readonly shiftM: Vector3;
}

export const AT_REST: Pose = { turn: IDENTITY, shiftM: [0, 0, 0] };

/**
 * Poses of all joints, parents first, as a function of the direction of the Sun in body axes. Index 0 is the vehicle itself.
 * @returns names in the order of the poses, and the function
 * @throws Fault `sky/bad-shape` for an unknown or circular parent, a doubled name, or an axis without length
 */
export function jointPoses(joints: readonly Joint[]): {
  readonly names: readonly (string | null)[];
  readonly posesAt: (sunBody: Vector3) => readonly Pose[];
} {
  const ordered = parentsFirst(joints);
  const names = [null, ...ordered.map((joint) => joint.name)];
  const parts = ordered.map((joint) => prepared(joint, names.indexOf(joint.parent)));
  return {
    names,
    posesAt: (sunBody) => {
      const poses: Pose[] = [AT_REST];
      for (const part of parts) {
        const parent = poses[part.parent] as Pose;
        // The parent's turn carries its rest axes into body axes, so its inverse brings the Sun to the joint's own rest axes.
        const angle = part.angleFor(rotate(transpose(parent.turn), sunBody));
        const own = turnAbout(part.axis, angle);
        const shift = add(part.pivotM, scale(rotate(own, part.pivotM), -1));
        poses.push({ turn: multiply(parent.turn, own), shiftM: add(rotate(parent.turn, shift), parent.shiftM) });
      }
      return poses;
    },
  };
}

function parentsFirst(joints: readonly Joint[]): readonly Joint[] {
  const byName = new Map(joints.map((joint) => [joint.name, joint]));
  if (byName.size !== joints.length)
    throw badShape('two joints have the same name', { joints: joints.map((joint) => joint.name) });
  const done: Joint[] = [];
  const visit = (joint: Joint, above: readonly string[]): void => {
    if (done.includes(joint)) return;
    if (above.includes(joint.name))
      throw badShape(`joint ${joint.name} carries itself: ${[...above, joint.name].join(' > ')}`, {
        joint: joint.name,
      });
    if (joint.parent !== null) {
      const parent = byName.get(joint.parent);
      if (parent === undefined) {
        throw badShape(
          `joint ${joint.name} hangs on "${joint.parent}", which is not a joint; joints are ${[...byName.keys()].join(', ')}`,
          { joint: joint.name },
        );
      }
      visit(parent, [...above, joint.name]);
    }
    done.push(joint);
  };
  for (const joint of joints) visit(joint, []);
  return done;
}

interface PreparedJoint {
  readonly parent: number;
  readonly pivotM: Vector3;
  readonly axis: Vector3;
  readonly angleFor: (sun: Vector3) => number;
}

function prepared(joint: Joint, parent: number): PreparedJoint {
  if (!(norm(joint.axis) > 1e-9))
    throw badShape(`the axis of joint ${joint.name} has no length`, { joint: joint.name });
  const axis = unit(joint.axis);
  const { motion } = joint;
  if (motion.kind === 'held') {
    const angle = inRange(`the angle of joint ${joint.name}`, motion.angleRad, -2 * Math.PI, 2 * Math.PI, 'rad');
    return { parent, pivotM: joint.pivotM, axis, angleFor: () => angle };
  }
  const across = add(motion.facing, scale(axis, -dot(motion.facing, axis)));
  if (!(norm(across) > 1e-6))
    throw badShape(`what joint ${joint.name} turns to the Sun faces along its own axis`, { joint: joint.name });
  const facing = unit(across);
  const side = cross(axis, facing);
  const { limitsRad, biasRad } = motion;
  if (limitsRad !== null && !(limitsRad[0] < limitsRad[1] && limitsRad[1] - limitsRad[0] <= 2 * Math.PI)) {
    throw badShape(`the limits of joint ${joint.name} must run from less to more by at most a turn`, {
      joint: joint.name,
      limitsRad,
    });
  }
  return {
    parent,
    pivotM: joint.pivotM,
    axis,
    angleFor: (sun) => {
      const [forward, sideways] = [dot(sun, facing), dot(sun, side)];
      // With the Sun along the axis every angle is as good; zero is chosen and no shadow claim should rest on it.
      const wanted = (Math.hypot(forward, sideways) < 1e-9 ? 0 : Math.atan2(sideways, forward)) + biasRad;
      return limitsRad === null ? wanted : nearestWithin(wanted, limitsRad);
    },
  };
}

function nearestWithin(angleRad: number, [low, high]: readonly [number, number]): number {
  const turn = 2 * Math.PI;
  const above = low + ((((angleRad - low) % turn) + turn) % turn);
  if (above <= high) return above;
  return above - high < low + turn - above ? high : low;
}

export function badShape(what: string, values: Readonly<Record<string, unknown>>): Fault {
  return new Fault('sky/bad-shape', what, { values });
}
