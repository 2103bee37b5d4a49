/** The vehicle as the sky engines need it, at one EVA: joints follow the Sun, or stand parked where their hardware does. */
import type { Campaign } from '../../campaign/campaign.ts';
import type { SunJoint } from '../../campaign/campaign-sky.ts';
import type { AttitudeLaw } from '../attitude.ts';
import type { Joint, VehicleShape } from '../vehicle-shape.ts';

export interface VehicleAt {
  readonly attitude: AttitudeLaw;
  readonly shape: VehicleShape;
  /** What was taken of joints, in words; empty where the vehicle has none. */
  readonly notes: readonly string[];
}

/** Value of a joint's hardware that means it follows the Sun. */
const TURNING = 'turning';

/**
 * A joint is looked at once, at egress: its state in the text and the outside events before that instant. What the EVA itself
 * does to a joint is not followed.
 * @returns null where no attitude is stated
 */
export function vehicleAt(campaign: Campaign, utcMs: number): VehicleAt | null {
  const { attitude, bodies, joints } = campaign.sky;
  if (attitude === null) return null;
  const notes: string[] = bodies.length === 0 ? ['no bodies are stated, so nothing casts shadow'] : [];
  const placed = joints.map((joint): Joint => {
    const { name, parent, pivotM, axis, motion } = joint;
    const state = stateAt(campaign, joint, utcMs);
    if (state === TURNING) notes.push(`${name} follows the Sun`);
    else if (joint.parkedRad === null)
      notes.push(`${name} is ${state}; its angle is not stated, so it is taken to follow the Sun`);
    else {
      notes.push(`${name} is ${state} at ${((joint.parkedRad * 180) / Math.PI).toFixed(0)}°`);
      return { name, parent, pivotM, axis, motion: { kind: 'held', angleRad: joint.parkedRad } };
    }
    return { name, parent, pivotM, axis, motion };
  });
  return { attitude, shape: { bodies, joints: placed }, notes };
}

function stateAt(campaign: Campaign, joint: SunJoint, utcMs: number): string {
  const hardware = campaign.hardware.find((one) => one.id === joint.name);
  let state = Object.values(hardware?.initial ?? {})[0] ?? 'in a state that is not stated';
  const events = campaign.events.filter((event) => event.atUtcMs <= utcMs).sort((a, b) => a.atUtcMs - b.atUtcMs);
  for (const event of events) {
    for (const leave of event.leaves) if (leave.variable.split('.')[0] === joint.name) state = leave.value;
  }
  return state;
}
