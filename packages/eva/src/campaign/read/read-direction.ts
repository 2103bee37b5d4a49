/** A direction in vehicle axes. */
import type { Vector3 } from '@handrail/quantity/vector';
import { type CheckedNode, number } from '../check/checked-node.ts';
import type { ReadContext } from './read-context.ts';

/** null where it has no length, which is reported. */
export function readDirection(node: CheckedNode, context: ReadContext): Vector3 | null {
  const direction: Vector3 = [number(node, 'x') ?? 0, number(node, 'y') ?? 0, number(node, 'z') ?? 0];
  if (Math.hypot(...direction) > 1e-6) return direction;
  const read = ['x', 'y', 'z'].every((part) => node.properties.has(part));
  if (read) {
    context.problems.add('bad-direction', node.span, `"${node.name}" has no length: x, y and z are all zero`, {
      expected: `${node.name} x=0 y=0 z=1, for example`,
    });
  }
  return null;
}
