import { checkSolution } from '@handrail/solver-checker/check-solution';
import { describe, expect, it } from 'vitest';
import { brokenSolutions } from './broken-solutions.ts';

describe('a solution with one thing wrong is refused for that reason', () => {
  it.each(brokenSolutions)('$title', ({ model, right, wrong, kind, because }) => {
    expect(checkSolution(model, right)).toEqual([]);
    const violations = checkSolution(model, wrong);
    expect(violations.length).toBeGreaterThan(0);
    for (const violation of violations) expect(violation.kind).toBe(kind);
    expect(violations.some(({ message }) => because.test(message))).toBe(true);
  });
});
