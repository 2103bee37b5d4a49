/** The timeline of one EVA for the terminal: a row per stay, move of the arm or passage, in order of time. */
import { formatDuration, formatPet, formatUtcClock } from '@handrail/quantity/time';
import type { Campaign } from '@handrail/eva/campaign/campaign';
import type { EvaTimeline, PlannedStint } from '@handrail/eva/timeline/timeline';
import Table from 'cli-table3';

interface Row {
  readonly startS: number;
  readonly endS: number;
  readonly who: string;
  readonly where: string;
  readonly what: string;
}

export function timelineTable(campaign: Campaign, eva: EvaTimeline): string {
  const table = new Table({
    head: ['PET', 'UTC', 'min', 'who', 'where', 'what'],
    style: { head: [], border: [], compact: true },
    colAligns: ['right', 'left', 'right', 'left', 'left', 'left'],
  });
  for (const { startS, endS, who, where, what } of rowsOf(campaign, eva)) {
    const utc = formatUtcClock(eva.petZeroUtcMs + startS * 1000);
    table.push([formatPet(startS), utc, minutes(endS - startS), who, where, what]);
  }
  return table.toString();
}

function rowsOf(campaign: Campaign, eva: EvaTimeline): Row[] {
  const stints = new Map(campaign.tasks.flatMap((task) => task.stints.map((stint) => [stint.key, stint] as const)));
  const hatch = campaign.vehicle.hatch ?? 'hatch';
  const rows: Row[] = eva.passages.map(({ kind, person, startS, endS }) => ({
    startS,
    endS,
    who: person ?? '',
    where: hatch,
    what: kind === 'egress' ? 'out' : kind === 'ingress' ? 'in' : 'close the hatch',
  }));
  for (const move of eva.moves) {
    const load = move.carrying.length === 0 ? '' : ` with ${move.carrying.join(', ')}`;
    rows.push({ ...move, where: `${move.from} → ${move.to}`, what: `move${load}` });
  }
  for (const planned of eva.stints) {
    const stint = stints.get(planned.stint);
    if (stint === undefined) continue;
    rows.push({
      startS: planned.startS,
      endS: planned.endS,
      who: planned.assigned.join(' + '),
      where: placeWords(stint.roles[0]?.at ?? '', stint.roles[0]?.to ?? ''),
      what: `${stint.title} (${stint.key})`,
    });
  }
  return rows.sort((a, b) => a.startS - b.startS || a.endS - b.endS);
}

function placeWords(at: string, to: string): string {
  return at === to ? at : `${at} → ${to}`;
}

function minutes(durationS: number): string {
  return durationS % 60 === 0 ? String(durationS / 60) : (durationS / 60).toFixed(1);
}

/** "optimal for these durations: both in at 2:48, 3:42 before the wall at 6:30 (…)" and what is known of each level. */
export function claimSentence(campaign: Campaign, eva: EvaTimeline): string {
  const wall =
    eva.wall === null
      ? 'no wall is stated, so nothing is claimed about being in time'
      : `${formatDuration(eva.wall.petS - eva.bothInS)} before the wall at ${formatPet(eva.wall.petS)} (${eva.wall.cause})`;
  const open = eva.claim.levels.filter(({ proved }) => !proved);
  const gaps = open.map(({ name, unit, value, bound }) => {
    if (value === null || bound === null) return `${name} open`;
    if (unit !== 's') return `${name} open: ${openRank(campaign)}`;
    return `${name} not proved: ${formatDuration(value)} found, not below ${formatDuration(bound)}`;
  });
  const words = [`both in at ${formatPet(eva.bothInS)}, ${wall}`, ...gaps];
  const { seed, conflicts } = eva.claim;
  return `${eva.claim.status}: ${words.join('; ')} (seed ${seed}, ${conflicts} conflicts)`;
}

function openRank(campaign: Campaign): string {
  return `whether more of the ${campaign.tasks.length} ranked tasks fit is not settled`;
}

/** The three figures of a stint that a person compares first. */
export function stintWords({ stint, startS, endS, assigned }: PlannedStint): string {
  return `${stint} ${formatPet(startS)}–${formatPet(endS)} by ${assigned.join(' + ')}`;
}
