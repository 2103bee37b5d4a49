import { argument, defineNode, needed, optional } from '../definition/define-node.ts';
import { choice, minuteCount, text } from '../definition/value-type.ts';

export const sample = defineNode({
  name: 'sample',
  parents: ['stint'],
  arguments: [argument('minutes', minuteCount, 'How long it took.')],
  properties: {
    where: needed(choice('tank', 'rig', 'simulator', 'flight'), 'Where it was timed.'),
    who: optional(text, 'Who did it.'),
    when: optional(text, 'When: "2031-05".'),
    conditions: optional(text, 'What was unlike the real thing.'),
  },
  about: 'One timed run of the stint, as evidence for its minutes.',
  examples: {
    valid: ['sample 17 where=tank who="prime crew" when="2031-05" conditions="no restraint"'],
    invalid: [{ text: 'sample 17 where=pool', code: 'campaign/not-a-choice' }],
  },
});
