import { argument, defineNode, optional } from '../definition/define-node.ts';
import { COMPUTED_SORTS } from '../campaign-sky.ts';
import { choice, declaresId, quantity, reference, text } from '../definition/value-type.ts';

export const window = defineNode({
  name: 'window',
  parents: ['document'],
  arguments: [argument('id', declaresId('window'), 'Short name.')],
  title: true,
  properties: {
    pad: optional(quantity('time', '0 s', '12 h'), 'Shrinks it for inside, widens it for outside. Absent: 0.'),
    'shown-as': optional(choice('night', 'gap', 'band'), 'How the home chart draws it. Absent: band.'),
    source: optional(
      text,
      'Where the figures come from. Of a computed window the engine and the age of the elements are said beside it.',
    ),
    computed: optional(
      choice(...COMPUTED_SORTS),
      'The intervals come from the sky engines and are not written. The timing error of the elements is added to the pad.',
    ),
    place: optional(reference('place'), 'Whose light: for lit, own-shadow and sun-in-eyes.'),
    'at-least': optional(quantity('time', '0 s', '24 h'), 'Shorter computed intervals are left out. Absent: none is.'),
  },
  about: 'UTC intervals in which something holds: daylight, coverage, a request that can be granted.',
  examples: {
    valid: [
      'window night "Eclipse" pad="30 s" shown-as=night { interval "2031-09-14T11:00:00Z" "2031-09-14T11:35:00Z" }',
      'window pump-lit "Pump bay in sunlight" computed=lit place=pump-bay at-least="20 min"',
    ],
    invalid: [
      {
        text: 'window night pad="30" { interval "2031-09-14T11:00:00Z" "2031-09-14T11:35:00Z" }',
        code: 'campaign/not-a-quantity',
      },
      { text: 'window night computed=dusk', code: 'campaign/not-a-choice' },
    ],
  },
});
