import { checkProof } from '@handrail/solver-checker/check-proof';
import { describe, expect, it } from 'vitest';
import { brokenProofs } from './broken-proofs.ts';

describe('a proof with one thing wrong is refused for that reason', () => {
  it.each(brokenProofs)('$title', ({ model, right, wrong, because }) => {
    expect(checkProof(model, right).refusal).toBeNull();
    const { isAccepted, refusal } = checkProof(model, wrong);
    expect(isAccepted).toBe(false);
    expect(refusal?.reason).toMatch(because);
  });
});
