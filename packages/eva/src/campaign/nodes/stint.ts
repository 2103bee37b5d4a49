import { argument, defineNode, needed, optional } from '../definition/define-node.ts';
import { declaresId, flag, reference, referenceOrWord } from '../definition/value-type.ts';

export const stint = defineNode({
  name: 'stint',
  parents: ['task', 'insert'],
  arguments: [argument('id', declaresId('stint'), 'Short name, unique in its task; elsewhere task/stint.')],
  title: true,
  properties: {
    who: needed(
      referenceOrWord(['any', 'both'], true, 'person', 'arm'),
      'EV1 | EV2 | any | both | "EV1 EV2" (either) | an arm alone.',
    ),
    at: optional(reference('place'), 'Where. Needed once the vehicle has places.'),
    to: optional(reference('place'), 'Ends elsewhere: a walk with something.'),
    restraint: optional(reference('hardware'), 'Foot restraint. Absent: hand-held and tethered.'),
    on: optional(reference('arm'), "Works from this arm's plate."),
    'start-on': optional(reference('arm'), 'On this plate at the start only: getting off.'),
    'end-on': optional(reference('arm'), 'On this plate at the end only: getting on.'),
    partner: optional(referenceOrWord(['any'], true, 'person'), 'A partner for the whole stint.'),
    'partner-at': optional(reference('place'), "Where the partner is. Absent: the lead's place."),
    'partner-to': optional(reference('place'), 'Where the partner ends. Absent: where the partner is.'),
    'partner-restraint': optional(reference('hardware'), "The partner's foot restraint."),
    arm: optional(reference('arm'), 'An arm that takes part in the whole stint.'),
    pose: optional(reference('pose'), 'Its pose.'),
    'to-pose': optional(reference('pose'), 'Its pose at the end. Absent: the same.'),
    voice: optional(flag, 'The reader talks it through without a break. Absent: no.'),
  },
  steps: true,
  about: 'One stay: fixed people and place, one ordered list of sentences. What is scheduled.',
  examples: {
    valid: [
      'stint free-old-pump "Free the old pump" who=EV1 at=pump-bay restraint=r1 { demate j1 j2; minutes low=14 likely=18 high=27 }',
    ],
    invalid: [
      { text: 'stint free-old-pump at=pump-bay', code: 'campaign/missing-property' },
      { text: 'stint free-old-pump who=EV1 at=pump-bay place=x', code: 'campaign/unknown-property' },
    ],
  },
});
