/** What changed between two plans, and between two campaigns, for people. */
import { formatDuration } from '@handrail/quantity/time';
import type { CampaignChange } from '@handrail/eva/schedule/compare-campaigns';
import type { StintChange, TimelineChanges } from '@handrail/eva/schedule/compare-timelines';
import { print } from '../terminal/output.ts';
import { stintWords } from './timeline-table.ts';

export function printChanges(
  { evas, tasksIn, tasksOut }: TimelineChanges,
  campaigns: readonly CampaignChange[] = [],
): void {
  for (const { sort, id, kind, fields } of campaigns) {
    if (kind !== 'changed') print(`${kind.padEnd(10)} ${sort} ${id}`);
    for (const { field, from, to } of fields) print(`changed    ${sort} ${id}: ${field} ${from} → ${to}`);
  }
  let isSame = campaigns.length === 0 && tasksIn.length === 0 && tasksOut.length === 0;
  for (const id of tasksIn) print(`task in    ${id}`);
  for (const id of tasksOut) print(`task out   ${id}`);
  for (const { eva, bothInLaterS, stints } of evas) {
    if (bothInLaterS === 0 && stints.length === 0) continue;
    isSame = false;
    print(`EVA ${eva}: ${bothInLaterS === null ? 'only in one of the two' : `both in ${laterWords(bothInLaterS)}`}`);
    for (const change of stints) print(`  ${changeWords(change)}`);
  }
  if (isSame) print('no change');
}

function changeWords({ kind, from, to, laterS, longerS, people, stint }: StintChange): string {
  if (kind === 'added' && to !== null) return `added      ${stintWords(to)}`;
  if (kind === 'removed' && from !== null) return `removed    ${stintWords(from)}`;
  const parts = people.map((change) => `${change.from} → ${change.to}`);
  if (laterS !== 0) parts.push(laterWords(laterS));
  if (longerS !== 0) parts.push(`${formatDuration(Math.abs(longerS))} ${longerS > 0 ? 'longer' : 'shorter'}`);
  return `changed    ${stint}: ${parts.join(', ')}`;
}

function laterWords(s: number): string {
  return s === 0 ? 'at the same time' : `${formatDuration(Math.abs(s))} ${s > 0 ? 'later' : 'earlier'}`;
}
