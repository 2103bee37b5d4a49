import { Fault } from '@handrail/quantity/fault';
import { metricThread, type Thread, unifiedThread } from './thread-geometry.ts';

/** Property class of a steel screw. */
export type PropertyClass = '8.8' | '10.9' | '12.9';

interface MetricRow {
  readonly diameterMm: number;
  readonly pitchMm: number;
  /** Nominal stress area as printed, mm². */
  readonly stressAreaMm2: number;
  /** Proof load as printed, N, for 8.8, 10.9, 12.9; null: not copied from the table. */
  readonly proofN: readonly [number | null, number | null, number | null];
  /** Least breaking load of 8.8 as printed, N. */
  readonly ultimateN: number | null;
}

const metric = (
  diameterMm: number,
  pitchMm: number,
  stressAreaMm2: number,
  proofN: MetricRow['proofN'] = [null, null, null],
  ultimateN: number | null = null,
): MetricRow => ({ diameterMm, pitchMm, stressAreaMm2, proofN, ultimateN });

/**
 * Coarse series. The proof loads are stored and not computed: what is printed is no consistent rounding of area times proof stress.
 * @source [ISO261] pitches; [ISO898] areas and loads
 */
const METRIC: Readonly<Record<string, MetricRow>> = {
  M3: metric(3, 0.5, 5.03),
  M4: metric(4, 0.7, 8.78, [5100, 7290, 8520], 7020),
  M5: metric(5, 0.8, 14.2, [8230, 11_800, 13_800], 11_350),
  M6: metric(6, 1, 20.1, [11_600, 16_700, 19_500], 16_100),
  M8: metric(8, 1.25, 36.6, [21_200, 30_400, 35_500], 29_200),
  M10: metric(10, 1.5, 58.0, [33_700, 48_100, 56_300], 46_400),
  M12: metric(12, 1.75, 84.3, [48_900, 70_000, 81_800], 67_400),
  M14: metric(14, 2, 115, [66_700, null, null]),
  M16: metric(16, 2, 157, [91_000, 130_000, 152_000], 125_000),
  M18: metric(18, 2.5, 192, [115_000, null, null]),
  M20: metric(20, 2.5, 245, [147_000, 203_000, 238_000], 203_000),
  M24: metric(24, 3, 353),
};

/** Basic diameter in inches, threads per inch, stress area as printed in square inches. @source [SHIGLEY9] Table 8-2 */
const UNIFIED: Readonly<Record<string, readonly [number, number, number]>> = {
  '#10-32': [0.19, 32, 0.02],
  '1/4-20': [0.25, 20, 0.0318],
  '1/4-28': [0.25, 28, 0.0364],
  '5/16-18': [0.3125, 18, 0.0524],
  '5/16-24': [0.3125, 24, 0.058],
  '3/8-16': [0.375, 16, 0.0775],
  '3/8-24': [0.375, 24, 0.0878],
  '7/16-14': [0.4375, 14, 0.1063],
  '7/16-20': [0.4375, 20, 0.1187],
  '1/2-13': [0.5, 13, 0.1419],
  '1/2-20': [0.5, 20, 0.1599],
  '5/8-18': [0.625, 18, 0.256],
  '3/4-10': [0.75, 10, 0.334],
  '3/4-16': [0.75, 16, 0.373],
};

export const THREAD_SIZES: readonly string[] = [...Object.keys(METRIC), ...Object.keys(UNIFIED)];

/**
 * A standard thread by its name: "M8" (coarse), "3/8-16".
 * @throws Fault `fastener/unknown-thread` with the sizes known
 */
export function standardThread(size: string): Thread {
  const row = Object.hasOwn(METRIC, size) ? METRIC[size] : undefined;
  if (row !== undefined) return metricThread(size, row.diameterMm / 1000, row.pitchMm / 1000);
  const inch = Object.hasOwn(UNIFIED, size) ? UNIFIED[size] : undefined;
  if (inch !== undefined) return unifiedThread(size, inch[0] * 0.0254, inch[1]);
  throw new Fault('fastener/unknown-thread', `no standard thread is called ${size}`, {
    values: { size, known: THREAD_SIZES },
    advice: `use one of ${THREAD_SIZES.join(', ')}, or give diameter and pitch`,
  });
}

/** Stress area as printed, m²; null: the size is not in the tables. */
export function printedStressAreaM2(size: string): number | null {
  if (Object.hasOwn(METRIC, size)) return (METRIC[size] as MetricRow).stressAreaMm2 * 1e-6;
  if (Object.hasOwn(UNIFIED, size)) return (UNIFIED[size] as readonly [number, number, number])[2] * 0.0254 ** 2;
  return null;
}

/** Proof load as printed, N; null: not in the table, and `area × proof stress` must be stated by whoever knows the screw. */
export function proofLoadN(size: string, propertyClass: PropertyClass): number | null {
  const row = Object.hasOwn(METRIC, size) ? METRIC[size] : undefined;
  if (row === undefined) return null;
  return row.proofN[propertyClass === '8.8' ? 0 : propertyClass === '10.9' ? 1 : 2];
}

/** Least breaking load of class 8.8 as printed, N; null: not in the table. */
export function ultimateLoadN(size: string): number | null {
  return Object.hasOwn(METRIC, size) ? (METRIC[size] as MetricRow).ultimateN : null;
}
