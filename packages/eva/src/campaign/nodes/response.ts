import { argument, defineNode, needed, optional } from '../definition/define-node.ts';
import { choice, declaresId, reference, text, word } from '../definition/value-type.ts';

export const response = defineNode({
  name: 'response',
  parents: ['document'],
  arguments: [argument('id', declaresId('response'), 'Short name.')],
  title: true,
  properties: {
    trigger: needed(text, 'What is seen or heard.'),
    kind: optional(reference('kind'), 'Applies to hardware of this kind; its piece is called "it" in the sentences.'),
    stint: optional(reference('stint'), 'Applies in this stint only.'),
    'leads-to': optional(
      choice('go-on', 'terminate', 'abort', 'assist'),
      'What follows it at once. Absent: work goes on, or, where it replaces a stock response, what follows that one.',
    ),
    'leaves-it': optional(word, 'The state that its piece is left in when it does not work; with kind=.'),
  },
  steps: true,
  about: 'What to do when something goes wrong: trigger, sentences, kit, time, outcome.',
  examples: {
    valid: [
      'response stuck-bolt "Stuck bolt" trigger="drive stalls" kind=bolt leaves-it=stuck { minutes low=3 likely=6 high=12; kit driver; probability "2 %" }',
      'response suit-leak "Suit leak" trigger="pressure falls" leads-to=abort { minutes low=1 likely=1 high=2 }',
    ],
    invalid: [{ text: 'response stuck-bolt kind=bolt', code: 'campaign/missing-property' }],
  },
});
