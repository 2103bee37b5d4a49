import { argument, defineNode, needed } from '../definition/define-node.ts';
import { reference, text, utc } from '../definition/value-type.ts';

export const waive = defineNode({
  name: 'waive',
  parents: ['document'],
  arguments: [argument('rule', text, 'Rule id, subject/what-must-hold.')],
  properties: {
    of: needed(
      reference('stint', 'task', 'eva', 'request', 'hardware', 'person', 'arm', 'place'),
      'What it is limited to.',
    ),
    reason: needed(text, 'Why it may stand.'),
    by: needed(text, 'Who says so.'),
    until: needed(utc, 'When it runs out.'),
  },
  about: 'A waiver: one rule, for one thing, with a reason, a name and an end.',
  examples: {
    valid: [
      'waive "restraint/settings-are-given" of="swap-pump/free-old-pump" reason="trained by hand" by="lead" until="2031-12-01T00:00:00Z"',
    ],
    invalid: [{ text: 'waive "a/b" of=c reason="x" by="y"', code: 'campaign/missing-property' }],
  },
});
