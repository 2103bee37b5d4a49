/** Findings and instants as answers carry them: UTC beside PET wherever the EVA is known. */
import type { Finding } from '@handrail/eva/finding/finding';
import type { z } from 'zod';
import type { counts, finding, instant } from './answer-parts.ts';

/** PET 0 of the EVAs that are spoken of, in milliseconds UTC. */
export type PetZeros = ReadonlyMap<string, number>;

export function petZerosOf(evas: readonly { readonly eva: string; readonly petZeroUtcMs: number }[]): PetZeros {
  return new Map(evas.map(({ eva, petZeroUtcMs }) => [eva, petZeroUtcMs] as const));
}

/** "2031-09-14T11:40:00Z", to the nearest second. */
export function isoUtc(utcMs: number): string {
  return new Date(Math.round(utcMs / 1000) * 1000).toISOString().replace('.000Z', 'Z');
}

export function instantOnTheWire(petZeroUtcMs: number, petS: number): z.infer<typeof instant> {
  return { petS, utc: isoUtc(petZeroUtcMs + petS * 1000) };
}

export function findingOnTheWire(found: Finding, petZeros: PetZeros): z.infer<typeof finding> {
  const { eva, petS } = found.where;
  const zero = eva === null ? undefined : petZeros.get(eva);
  // A rule may speak of a part of a second; the answer does not.
  const wholeS = petS === null ? null : Math.round(petS);
  const utc = zero === undefined || wholeS === null ? null : isoUtc(zero + wholeS * 1000);
  return { ...found, where: { ...found.where, petS: wholeS, utc } };
}

export function countsOnTheWire(findings: readonly Finding[]): z.infer<typeof counts> {
  const open = findings.filter(({ waiver }) => waiver === null);
  const of = (severity: Finding['severity']): number => open.filter((one) => one.severity === severity).length;
  return {
    error: of('error'),
    warning: of('warning'),
    unknown: of('unknown'),
    note: of('note'),
    waived: findings.length - open.length,
  };
}
