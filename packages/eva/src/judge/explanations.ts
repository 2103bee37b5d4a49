/** Everything that a message can point to with "handrail explain …", from the objects that make the messages. */
import { PROBLEM_CODES } from '../campaign/problem/problem-codes.ts';
import { PROOF_CHECKS } from '../proof/claim/proof-checks.ts';
import { REPLAY_CHECKS } from '../proof/replay/replay-checks.ts';
import type { RuleExample } from '../rules/define-rule.ts';
import { rules } from '../rules/rules.generated.ts';
import { PLAN_CHECKS } from '../schedule/plan-checks.ts';
import { SLIP_CHECKS } from '../slip/slip-findings.ts';

export interface Explanation {
  readonly id: string;
  /**
   * rule: judges a plan. replay: the second opinion. proof: every order and duration. plan: the planner's own. text: a problem of a campaign text. fault: input
   * that a command cannot work with.
   */
  readonly of: 'rule' | 'replay' | 'proof' | 'plan' | 'text' | 'fault';
  readonly severity: string;
  readonly title: string;
  readonly why: string;
  readonly source: string | null;
  readonly examples: { readonly violates: RuleExample; readonly satisfies: RuleExample } | null;
}

const plain = { source: null, examples: null } as const;

export const EXPLANATIONS: readonly Explanation[] = [
  ...rules.map(({ id, severity, title, why, source, examples }) => ({
    id,
    of: 'rule' as const,
    severity,
    title,
    why,
    source,
    examples,
  })),
  ...REPLAY_CHECKS.map(({ id, title, why, severity }) => ({
    ...plain,
    id,
    of: 'replay' as const,
    severity,
    title,
    why,
  })),
  ...SLIP_CHECKS.map(({ id, title, why, severity }) => ({
    ...plain,
    id,
    of: 'replay' as const,
    severity,
    title,
    why,
  })),
  ...PROOF_CHECKS.map(({ id, title, why, severity }) => ({
    ...plain,
    id,
    of: 'proof' as const,
    severity,
    title,
    why,
  })),
  ...PLAN_CHECKS.map(({ id, title, why }) => ({ ...plain, id, of: 'plan' as const, severity: 'finding', title, why })),
  ...Object.entries(PROBLEM_CODES).map(([code, why]) => ({
    ...plain,
    id: `campaign/${code}`,
    of: 'text' as const,
    severity: 'problem',
    title: code.replaceAll('-', ' '),
    why,
  })),
];
