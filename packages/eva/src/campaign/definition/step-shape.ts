/**
 * A sentence of work: a verb of the kinds library, then hardware, then how. Verbs are not nodes of the format: they come
 * from the library that the campaign names.
 */
import { type NodeDefinition, optional, type PropertyDefinition } from './define-node.ts';
import { choice, decimal, minuteCount, quantity, reference, text } from './value-type.ts';

const WHERE = ['place', 'hardware', 'person', 'arm'] as const;

export const STEP_PROPERTIES: Readonly<Record<string, PropertyDefinition>> = {
  from: optional(reference(...WHERE), 'Where it is taken from.'),
  to: optional(reference(...WHERE), 'Where or to whom it goes.'),
  in: optional(reference(...WHERE), 'What it goes into: the same as to.'),
  with: optional(reference('hardware'), 'The tool.'),
  by: optional(choice('lead', 'partner', 'arm'), 'Who does it. Absent: the lead.'),
  turns: optional(decimal(0.1, 500), "Turns. Absent: the hardware's own."),
  torque: optional(quantity('torque', '0.01 N·m', '5000 N·m'), "Torque. Absent: the hardware's own."),
  minutes: optional(minuteCount, "Agreed time of this sentence. Absent: the kind's figure."),
  settings: optional(text, 'What to dial before it.'),
  say: optional(text, 'What the crew says when it is done.'),
  hear: optional(text, 'What they wait to hear before it.'),
  note: optional(text, 'A remark beside it.'),
  caution: optional(text, 'Printed above it.'),
};

/** Objects of a sentence. "it" is the piece in trouble, in a response. */
export const STEP_OBJECTS = reference(...WHERE);
export const IT = 'it';

/** Stands in for a definition where pages and schemas list what a sentence looks like. */
export const STEP_SHAPE: Pick<NodeDefinition, 'properties' | 'about'> = {
  properties: STEP_PROPERTIES,
  about: 'A sentence of work: a verb of the kinds library, the hardware it is done to, and how.',
};
