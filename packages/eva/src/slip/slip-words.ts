/** The slip table in words, the same on the terminal and on the page. */
import { formatDuration, formatPet, formatUtc } from '@handrail/quantity/time';
import type { Severity } from '../finding/finding.ts';
import type { LaterFit } from './later-fit.ts';
import type { EvaSlip, SlipRow } from './slip-table.ts';

/** One thing that breaks, with the late egresses at which it does. */
export interface SlipLine {
  readonly severity: Severity;
  readonly words: string;
  /** "15 min to 25 min, 1 h": steps of the table, neighbours joined. */
  readonly late: string;
}

export function lateWords(lateS: number): string {
  return lateS === 0 ? 'on time' : `${formatDuration(lateS)} late`;
}

/** "nothing breaks up to 15 min late; last acceptable egress 1 h late, 2031-09-21 12:30:00Z". */
export function slipSentence({ cleanUntilS, lastAcceptableS, petZeroUtcMs, rows, statedSlipS }: EvaSlip): string {
  const clean =
    cleanUntilS === null
      ? 'something breaks even on time'
      : cleanUntilS === 0
        ? 'the first step late breaks something'
        : `nothing breaks up to ${lateWords(cleanUntilS)}`;
  const most = rows.at(-1)?.lateS;
  const last =
    lastAcceptableS === null
      ? 'no egress looked at is acceptable'
      : `last acceptable egress ${lateWords(lastAcceptableS)}, ${formatUtc(petZeroUtcMs + lastAcceptableS * 1000)}${lastAcceptableS === most ? ', the latest that was looked at' : ''}`;
  return `${clean}; ${last}; the text states a slip of ${formatDuration(statedSlipS)}`;
}

export function slipLines({ rows }: EvaSlip): readonly SlipLine[] {
  const lines = new Map<string, { severity: Severity; words: string; at: number[] }>();
  rows.forEach((row, at) => {
    for (const finding of row.breaks) {
      const stint = finding.where.stint;
      const words = stint === null ? finding.title : `${finding.title}, ${stint}`;
      const key = `${finding.severity} ${words}`;
      const line = lines.get(key) ?? { severity: finding.severity, words, at: [] };
      if (line.at.at(-1) !== at) line.at.push(at);
      lines.set(key, line);
    }
  });
  const weight = { error: 0, unknown: 1, warning: 2, note: 3 };
  return [...lines.values()]
    .sort((a, b) => weight[a.severity] - weight[b.severity] || (a.at[0] ?? 0) - (b.at[0] ?? 0))
    .map(({ severity, words, at }) => ({ severity, words, late: rangesOf(rows, at) }));
}

function rangesOf(rows: readonly SlipRow[], at: readonly number[]): string {
  const ranges: [number, number][] = [];
  for (const index of at) {
    const last = ranges.at(-1);
    if (last !== undefined && index === last[1] + 1) last[1] = index;
    else ranges.push([index, index]);
  }
  const name = (index: number): string => formatDuration(rows[index]?.lateS ?? 0);
  return ranges.map(([from, to]) => (from === to ? name(from) : `${name(from)} to ${name(to)}`)).join(', ');
}

/** "2 errors, 1 warning"; "nothing". */
export function countWords({ breaks }: SlipRow): string {
  const parts = (['error', 'unknown', 'warning', 'note'] as const).flatMap((severity) => {
    const count = breaks.filter((finding) => finding.severity === severity).length;
    if (count === 0) return [];
    return [severity === 'unknown' ? `${count} unknown` : `${count} ${severity}${count === 1 ? '' : 's'}`];
  });
  return parts.length === 0 ? 'nothing' : parts.join(', ');
}

/** "open-drive-power waits 1 h 2 min for night at PET 2:17". */
export function waitWords({ stint, window, waitS, startS }: LaterFit): string {
  const wait = waitS < 60 ? formatDuration(waitS) : formatDuration(Math.ceil(waitS / 60) * 60);
  return `${stint.split('/').at(-1)} waits ${wait} for ${window}, to PET ${formatPet(Math.ceil(startS / 60) * 60)}`;
}

/** "1 h 51 min before the wall". */
export function wallWords({ beforeTheWallS }: SlipRow): string {
  if (beforeTheWallS === null) return 'no wall is stated';
  const minutes = formatDuration(Math.floor(Math.abs(beforeTheWallS) / 60) * 60);
  return beforeTheWallS >= 0 ? `${minutes} before` : `${minutes} past`;
}

/** What has to go and what stays broken with the waits taken; empty where the row is in order. */
export function leftWords({ cut, left, beforeTheWallS }: SlipRow): readonly string[] {
  const late =
    beforeTheWallS === null || beforeTheWallS >= 0 ? [] : [`both in ${formatDuration(-beforeTheWallS)} past the wall`];
  return [
    ...late,
    ...cut.map(({ task, why }) => `cut ${task}: ${why}`),
    ...left.map(({ title, where }) => (where.stint === null ? title : `${title}, ${where.stint}`)),
  ];
}
