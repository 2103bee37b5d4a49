import type { Hardware } from '../campaign/campaign.ts';
import type { DriveWindow } from './drive-window.ts';
import { type ToolRun, toolDriveS } from './drive-time.ts';

export type ToolFit =
  /** Settings in N·m that the tool has and the window allows. */
  | { readonly fits: 'yes'; readonly leastNm: number; readonly mostNm: number }
  | { readonly fits: 'no'; readonly why: string }
  /** The tool states no range. */
  | { readonly fits: 'unknown'; readonly missing: string };

/** Whether a tool has a setting within a window. A tool that states only its most is taken to reach down to nothing, and says so by `leastNm` 0. */
export function toolFit(window: DriveWindow, tool: Hardware): ToolFit {
  const most = tool.properties['torque-most'];
  const least = tool.properties['torque-least'];
  if (typeof most !== 'number') return { fits: 'unknown', missing: `torque-most of ${tool.id}` };
  const lowest = typeof least === 'number' ? least : 0;
  const leastNm = Math.max(window.torqueNm.low, lowest);
  const mostNm = Math.min(window.torqueNm.high, most);
  if (leastNm <= mostNm) return { fits: 'yes', leastNm, mostNm };
  return {
    fits: 'no',
    why: `it wants ${torque(window.torqueNm.low)} to ${torque(window.torqueNm.high)} N·m; ${tool.title} gives ${torque(lowest)} to ${torque(most)} N·m`,
  };
}

/** Seconds to drive a count of turns with a tool; null where it states no speed or handling time. */
export function driveTimeS(turns: number, tool: Hardware): number | null {
  const run = toolRun(tool);
  return run === null ? null : toolDriveS(turns, run);
}

/** null: speed or handling is not stated. */
function toolRun(tool: Hardware): ToolRun | null {
  const { speed, handling } = tool.properties;
  const slow = tool.properties['slow-speed'];
  const slowTurns = tool.properties['slow-turns'];
  if (typeof speed !== 'number' || typeof handling !== 'number') return null;
  const perS = (radPerS: number): number => radPerS / (2 * Math.PI);
  return {
    speedRevPerS: perS(speed),
    slowTurns: typeof slowTurns === 'number' && typeof slow === 'number' ? slowTurns : 0,
    slowSpeedRevPerS: perS(typeof slow === 'number' ? slow : speed),
    handlingS: handling,
  };
}

function torque(value: number): string {
  return String(Math.round(value * 10) / 10);
}
