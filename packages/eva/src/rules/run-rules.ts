/** Runs the rule catalogue over a timeline. */
import type { Finding } from '../finding/finding.ts';
import { NOWHERE } from '../finding/finding.ts';
import type { Rule } from './define-rule.ts';
import type { RuleFacts } from './rule-facts.ts';
import { rules } from './rules.generated.ts';

/** Findings of every rule, by EVA and time; a valid waiver is written on those it covers. */
export function runRules(facts: RuleFacts, nowUtcMs: number, only: readonly Rule[] = rules): readonly Finding[] {
  const findings: Finding[] = [];
  for (const rule of only) {
    for (const match of rule.check(facts)) {
      const where = { ...NOWHERE, ...match.where };
      const severity = match.severity ?? rule.severity;
      findings.push({
        rule: rule.id,
        severity,
        title: match.title ?? (severity === 'unknown' ? unknownTitle(rule.title) : rule.broken),
        where,
        why: match.why,
        mend: match.mend ?? null,
        source: rule.source,
        waiver: waiverFor(facts, rule.id, where, nowUtcMs),
      });
    }
  }
  const order = new Map(facts.timeline.evas.map((eva, index) => [eva.eva, index] as const));
  return findings.sort(
    (a, b) =>
      (order.get(a.where.eva ?? '') ?? -1) - (order.get(b.where.eva ?? '') ?? -1) ||
      (a.where.petS ?? -1) - (b.where.petS ?? -1) ||
      (a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : 0),
  );
}

/** What cannot be told must not read as if it were so: "Cannot tell whether the two are never farther apart than …". */
function unknownTitle(title: string): string {
  const isWord = /^[A-Z][a-z ]/.test(title);
  return `Cannot tell whether ${isWord ? title.charAt(0).toLowerCase() + title.slice(1) : title}`;
}

/** A waiver holds until its instant and for what it names: a stint, a task, an EVA, or a piece named in the finding's place. */
function waiverFor(facts: RuleFacts, rule: string, where: Finding['where'], nowUtcMs: number): string | null {
  const names = new Set(
    [where.stint, where.stint?.split('/')[0], where.eva, where.person].filter(
      (name) => name !== null && name !== undefined,
    ),
  );
  const waiver = facts.campaign.waivers.find(
    (candidate) => candidate.rule === rule && names.has(candidate.of) && candidate.untilUtcMs > nowUtcMs,
  );
  return waiver === undefined ? null : `${waiver.reason} (${waiver.by})`;
}
