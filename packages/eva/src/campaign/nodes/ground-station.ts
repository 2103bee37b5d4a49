import { argument, defineNode, needed } from '../definition/define-node.ts';
import { declaresId, quantity } from '../definition/value-type.ts';

export const groundStation = defineNode({
  name: 'ground-station',
  parents: ['document'],
  arguments: [argument('id', declaresId('partner'), 'Short name.')],
  title: true,
  properties: {
    latitude: needed(quantity('angle', '-90 deg', '90 deg'), 'Geodetic, north positive.'),
    longitude: needed(quantity('angle', '-360 deg', '360 deg'), 'East of Greenwich.'),
    height: needed(quantity('length', '-500 m', '9000 m'), 'Over the ellipsoid.'),
    mask: needed(quantity('angle', '-5 deg', '90 deg'), 'Elevation under which nothing is heard.'),
  },
  about: 'A station on the ground that hears the vehicle directly.',
  examples: {
    valid: ['ground-station harbour "Harbour" latitude="45 deg" longitude="10 deg" height="100 m" mask="5 deg"'],
    invalid: [
      {
        text: 'ground-station harbour latitude="45 deg" longitude="10 deg" height="100 m"',
        code: 'campaign/missing-property',
      },
      {
        text: 'ground-station harbour latitude="95 deg" longitude="10 deg" height="100 m" mask="5 deg"',
        code: 'campaign/out-of-range',
      },
    ],
  },
});
