import { argument, defineNode, needed, optional } from '../definition/define-node.ts';
import { declaresId, reference, text } from '../definition/value-type.ts';

export const response = defineNode({
  name: 'response',
  parents: ['document'],
  arguments: [argument('id', declaresId('response'), 'Short name.')],
  title: true,
  properties: {
    trigger: needed(text, 'What is seen or heard.'),
    kind: optional(reference('kind'), 'Applies to hardware of this kind; its piece is called "it" in the sentences.'),
    stint: optional(reference('stint'), 'Applies in this stint only.'),
  },
  steps: true,
  about: 'What to do when something goes wrong: trigger, sentences, kit, time, outcome.',
  examples: {
    valid: [
      'response stuck-bolt "Stuck bolt" trigger="drive stalls" kind=bolt { minutes low=3 likely=6 high=12; kit driver; probability "2 %" }',
    ],
    invalid: [{ text: 'response stuck-bolt kind=bolt', code: 'campaign/missing-property' }],
  },
});
