import type { ChuffedLevels } from './chuffed.ts';
import type { Instance } from './instances.ts';
import { contradictions, gapToBestKnown, isClosed } from './judge.ts';
import type { Outcome } from './solve-instance.ts';

export interface BenchRecord {
  readonly instance: Instance;
  readonly outcome: Outcome;
  readonly chuffed: ChuffedLevels | null;
}

/** Faults of the answer itself, contradictions with published bounds and with the other solver. Must be empty. */
export function bugs({ instance, outcome, chuffed }: BenchRecord): string[] {
  const found = [...outcome.faults, ...contradictions(outcome, instance.bestKnown, instance.sense)];
  if (chuffed === null || chuffed.proved === 0) return found;
  const best = chuffed.values[0] ?? null;
  const value = outcome.levels[0]?.value ?? null;
  const bound = outcome.levels[0]?.bound ?? Number.NEGATIVE_INFINITY;
  if (best === null && value !== null) found.push('a solution where Chuffed proves that there is none');
  if (best !== null) {
    if (outcome.status === 'infeasible') found.push(`called infeasible, Chuffed proves ${best}`);
    if (value !== null && value < best) found.push(`value ${value} beats the optimum of Chuffed ${best}`);
    if (bound > best) found.push(`bound ${bound} exceeds the optimum of Chuffed ${best}`);
    const ours = outcome.levels.map((level) => level.value);
    if (chuffed.isClosed && outcome.status === 'optimal' && String(ours) !== String(chuffed.values)) {
      found.push(`levels ${String(ours)} where Chuffed proves ${String(chuffed.values)}`);
    }
  }
  return found;
}

export function recordLine(record: BenchRecord): string {
  const { instance, outcome, chuffed } = record;
  const shown = (value: number | null) => (value === null ? '-' : String(value * instance.sense));
  const levels = outcome.levels.map(({ value, bound, proved }) => {
    return `${shown(value)}${proved ? '' : ` (bound ${shown(Number.isFinite(bound) ? bound : null)})`}`;
  });
  const known = instance.bestKnown;
  const parts = [
    instance.name.padEnd(14),
    outcome.status.padEnd(10),
    levels.join(' | ').padEnd(12),
    known === null ? '' : `known ${known.infeasible ? 'none' : range(known.lower, known.upper)}`.padEnd(14),
    `${outcome.conflicts} conflicts`.padStart(16),
    `${outcome.ms.toFixed(1)} ms`.padStart(12),
    `(cpu ${outcome.cpuMs.toFixed(0)})`.padStart(12),
    outcome.firstMs === null ? '' : `first ${outcome.firstMs.toFixed(1)} ms`.padStart(16),
  ];
  if (outcome.proof !== null)
    parts.push(`proof ${outcome.proof.lines} lines, replayed in ${outcome.proof.checkMs.toFixed(0)} ms`);
  if (chuffed !== null) {
    const values = chuffed.values.map(shown).join(' | ') || '-';
    parts.push(`Chuffed ${values}${chuffed.isClosed ? '' : ' open'} ${chuffed.solveMs.toFixed(0)} ms`);
  }
  for (const bug of bugs(record)) parts.push(`BUG: ${bug}`);
  return parts.join('  ');
}

function range(lower: number, upper: number): string {
  return lower === upper ? String(lower) : `${lower}..${upper}`;
}

/** The `share` quantile of times, those without an end counted as infinite. */
export function quantile(times: readonly number[], share: number): number {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}

export function summaryLines(set: string, records: readonly BenchRecord[]): string[] {
  const closed = records.filter(({ outcome }) => isClosed(outcome));
  const times = records.map(({ outcome }) => (isClosed(outcome) ? outcome.ms : Number.POSITIVE_INFINITY));
  const gaps = records.flatMap(
    ({ outcome, instance }) => gapToBestKnown(outcome, instance.bestKnown, instance.sense) ?? [],
  );
  const without = records.filter(({ outcome }) => outcome.status === 'unknown').length;
  const found = records.flatMap((record) => bugs(record));
  const cpuTimes = records.map(({ outcome }) => (isClosed(outcome) ? outcome.cpuMs : Number.POSITIVE_INFINITY));
  const longest = Math.max(...records.map(({ outcome }) => outcome.ms));
  const ms = (time: number) => (Number.isFinite(time) ? `${time.toFixed(1)} ms` : 'inf');
  const lines = [
    `${set}: ${closed.length} of ${records.length} closed, median ${ms(quantile(times, 0.5))}, p90 ${ms(quantile(times, 0.9))}, ` +
      `longest ${ms(longest)}, median cpu ${ms(quantile(cpuTimes, 0.5))}${without === 0 ? '' : `, ${without} without a solution`}`,
  ];
  if (gaps.length > 0) {
    const mean = gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length;
    const level = gaps.filter((gap) => gap <= 0).length;
    lines.push(`  mean gap to best known ${(100 * mean).toFixed(2)} %, ${level} of ${gaps.length} at or below it`);
  }
  lines.push(...levelLines(records), ...chuffedLines(records));
  lines.push(
    `  ${found.length === 0 ? 'no contradiction found' : `${found.length} BUGS: ${found.slice(0, 5).join('; ')}`}`,
  );
  return lines;
}

function levelLines(records: readonly BenchRecord[]): string[] {
  const names = records[0]?.outcome.levels.map(({ objective }) => objective) ?? [];
  if (names.length < 2) return [];
  return names.map((name, i) => {
    const levels = records.flatMap(({ outcome }) => outcome.levels[i] ?? []);
    const open = levels.filter(({ proved, value }) => !proved && value !== null);
    const gaps = open.map(({ value, bound }) => Math.abs(((value as number) - bound) / (value || 1)));
    const mean = gaps.length === 0 ? 0 : gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length;
    const rest = gaps.length === 0 ? '' : `, open ones ${(100 * mean).toFixed(1)} % above their bound on average`;
    return `  level ${name}: ${levels.filter(({ proved }) => proved).length} of ${records.length} proved${rest}`;
  });
}

function chuffedLines(records: readonly BenchRecord[]): string[] {
  const both = records.flatMap(({ chuffed, outcome }) => (chuffed === null ? [] : [{ chuffed, outcome }]));
  if (both.length === 0) return [];
  const proved = both.filter(({ chuffed }) => chuffed.isClosed).length;
  const ratios = both
    .filter(({ chuffed, outcome }) => chuffed.isClosed && isClosed(outcome))
    .map(({ chuffed, outcome }) => Math.max(chuffed.solveMs, 1) / Math.max(outcome.ms, 0.1));
  const median = quantile(ratios, 0.5);
  const times = both.map(({ chuffed }) => (chuffed.isClosed ? chuffed.solveMs : Number.POSITIVE_INFINITY));
  return [
    `  Chuffed, same run: ${proved} of ${both.length} closed, median ${quantile(times, 0.5).toFixed(0)} ms; ` +
      `its solve time over ours, median ${median.toFixed(2)} over ${ratios.length} closed by both`,
  ];
}
