/** Everything that "handrail explain …" knows: what the checks say of themselves, and the faults of the program's own. */
import { EXPLANATIONS as CHECKS, type Explanation } from '@handrail/eva/judge/explanations';
import { FAULT_CODES } from './fault-codes.ts';

export type { Explanation };

export const EXPLANATIONS: readonly Explanation[] = [
  ...CHECKS,
  ...Object.entries(FAULT_CODES).map(([code, why]) => ({
    source: null,
    examples: null,
    id: code,
    of: 'fault' as const,
    severity: 'fault',
    title: (code.split('/')[1] ?? code).replaceAll('-', ' '),
    why,
  })),
];
