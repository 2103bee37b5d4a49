import { defineNode, needed, optional, restArgument } from '../definition/define-node.ts';
import { decimal, declaresId, quantity, reference, references, text, word } from '../definition/value-type.ts';

export const hardware = defineNode({
  name: 'hardware',
  parents: ['document'],
  arguments: [restArgument('ids', declaresId('hardware'), 'One or many pieces that share all that follows.')],
  title: true,
  properties: {
    kind: needed(reference('kind'), 'Kind in the library.'),
    of: optional(reference('hardware'), 'What it belongs to: the box that a bolt fastens or a connector feeds.'),
    at: optional(
      reference('place', 'hardware', 'person', 'arm'),
      'Where it is at the start. Absent: with what it belongs to.',
    ),
    state: optional(word, 'Value of the first aspect of its kind. Absent: unknown, which satisfies nothing.'),
    mass: optional(quantity('mass', '1 g', '50000 kg'), 'Mass.'),
    load: optional(reference('load-class'), 'Class of load for carrying it. Absent: small, clips to the suit.'),
    controls: optional(references('request'), 'Requests that must be set and verified before its hazardous verbs.'),
    torque: optional(quantity('torque', '0.01 N·m', '5000 N·m'), 'Torque to drive or release it.'),
    turns: optional(decimal(0.1, 500), 'Turns to drive or release it.'),
    fits: optional(text, "Tools that fit, kinds or ids, parted by spaces. Absent: the kind's own."),
  },
  about: 'Pieces of hardware: their kind, where they are, what they belong to and the state they are in at the start.',
  examples: {
    valid: [
      'hardware b1 b2 b3 b4 kind=bolt of=old-pump at=pump-bay torque="34 N·m" turns=14 state=torqued',
      'hardware old-pump "Old pump" kind=box at=pump-bay mass="82 kg" load=large state=fastened { state power on }',
    ],
    invalid: [
      { text: 'hardware b1 kind=bolt at=a torque="34 kg"', code: 'campaign/wrong-dimension' },
      { text: 'hardware b1 at=a', code: 'campaign/missing-property' },
      { text: 'hardware b1 kind=bolt kind=box at=a', code: 'campaign/property-twice' },
      { text: 'hardware b1 kind=bolt at=a mass="-2 kg"', code: 'campaign/out-of-range' },
      { text: 'hardware "4bolts" kind=bolt at=a', code: 'campaign/not-an-id' },
    ],
  },
});
