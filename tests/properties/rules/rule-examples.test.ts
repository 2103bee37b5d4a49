/** Every rule is judged by its own two examples, and stands where its id says. */
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { inferHardware } from '@handrail/eva/hardware/infer-hardware';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { EXAMPLE_OPENING } from '@handrail/eva/rules/example-opening';
import type { Rule, RuleExample } from '@handrail/eva/rules/define-rule';
import { ruleFacts } from '@handrail/eva/rules/rule-facts';
import { rules } from '@handrail/eva/rules/rules.generated';
import { runRules } from '@handrail/eva/rules/run-rules';
import { fillComputedWindows } from '@handrail/eva/sky/campaign/fill-computed-windows';
import { readTimelineNotation } from '@handrail/eva/timeline/timeline-notation';
import { describe, expect, test } from 'vitest';

function findingsOf(rule: Rule, example: RuleExample) {
  const { campaign: read, problems } = readCampaign(
    [{ name: 'example.kdl', text: EXAMPLE_OPENING + example.campaign }],
    standardLibrary,
  );
  expect(problems.map((problem) => `${problem.span.line}: ${problem.what}`)).toEqual([]);
  if (read === null) throw new Error('the example does not read');
  const campaign = fillComputedWindows(read);
  const timeline = readTimelineNotation(example.timeline, campaign);
  const facts = ruleFacts(campaign, inferHardware(campaign, standardLibrary), standardLibrary, timeline);
  return runRules(facts, 0, [rule]);
}

describe.each(rules.map((rule) => [rule.id, rule] as const))('%s', (id, rule) => {
  test('finds what violates it', () => {
    const findings = findingsOf(rule, rule.examples.violates);
    expect(findings.length).toBeGreaterThan(0);
    expect(findings.every((finding) => finding.rule === id && finding.why.length > 10)).toBe(true);
    expect(findings.some((finding) => finding.severity !== 'unknown')).toBe(true);
  });
  test('is silent on what satisfies it', () => {
    expect(findingsOf(rule, rule.examples.satisfies)).toEqual([]);
  });
});

test('there are at least 25 rules with a reason and a source each', () => {
  expect(rules.length).toBeGreaterThanOrEqual(25);
  for (const rule of rules) {
    expect(rule.why.length, rule.id).toBeGreaterThan(40);
    expect(rule.source.length, rule.id).toBeGreaterThan(3);
  }
});
