import type { Vector3 } from '@handrail/quantity/vector';
import type { Campaign } from '../campaign/campaign.ts';
import { vehicleAt } from '../sky/campaign/vehicle-at.ts';
import { jointPoses, type Pose } from '../sky/vehicle-shape.ts';
import type { EvaTimeline } from '../timeline/timeline.ts';
import { type ValueFrom, valueAt } from './values-over.ts';

/** Joints by the state their hardware has at that second, so that a joint which the plan parks stands parked. */
export function turnedJoints(
  campaign: Campaign,
  changes: ReadonlyMap<string, readonly ValueFrom[]>,
  eva: EvaTimeline,
): (petS: number, sun: Vector3 | null) => ReadonlyMap<string, Pose> {
  const known = new Map<string, ReturnType<typeof jointPoses>>();
  return (petS, sun) => {
    if (campaign.sky.joints.length === 0 || sun === null) return new Map();
    const states = campaign.sky.joints.map(({ name }) => valueAt(changes.get(name), petS)?.value ?? 'unknown');
    const key = states.join('|');
    let posed = known.get(key);
    if (posed === undefined) {
      const hardware = campaign.hardware.map((piece) => {
        const index = campaign.sky.joints.findIndex(({ name }) => name === piece.id);
        return index < 0 ? piece : { ...piece, initial: { state: states[index] as string } };
      });
      const vehicle = vehicleAt({ ...campaign, hardware, events: [] }, eva.petZeroUtcMs);
      if (vehicle === null) return new Map();
      posed = jointPoses(vehicle.shape.joints);
      known.set(key, posed);
    }
    const poses = posed.posesAt(sun);
    return new Map(
      posed.names.flatMap((name, index) => (name === null ? [] : [[name, poses[index] as Pose] as const])),
    );
  };
}
