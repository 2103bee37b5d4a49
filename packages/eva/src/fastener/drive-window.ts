import { Fault } from '@handrail/quantity/fault';
import { requireInRange } from '@handrail/quantity/in-range';
import type { SourcedValue } from '@handrail/quantity/sourced-value';
import { type BoltedJoint, turnsForPreload } from './bolted-joint.ts';
import { runDownTurns } from './drive-time.ts';
import type { Thread } from './thread-geometry.ts';
import { torqueForPreloadNm } from './torque-preload.ts';

/** What a good drive looks like on the tool: turns counted and torque reached, each within a window. */
export interface DriveWindow {
  readonly turns: { readonly low: number; readonly likely: number; readonly high: number };
  readonly torqueNm: { readonly low: number; readonly high: number };
}

/**
 * The window where the drawing gives turns and torque with tolerances. The tool's own accuracy is not in it: state a tolerance that holds
 * on the tool's display.
 */
export function statedWindow(
  turns: { readonly likely: number; readonly tolerance: number },
  torqueNm: { readonly likely: number; readonly toleranceShare: number },
): DriveWindow {
  const count = requireInRange('turns', turns.likely, { min: 0, max: 2000, unit: 'turns' });
  const tolerance = requireInRange('tolerance in turns', turns.tolerance, { min: 0, max: 2000, unit: 'turns' });
  const torque = requireInRange('torque', torqueNm.likely, { min: 0, max: 5000, unit: 'N·m' });
  const share = requireInRange('torque tolerance', torqueNm.toleranceShare, { min: 0, max: 1, unit: '1' });
  return {
    turns: { low: Math.max(0, count - tolerance), likely: count, high: count + tolerance },
    torqueNm: { low: torque * (1 - share), high: torque * (1 + share) },
  };
}

/** A fastener as its maker knows it, from which the window is worked out. */
export interface FastenerJoint {
  readonly thread: Thread;
  /** Length of thread to run from first engagement to snug, m. */
  readonly engagementM: SourcedValue;
  /** Springs of the joint; null: the turns from snug are stated in `snugTurns`. */
  readonly joint: BoltedJoint | null;
  /** Turns from snug to tight; null: worked out from the springs. */
  readonly snugTurns: SourcedValue | null;
  readonly nutFactor: SourcedValue;
  /** Preload that the joint needs at least, and may bear at most, N. */
  readonly preloadN: { readonly least: number; readonly most: number };
  /** Accuracy of the tool's torque, ± share. */
  readonly toolTorqueShare: number;
  /** Smallest count of turns that the tool (or the person) resolves. */
  readonly turnResolution: number;
}

/**
 * Turns and torque window from thread, springs, friction and tool. Torque low: even at the greatest friction and a tool that reads
 * high, the least preload is there. Torque high: even at the least friction and a tool that reads low, the most is not passed.
 * @throws Fault `fastener/no-torque-window` where friction is too uncertain for any torque to promise both; `fastener/turns-unknown`
 * @source [SHIGLEY9] Eq. 8-27, §8-8
 * @checked tests/reference/fastener/drive-window.test.ts
 */
export function windowFromJoint(fastener: FastenerJoint): DriveWindow {
  const { thread, nutFactor, preloadN } = fastener;
  const tool = requireInRange('tool torque accuracy', fastener.toolTorqueShare, { min: 0, max: 0.5, unit: '1' });
  const low = torqueForPreloadNm(preloadN.least, thread.diameterM, nutFactor.high) / (1 - tool);
  const high = torqueForPreloadNm(preloadN.most, thread.diameterM, nutFactor.low) / (1 + tool);
  if (!(low <= high)) {
    throw new Fault(
      'fastener/no-torque-window',
      `${thread.size}: ${low.toFixed(1)} N·m is needed for ${preloadN.least} N, but no more than ${high.toFixed(1)} N·m may be put on ` +
        `for ${preloadN.most} N`,
      {
        values: { lowNm: low, highNm: high },
        advice: 'narrow the nut factor by lubrication or test, take a more accurate tool, or control by turns',
      },
    );
  }
  const tightening = tighteningTurns(fastener);
  const run = (engagementM: number): number => runDownTurns(engagementM, thread.pitchM);
  const resolution = requireInRange('turn resolution', fastener.turnResolution, { min: 0, max: 10, unit: 'turns' });
  return {
    turns: {
      low: Math.max(0, run(fastener.engagementM.low) + tightening.low - resolution),
      likely: run(fastener.engagementM.likely) + tightening.likely,
      high: run(fastener.engagementM.high) + tightening.high + resolution,
    },
    torqueNm: { low, high },
  };
}

function tighteningTurns(fastener: FastenerJoint): {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
} {
  if (fastener.snugTurns !== null) return fastener.snugTurns;
  const { joint, preloadN, thread } = fastener;
  if (joint === null) {
    throw new Fault(
      'fastener/turns-unknown',
      `${thread.size}: neither the joint's springs nor the turns from snug are stated`,
      {
        advice: 'state one of them',
      },
    );
  }
  const turns = (preload: number): number => turnsForPreload(joint, preload, thread.pitchM);
  return {
    low: turns(preloadN.least),
    likely: turns((preloadN.least + preloadN.most) / 2),
    high: turns(preloadN.most),
  };
}
