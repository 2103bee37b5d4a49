import { requireInRange } from '@handrail/quantity/in-range';

/** A 60° screw thread. Diameter and pitch are what is stated; the rest follows. Metres. */
export interface Thread {
  /** "M8", "3/8-16". */
  readonly size: string;
  readonly system: 'metric' | 'unified';
  readonly diameterM: number;
  readonly pitchM: number;
}

export interface ThreadGeometry {
  /** Height of the sharp triangle, √3/2 of the pitch. */
  readonly triangleHeightM: number;
  readonly pitchDiameterM: number;
  /** Of the basic profile (internal thread). */
  readonly minorDiameterM: number;
  /** Root of the external thread. */
  readonly rootDiameterM: number;
  /** Area on which the strength of the threaded part is reckoned, m². */
  readonly stressAreaM2: number;
}

/** A metric thread by its diameter and pitch in metres. */
export function metricThread(size: string, diameterM: number, pitchM: number): Thread {
  return thread(size, 'metric', diameterM, pitchM);
}

/** A unified inch thread by its diameter in metres and its threads per inch. */
export function unifiedThread(size: string, diameterM: number, threadsPerInch: number): Thread {
  requireInRange('threads per inch', threadsPerInch, { min: 4, max: 80, unit: '1/in' });
  return thread(size, 'unified', diameterM, 0.0254 / threadsPerInch);
}

function thread(size: string, system: Thread['system'], diameterM: number, pitchM: number): Thread {
  requireInRange(`${size}: thread diameter`, diameterM, { min: 0.0015, max: 0.1, unit: 'm' });
  requireInRange(`${size}: pitch`, pitchM, { min: 0.0002, max: Math.min(0.01, diameterM / 3), unit: 'm' });
  return { size, system, diameterM, pitchM };
}

/**
 * Diameters and stress area of the basic profile.
 * @source [ISO68] profile; [ISO724] diameters; [ISO898] stress area (π/4)((d2 + d3)/2)²; [B1.1] stress area 0.7854 (D − 0.9743/n)²
 * @checked tests/reference/fastener/thread-geometry.test.ts
 */
export function threadGeometry({ system, diameterM: d, pitchM: p }: Thread): ThreadGeometry {
  const triangleHeightM = (Math.sqrt(3) / 2) * p;
  const pitchDiameterM = d - 0.75 * triangleHeightM;
  const minorDiameterM = d - 1.25 * triangleHeightM;
  const rootDiameterM = system === 'metric' ? minorDiameterM - triangleHeightM / 6 : d - 1.5 * triangleHeightM;
  const stressDiameterM = system === 'metric' ? (pitchDiameterM + rootDiameterM) / 2 : d - 0.9743 * p;
  return {
    triangleHeightM,
    pitchDiameterM,
    minorDiameterM,
    rootDiameterM,
    stressAreaM2: (Math.PI / 4) * stressDiameterM ** 2,
  };
}
