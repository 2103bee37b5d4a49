import { requireInRange } from '@handrail/quantity/in-range';
import type { PrebreatheStage } from './prebreathe-protocol.ts';
import { timeToTensionS, tissueNitrogenPa } from './tissue-nitrogen.ts';

/** How a break in the oxygen is made good: up to `longestBreakS` by `paybackRatio` times its length; a longer one restarts the pre-breathe. */
export interface BreakRule {
  readonly paybackRatio: number;
  readonly longestBreakS: number;
  readonly source: string;
}

export type Payback = { readonly kind: 'pay-back'; readonly extraS: number } | { readonly kind: 'restart' };

/**
 * What one break costs. It is an operational rule and not the tissue equation: for a fast tissue the equation asks for far more than
 * twice the break, so both are shown.
 * @source [B24] §3.2 for the published rule (2:1 up to 10 min)
 */
export function breakPayback(breakS: number, rule: BreakRule): Payback {
  const length = requireInRange('break', breakS, { min: 0, max: 86_400, unit: 's' });
  const ratio = requireInRange('payback ratio', rule.paybackRatio, { min: 0, max: 100, unit: '1' });
  const longest = requireInRange('longest break', rule.longestBreakS, { min: 0, max: 86_400, unit: 's' });
  return length <= longest ? { kind: 'pay-back', extraS: length * ratio } : { kind: 'restart' };
}

/**
 * What the tissue equation alone would ask after a break: seconds of pure oxygen until the tissue is back where it was when the break began.
 * Stands beside the rule, never instead of it. null: the tissue held nothing, so it can never be as empty again.
 * @param tissuePa tension when the break begins
 * @param breathedPa nitrogen breathed during it
 * @source [E14] Eq. 2; the contrast with the rule in [B24] §3.2
 */
export function tissuePaybackS(tissuePa: number, breathedPa: number, breakS: number, ratePerS: number): number | null {
  const after = tissueNitrogenPa(tissuePa, breathedPa, 0, breakS, ratePerS);
  return timeToTensionS(after, 0, tissuePa, ratePerS);
}

/** One run of oxygen between holds, with its breaks. */
export interface OxygenBlock {
  readonly firstStage: number;
  readonly lastStage: number;
  /** Oxygen breathed since the block began or was last restarted. */
  readonly servedS: number;
  /** Extra time that its breaks demand. */
  readonly owedS: number;
  readonly restarts: number;
  /** What counts against the protocol's required time: served − owed, not below 0. */
  readonly countsS: number;
}

/** Oxygen time of a protocol, block by block, after the break rule. A break that touches no oxygen stage before it costs nothing. */
export function oxygenBlocks(stages: readonly PrebreatheStage[], rule: BreakRule): readonly OxygenBlock[] {
  const blocks: OxygenBlock[] = [];
  let open: { firstStage: number; servedS: number; owedS: number; restarts: number } | null = null;
  let breakS = 0;
  const closeAt = (lastStage: number): void => {
    if (open !== null) blocks.push({ ...open, lastStage, countsS: Math.max(0, open.servedS - open.owedS) });
    open = null;
    breakS = 0;
  };
  stages.forEach((stage, index) => {
    if (stage.role === 'hold') {
      closeAt(index - 1);
      return;
    }
    if (stage.role === 'break') {
      if (open !== null) breakS += stage.durationS;
      return;
    }
    open ??= { firstStage: index, servedS: 0, owedS: 0, restarts: 0 };
    if (breakS > 0) {
      const payback = breakPayback(breakS, rule);
      if (payback.kind === 'restart') open = { ...open, servedS: 0, owedS: 0, restarts: open.restarts + 1 };
      else open = { ...open, owedS: open.owedS + payback.extraS };
      breakS = 0;
    }
    open = { ...open, servedS: open.servedS + stage.durationS };
  });
  if (breakS > 0 && open !== null) {
    // A break that no oxygen follows is still owed.
    const still: { firstStage: number; servedS: number; owedS: number; restarts: number } = open;
    const payback = breakPayback(breakS, rule);
    open =
      payback.kind === 'restart'
        ? { ...still, servedS: 0, owedS: 0, restarts: still.restarts + 1 }
        : { ...still, owedS: still.owedS + payback.extraS };
  }
  closeAt(stages.length - 1);
  return blocks;
}
