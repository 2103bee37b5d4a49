/**
 * A rule says what must hold. One rule = one file `rules/<subject>/<what-must-hold>.ts` with its reason, its source and two
 * examples, one that violates it and one that satisfies it; both are run by the tests and shown by `handrail explain`.
 * Rules are pure, read the same facts, and never import each other.
 */
import type { FindingPlace, Severity } from '../finding/finding.ts';
import type { RuleFacts } from './rule-facts.ts';

export interface RuleMatch {
  /** One sentence in place of the rule's `broken` where there is more to say. */
  readonly title?: string;
  /** Absent: the rule's own severity. `unknown` where something that is not stated keeps the rule from telling. */
  readonly severity?: Severity;
  readonly where: Partial<FindingPlace>;
  readonly why: string;
  readonly mend?: string;
}

export interface RuleExample {
  /** Campaign text, added to the examples' common opening (see example-opening.ts). */
  readonly campaign: string;
  /** In the notation of timeline/timeline-notation.ts. */
  readonly timeline: string;
}

export interface RuleDefinition {
  /** "Cover comes back on what was opened": what must hold, as a sentence. */
  readonly title: string;
  /** "Something that was opened stays open": what a finding says. */
  readonly broken: string;
  readonly severity: 'error' | 'warning' | 'note';
  /** Why it matters, for a person who asks. */
  readonly why: string;
  /** Source key of docs/sources, or "common practice". */
  readonly source: string;
  readonly check: (facts: RuleFacts) => Iterable<RuleMatch>;
  readonly examples: { readonly violates: RuleExample; readonly satisfies: RuleExample };
}

export type Rule = RuleDefinition & {
  /** `<subject>/<what-must-hold>`: the path of its file. */
  readonly id: string;
};

export function defineRule(definition: RuleDefinition): RuleDefinition {
  return definition;
}
