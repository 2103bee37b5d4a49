import { argument, defineNode, needed, optional } from '../definition/define-node.ts';
import { declaresId, quantity } from '../definition/value-type.ts';

export const relay = defineNode({
  name: 'relay',
  parents: ['document'],
  arguments: [argument('id', declaresId('partner'), 'Short name.')],
  title: true,
  properties: {
    longitude: needed(quantity('angle', '-360 deg', '360 deg'), 'East of Greenwich.'),
    grazing: optional(
      quantity('length', '0 km', '300 km'),
      'How high over the ground the beam must pass. Absent: 0 km.',
    ),
  },
  about: 'A geostationary relay that the vehicle can talk through.',
  examples: {
    valid: ['relay east "Relay east" longitude="60 deg" grazing="100 km"'],
    invalid: [{ text: 'relay east', code: 'campaign/missing-property' }],
  },
});
