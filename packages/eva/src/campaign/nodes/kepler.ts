import { defineNode, needed, optional } from '../definition/define-node.ts';
import { choice, decimal, quantity, utc } from '../definition/value-type.ts';

export const kepler = defineNode({
  name: 'kepler',
  parents: ['orbit'],
  repeat: 'at-most-once',
  properties: {
    model: needed(
      choice('j2', 'two-body'),
      'j2: averaged elements with the drift by the flattening; two-body: a fixed ellipse.',
    ),
    epoch: needed(utc, 'Instant of the elements.'),
    'semi-major-axis': needed(quantity('length', '6478 km', '100000 km'), 'Half the long axis.'),
    eccentricity: needed(decimal(0, 0.9), '0 for a circle.'),
    inclination: needed(quantity('angle', '0 deg', '180 deg'), 'Of the plane to the equator.'),
    node: needed(quantity('angle', '-360 deg', '360 deg'), 'Right ascension of the ascending node.'),
    perigee: needed(quantity('angle', '-360 deg', '360 deg'), 'Argument of perigee.'),
    anomaly: needed(quantity('angle', '-360 deg', '360 deg'), 'Mean anomaly.'),
    frame: optional(choice('teme', 'j2000'), 'Equator and equinox. Absent: teme, of the date.'),
    'half-rate': optional(
      decimal(-1, 1, 'rev/day²'),
      'Half the rate of the mean motion by drag, rev/day²: it sets how fast the pads grow. Absent: the decay of a station near 400 km is assumed.',
    ),
  },
  about: 'Keplerian elements. Which of the two models moves them has to be said.',
  examples: {
    valid: [
      'kepler model=j2 epoch="2031-09-14T00:00:00Z" semi-major-axis="6793 km" eccentricity=0.0005 inclination="44 deg" node="120 deg" perigee="0 deg" anomaly="0 deg"',
    ],
    invalid: [
      {
        text: 'kepler epoch="2031-09-14T00:00:00Z" semi-major-axis="6793 km" eccentricity=0.0005 inclination="44 deg" node="120 deg" perigee="0 deg" anomaly="0 deg"',
        code: 'campaign/missing-property',
      },
      {
        text: 'kepler model=j2 epoch="2031-09-14T00:00:00Z" semi-major-axis="415 km" eccentricity=0.0005 inclination="44 deg" node="120 deg" perigee="0 deg" anomaly="0 deg"',
        code: 'campaign/out-of-range',
      },
    ],
  },
});
