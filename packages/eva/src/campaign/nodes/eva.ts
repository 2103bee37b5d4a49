import { argument, defineNode, needed, optional } from '../definition/define-node.ts';
import { declaresId, quantity, reference, utc } from '../definition/value-type.ts';

export const eva = defineNode({
  name: 'eva',
  parents: ['document'],
  arguments: [argument('id', declaresId('eva'), 'Short name.')],
  title: true,
  properties: {
    egress: needed(utc, 'Planned PET 0.'),
    slip: optional(quantity('time', '0 s', '24 h'), 'PET 0 may slip by up to this. Absent: 0.'),
    longest: optional(quantity('time', '10 min', '24 h'), 'From PET 0 to both on vehicle supplies.'),
    indoors: optional(
      reference('window'),
      'A window in which nobody may be outside: both are in before its next interval begins. Absent: none.',
    ),
    prebreathe: optional(reference('prebreathe'), 'The pre-breathe before it. Absent: not stated.'),
  },
  about: 'One excursion: when it starts, who passes the hatch in which order, and what makes it worth flying.',
  examples: {
    valid: [
      'eva mast "Mast" egress="2031-09-14T11:40:00Z" slip="15 min" longest="6 h 30 min" { out EV1 "8 min"; in EV1 "6 min"; close-hatch "7 min" }',
    ],
    invalid: [
      { text: 'eva mast egress="2031-09-14 11:40"', code: 'campaign/not-an-instant' },
      { text: 'eva mast egress="2031-02-30T11:40:00Z"', code: 'campaign/not-an-instant' },
      { text: 'eva mast', code: 'campaign/missing-property' },
    ],
  },
});
