/** A drive window in words, the same in terminal, page and findings. Torque is rounded inward: what is shown is within. */
import type { PlannedDrive } from './planned-drives.ts';

type Asked = Pick<PlannedDrive, 'window' | 'turns' | 'torqueNm'>;

export function turnsWords({ window, turns }: Asked): string {
  if (window !== null)
    return `${one(window.turns.low)} to ${one(window.turns.high)} turns, likely ${one(window.turns.likely)}`;
  return turns === null ? 'not stated' : `${one(turns)} turns, no tolerance`;
}

export function torqueWords({ window, torqueNm }: Asked): string {
  if (window !== null) return torqueRangeWords(window.torqueNm.low, window.torqueNm.high);
  return torqueNm === null ? 'not stated' : `${one(torqueNm)} N·m, no tolerance`;
}

export function torqueRangeWords(lowNm: number, highNm: number): string {
  return `${Math.ceil(lowNm * 10 - 1e-6) / 10} to ${Math.floor(highNm * 10 + 1e-6) / 10} N·m`;
}

/** Lines for a sheet: fasteners that share their figures stand together. */
export function driveLines(drives: readonly PlannedDrive[]): readonly string[] {
  const shared = new Map<string, string[]>();
  for (const drive of drives) {
    const words = `${turnsWords(drive)}; ${torqueWords(drive)}`;
    shared.set(words, [...(shared.get(words) ?? []), drive.piece.id]);
  }
  return [...shared].map(([words, ids]) => `${ids.join(', ')}: ${words}`);
}

function one(value: number): string {
  return String(Math.round(value * 10) / 10);
}
