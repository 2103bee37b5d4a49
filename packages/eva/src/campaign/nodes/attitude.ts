import { defineNode, needed, optional } from '../definition/define-node.ts';
import { choice, quantity } from '../definition/value-type.ts';

export const attitude = defineNode({
  name: 'attitude',
  parents: ['document'],
  repeat: 'at-most-once',
  properties: {
    law: needed(
      choice('local-vertical', 'inertial', 'table'),
      'local-vertical: turns with the orbit; inertial: stands still among the stars; table: rows.',
    ),
    yaw: optional(quantity('angle', '-360 deg', '360 deg'), 'First, about z. Needed unless law=table.'),
    pitch: optional(quantity('angle', '-360 deg', '360 deg'), 'Second, about the new y. Needed unless law=table.'),
    roll: optional(quantity('angle', '-360 deg', '360 deg'), 'Third, about the newest x. Needed unless law=table.'),
    frame: optional(
      choice('lvlh', 'teme', 'j2000'),
      'Frame of an inertial law (teme or j2000) or of the rows of a table. Needed for both.',
    ),
  },
  about:
    'How the vehicle axes, in which places and bodies are given, are turned. In local-vertical axes x looks forward along the track, y to the right, z down.',
  examples: {
    valid: [
      'attitude law=local-vertical yaw="0 deg" pitch="0 deg" roll="180 deg"',
      'attitude law=table frame=lvlh { row at="2031-09-14T11:00:00Z" w=1 x=0 y=0 z=0; row at="2031-09-14T19:00:00Z" w=1 x=0 y=0 z=0 }',
    ],
    invalid: [{ text: 'attitude yaw="0 deg"', code: 'campaign/missing-property' }],
  },
});
