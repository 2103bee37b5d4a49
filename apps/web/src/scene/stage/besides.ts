import type { Vector3 } from '@handrail/quantity/vector';

/** Angle between neighbours of a sunflower's spiral, so that any number of marks stand clear of each other. */
const GOLDEN_ANGLE_RAD = Math.PI * (3 - Math.sqrt(5));

/** A spot beside a point for the index-th of several things that are at the same place. Index 0 stands a step to the side. */
export function besides(point: Vector3, index: number, stepM: number): Vector3 {
  const radius = stepM * Math.sqrt(index + 0.6);
  const angle = index * GOLDEN_ANGLE_RAD;
  return [point[0] + radius * Math.cos(angle), point[1] + radius * Math.sin(angle), point[2]];
}
