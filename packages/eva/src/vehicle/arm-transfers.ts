/**
 * Times of an arm from pose to pose, empty or loaded: shortest chains of its transfers. A chain stands still at the poses
 * between; a transfer that is not allowed loaded is not in a loaded chain.
 */
import { Fault } from '@handrail/quantity/fault';
import type { Arm } from '../campaign/campaign.ts';
import { type ShortestTimes, shortestTimes } from './shortest-times.ts';

export interface ArmTransferTable {
  /** Seconds from pose to pose, not rounded; null: no chain of transfers. */
  secondsBetween(from: string, to: string, loaded: boolean): number | null;
  /** Poses passed, both ends included; null: no chain. */
  pathBetween(from: string, to: string, loaded: boolean): readonly string[] | null;
}

/** @throws Fault `routes/unknown-pose` from the table's functions. */
export function armTransfers(arm: Arm): ArmTransferTable {
  const poses = arm.poses.map((pose) => pose.id);
  const indexOf = new Map(poses.map((id, index) => [id, index]));
  const find = (id: string): number => {
    const index = indexOf.get(id);
    if (index === undefined) {
      throw new Fault('routes/unknown-pose', `${arm.id} has no pose ${id}`, {
        values: { arm: arm.id, pose: id, poses },
      });
    }
    return index;
  };
  const rows = new Map<string, ShortestTimes>();
  const rowFrom = (from: number, loaded: boolean): ShortestTimes => {
    const name = `${from}|${loaded}`;
    const made = rows.get(name);
    if (made !== undefined) return made;
    const leaving: { to: number; timeS: number }[][] = poses.map(() => []);
    for (const transfer of arm.transfers) {
      const timeS = loaded ? transfer.loadedS : transfer.emptyS;
      const a = indexOf.get(transfer.from);
      const b = indexOf.get(transfer.to);
      if (timeS === null || a === undefined || b === undefined) continue;
      leaving[a]?.push({ to: b, timeS });
      if (!transfer.oneWay) leaving[b]?.push({ to: a, timeS });
    }
    const flat = leaving.flat();
    const rowStart = new Int32Array(poses.length + 1);
    leaving.forEach((list, node) => {
      rowStart[node + 1] = (rowStart[node] as number) + list.length;
    });
    const target = Int32Array.from(flat, (entry) => entry.to);
    const timeS = Float64Array.from(flat, (entry) => entry.timeS);
    const row = shortestTimes({ nodeCount: poses.length, rowStart, target, timeS }, from);
    rows.set(name, row);
    return row;
  };
  return {
    secondsBetween(from, to, loaded) {
      const time = rowFrom(find(from), loaded).timeS[find(to)] as number;
      return Number.isFinite(time) ? time : null;
    },
    pathBetween(from, to, loaded) {
      const row = rowFrom(find(from), loaded);
      const goal = find(to);
      if (!Number.isFinite(row.timeS[goal])) return null;
      const path: string[] = [];
      for (let at = goal; at !== -1; at = row.before[at] as number) path.unshift(poses[at] as string);
      return path;
    },
  };
}
