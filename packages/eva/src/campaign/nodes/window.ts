import { argument, defineNode, optional } from '../definition/define-node.ts';
import { choice, declaresId, quantity, text } from '../definition/value-type.ts';

export const window = defineNode({
  name: 'window',
  parents: ['document'],
  arguments: [argument('id', declaresId('window'), 'Short name.')],
  title: true,
  properties: {
    pad: optional(quantity('time', '0 s', '12 h'), 'Shrinks it for inside, widens it for outside. Absent: 0.'),
    'shown-as': optional(choice('night', 'gap', 'band'), 'How the home chart draws it. Absent: band.'),
    source: optional(text, 'Where the figures come from.'),
  },
  about: 'UTC intervals in which something holds: daylight, coverage, a request that can be granted.',
  examples: {
    valid: [
      'window night "Eclipse" pad="30 s" shown-as=night { interval "2031-09-14T11:00:00Z" "2031-09-14T11:35:00Z" }',
    ],
    invalid: [
      {
        text: 'window night pad="30" { interval "2031-09-14T11:00:00Z" "2031-09-14T11:35:00Z" }',
        code: 'campaign/not-a-quantity',
      },
      { text: 'window night', code: 'campaign/missing-node' },
    ],
  },
});
