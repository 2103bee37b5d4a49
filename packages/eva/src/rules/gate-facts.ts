/** What the rules on gates read: what a "no" comes to, from the states just before the stint that the gate opens. */
import type { Gate } from '../campaign/campaign.ts';
import { type AfterNo, afterNo } from '../gate/after-no.ts';
import type { EvaFacts, RuleFacts } from './rule-facts.ts';

/** null: the gate opens nothing in this EVA. */
export function afterNoOf(facts: RuleFacts, { eva, valueBefore }: EvaFacts, gate: Gate): AfterNo | null {
  const startS = eva.stints.find((planned) => planned.stint === gate.before)?.startS;
  if (startS === undefined) return null;
  const values = new Map(
    [...facts.hardware.variables.keys()].map((variable) => [variable, valueBefore(variable, startS)] as const),
  );
  return afterNo(facts.campaign, facts.hardware, eva, gate, values);
}
