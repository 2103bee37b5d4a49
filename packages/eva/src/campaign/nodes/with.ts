import { argument, defineNode, optional } from '../definition/define-node.ts';
import { reference, referenceOrWord } from '../definition/value-type.ts';

export const withNode = defineNode({
  name: 'with',
  parents: ['stint'],
  arguments: [argument('who', referenceOrWord(['any'], true, 'person', 'arm'), 'Partner or arm.')],
  properties: {
    at: optional(reference('place'), "The partner's place. Absent: the lead's."),
    to: optional(reference('place'), 'Where the partner ends. Absent: the same place.'),
    restraint: optional(reference('hardware'), "The partner's foot restraint."),
    pose: optional(reference('pose'), "The arm's pose."),
    'to-pose': optional(reference('pose'), "The arm's pose at the end. Absent: the same."),
  },
  steps: true,
  about: 'A partner or the arm helps for the sentences inside, which keep their place in the one ordered list.',
  examples: {
    valid: ['with EV2 at=spine-2 restraint=r2 { take old-pump by=partner }'],
    invalid: [{ text: 'with at=spine-2', code: 'campaign/missing-argument' }],
  },
});
