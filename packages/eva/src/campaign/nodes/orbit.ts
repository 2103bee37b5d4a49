import { defineNode, optional } from '../definition/define-node.ts';
import { text } from '../definition/value-type.ts';

export const orbit = defineNode({
  name: 'orbit',
  parents: ['document'],
  repeat: 'at-most-once',
  properties: {
    name: optional(text, 'Name of the vehicle in the sources of windows. Absent: that of the elements.'),
  },
  about:
    'The orbit of the vehicle, in one of three forms: two-line elements, an orbit mean-elements message, or Keplerian elements. Which model moves it is stated by the form.',
  examples: {
    valid: [
      'orbit { kepler model=j2 epoch="2031-09-14T00:00:00Z" semi-major-axis="6793 km" eccentricity=0.0005 inclination="44 deg" node="120 deg" perigee="0 deg" anomaly="0 deg" }',
    ],
    invalid: [{ text: 'orbit { ellipse }', code: 'campaign/unknown-node' }],
  },
});
