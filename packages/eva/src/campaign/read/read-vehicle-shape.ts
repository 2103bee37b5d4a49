/** What of the vehicle casts shadow: bodies of boxes and cylinders, and the joints that carry them. */
import type { Vector3 } from '@handrail/quantity/vector';
import { boxTriangles, drumTriangles } from '../../sky/shape-primitives.ts';
import type { ShapeBody } from '../../sky/vehicle-shape.ts';
import type { CampaignSky, SunJoint } from '../campaign-sky.ts';
import { type CheckedNode, child, number, spanOf, text, textAt } from '../check/checked-node.ts';
import type { ReadContext } from './read-context.ts';
import { readDirection } from './read-direction.ts';

const SIDES = 32;

export function readVehicleShape(
  nodes: readonly CheckedNode[],
  context: ReadContext,
): Pick<CampaignSky, 'bodies' | 'joints'> {
  const joints = new Map<string, SunJoint>();
  for (const node of nodes) {
    const turns = child(node, 'turns');
    if (turns === null) continue;
    const name = text(node, 'joint');
    if (name === null) {
      context.problems.add('missing-property', node.nameSpan, 'a body that turns says on which joint', {
        expected: 'joint=, a hardware id',
      });
    } else if (joints.has(name)) {
      context.problems.add('node-twice', turns.nameSpan, `another body says already how "${name}" turns`, {
        expected: 'one turns for each joint',
      });
    } else {
      const joint = readJoint(name, turns, context);
      if (joint !== null) joints.set(name, joint);
    }
  }
  const bodies = nodes.map((node): ShapeBody => {
    const joint = text(node, 'joint');
    if (joint !== null && !joints.has(joint) && child(node, 'turns') === null) {
      context.problems.add('not-computable', spanOf(node, 'joint'), `no body says how "${joint}" turns`, {
        expected: 'turns { … } in a body of this joint',
      });
    }
    const trianglesM = node.children.flatMap((part) =>
      part.name === 'box' ? readBox(part) : part.name === 'cylinder' ? readCylinder(part) : [],
    );
    if (trianglesM.length === 0 && !node.source.children.some((one) => one.name !== 'turns')) {
      context.problems.add('missing-node', node.nameSpan, 'this body has no box or cylinder inside', {
        expected: 'box or cylinder',
      });
    }
    return { name: textAt(node, 0) ?? '', trianglesM, joint: joint !== null && joints.has(joint) ? joint : null };
  });
  return { bodies, joints: [...joints.values()] };
}

function readJoint(name: string, node: CheckedNode, context: ReadContext): SunJoint | null {
  const [pivot, axis, face] = [child(node, 'pivot'), child(node, 'axis'), child(node, 'facing')];
  if (face === null && !node.source.children.some((one) => one.name === 'facing')) {
    context.problems.add('missing-node', node.nameSpan, 'this turns has no "facing" inside', {
      expected: 'facing x=0 y=0 z=1',
    });
  }
  if (pivot === null || axis === null || face === null) return null;
  const axisDirection = readDirection(axis, context);
  const facing = readDirection(face, context);
  if (axisDirection === null || facing === null) return null;
  if (isAlong(axisDirection, facing)) {
    context.problems.add('bad-direction', face.span, 'this side looks along the axis, so turning moves it nowhere', {
      expected: 'a direction across the axis',
    });
    return null;
  }
  return {
    name,
    parent: null,
    pivotM: centreOf(pivot),
    axis: axisDirection,
    motion: { kind: 'tracks-sun', facing, biasRad: 0, limitsRad: null },
    parkedRad: number(node, 'parked'),
  };
}

function isAlong(a: Vector3, b: Vector3): boolean {
  const dot = a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  return Math.abs(dot) > 0.9999 * Math.hypot(...a) * Math.hypot(...b);
}

function centreOf(node: CheckedNode): Vector3 {
  return [number(node, 'x') ?? 0, number(node, 'y') ?? 0, number(node, 'z') ?? 0];
}

function readBox(node: CheckedNode): readonly number[] {
  return boxTriangles(centreOf(node), [
    number(node, 'along-x') ?? 0,
    number(node, 'along-y') ?? 0,
    number(node, 'along-z') ?? 0,
  ]);
}

function readCylinder(node: CheckedNode): readonly number[] {
  const axis = { x: 0, y: 1, z: 2 }[text(node, 'along') ?? 'x'] ?? 0;
  return drumTriangles(
    centreOf(node),
    axis as 0 | 1 | 2,
    number(node, 'radius') ?? 0,
    number(node, 'length') ?? 0,
    SIDES,
  );
}
