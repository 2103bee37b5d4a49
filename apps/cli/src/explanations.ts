/** Everything that a message can point to with "handrail explain …", from the objects that make the messages. */
import { PROBLEM_CODES } from '@handrail/eva/campaign/problem/problem-codes';
import { PROOF_CHECKS } from '@handrail/eva/proof/claim/proof-checks';
import { REPLAY_CHECKS } from '@handrail/eva/proof/replay/replay-checks';
import type { RuleExample } from '@handrail/eva/rules/define-rule';
import { rules } from '@handrail/eva/rules/rules.generated';
import { PLAN_CHECKS } from '@handrail/eva/schedule/plan-checks';
import { SLIP_CHECKS } from '@handrail/eva/slip/slip-findings';
import { FAULT_CODES } from './fault-codes.ts';

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
  ...Object.entries(FAULT_CODES).map(([code, why]) => ({
    ...plain,
    id: code,
    of: 'fault' as const,
    severity: 'fault',
    title: (code.split('/')[1] ?? code).replaceAll('-', ' '),
    why,
  })),
];
