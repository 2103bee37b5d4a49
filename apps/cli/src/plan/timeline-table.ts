/** The timeline of one EVA for the terminal: a row per stay, move of the arm or passage, in order of time. */
import { formatDuration, formatPet, formatUtcClock } from '@handrail/quantity/time';
import type { Campaign } from '@handrail/eva/campaign/campaign';
import { openLevelWords } from '@handrail/eva/timeline/claim-words';
import type { EvaTimeline, PlannedStint } from '@handrail/eva/timeline/timeline';
import { tableText } from '../terminal/table-text.ts';

interface Row {
  readonly startS: number;
  readonly endS: number;
  readonly who: string;
  readonly where: string;
  readonly what: string;
}

export function timelineTable(campaign: Campaign, eva: EvaTimeline, width?: number): string {
  const rows = rowsOf(campaign, eva);
  // One way of writing times in a table: figures that stand below each other are read against each other.
  const withSeconds = rows.some(({ startS }) => startS % 60 !== 0);
  const withTenths = rows.some(({ startS, endS }) => (endS - startS) % 60 !== 0);
  return tableText(
    ['PET', 'UTC', 'min', 'who', 'where', 'what'],
    rows.map(({ startS, endS, who, where, what }) => [
      withSeconds ? petWithSeconds(startS) : formatPet(startS),
      formatUtcClock(eva.petZeroUtcMs + startS * 1000),
      minutes(endS - startS, withTenths),
      who,
      where,
      what,
    ]),
    { aligns: ['right', 'left', 'right', 'left', 'left', 'left'], ...(width === undefined ? {} : { width }) },
  );
}

function petWithSeconds(petS: number): string {
  const text = formatPet(petS);
  return petS % 60 === 0 ? `${text}:00` : text;
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

function minutes(durationS: number, withTenths: boolean): string {
  return withTenths ? (durationS / 60).toFixed(1) : String(durationS / 60);
}

/** "optimal for these durations: both in at PET 2:48 (14:28 UTC), 3 h 42 min before the wall at PET 6:30 (…)" and what is open. */
export function outcomeSentence(eva: EvaTimeline): string {
  const wall =
    eva.wall === null
      ? 'no wall is stated, so nothing is claimed about being in time'
      : `${wallWords(eva.wall.petS - eva.bothInS)} the wall at PET ${formatPet(eva.wall.petS)} (${eva.wall.cause})`;
  const utc = formatUtcClock(eva.petZeroUtcMs + eva.bothInS * 1000);
  const open = openLevelWords(eva).map((words) => `not proved: ${words}`);
  const words = [`both in at PET ${formatPet(eva.bothInS)} (${utc} UTC), ${wall}`, ...open];
  const { seed, conflicts } = eva.claim;
  const effort = `seed ${seed}, ${conflicts} ${conflicts === 1 ? 'conflict' : 'conflicts'}`;
  return `${eva.claim.status}: ${words.join('; ')} (${effort})`;
}

function wallWords(marginS: number): string {
  if (marginS === 0) return 'exactly at';
  return `${formatDuration(Math.abs(marginS))} ${marginS > 0 ? 'before' : 'after'}`;
}

/** The three figures of a stint that a person compares first. */
export function stintWords({ stint, startS, endS, assigned }: PlannedStint): string {
  return `${stint} ${formatPet(startS)}–${formatPet(endS)} by ${assigned.join(' + ')}`;
}
