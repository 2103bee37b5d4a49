import { defineTemplate } from './template.ts';
import { idsOf, resultOf, sentences, stintOf, textOf } from './write-nodes.ts';

const CHILDREN = [
  { name: 'mount', about: 'Added to the stint in which the rider gets on.' },
  { name: 'ride', about: 'Added to the ride.' },
  { name: 'dismount', about: 'Added to the stint in which the rider gets off.' },
];

/** A ride on the arm: on, across, off, with the arm safed at both ends. */
export const rideArm = defineTemplate({
  name: 'ride-arm',
  title: 'Ride the arm',
  about:
    'The arm is safed, the rider gets on and takes the load if there is one, rides, the arm is safed again, the load is handed over, the rider gets off.',
  arguments: [
    { id: 'who', about: 'The rider.', type: 'text', required: true },
    { id: 'arm', about: 'The arm.', type: 'id', required: true },
    { id: 'at', about: 'Place where the rider gets on: that of from-pose.', type: 'id', required: true },
    { id: 'from-pose', about: 'Pose at which the rider gets on.', type: 'id', required: true },
    { id: 'to-pose', about: 'Pose at which the ride ends.', type: 'id', required: true },
    { id: 'load', about: 'What the rider takes along.', type: 'id', required: false },
    {
      id: 'load-from',
      about: 'Where it is taken from; absent: from wherever it is within reach.',
      type: 'id',
      required: false,
    },
    {
      id: 'load-to',
      about: 'Who receives it at the end; absent: the rider keeps it in hand.',
      type: 'id',
      required: false,
    },
    { id: 'load-to-restraint', about: 'Foot restraint of the one who receives it.', type: 'id', required: false },
    { id: 'stay', about: '#true: the rider stays on the plate.', type: 'boolean', required: false },
  ],
  childNames: CHILDREN,
  example: {
    use: 'use ride-arm over who=EV2 arm=crane at=deck from-pose=crane-deck to-pose=crane-bay load=spare load-to=EV1 load-to-restraint=r1',
    expands: `stint over-mount "Get on the arm" who=EV2 at=deck end-on=crane arm=crane pose=crane-deck {
  safe crane by=arm
  mount crane
  take spare
}
stint over-ride "Ride the arm" who=EV2 on=crane arm=crane pose=crane-deck to-pose=crane-bay {
  ride crane
  safe crane by=arm
}
stint over-dismount "Get off the arm" who=EV2 start-on=crane arm=crane pose=crane-bay partner=EV1 partner-restraint=r1 {
  hand-over spare to=EV1 say="your load" hear="my load"
  dismount crane
}`,
  },
  expand: (use) => {
    const who = textOf(use, 'who');
    const arm = textOf(use, 'arm');
    const armIds = idsOf(use, 'arm');
    const load = idsOf(use, 'load');
    const from = textOf(use, 'from-pose');
    const to = textOf(use, 'to-pose');
    const receiver = load.length === 0 ? undefined : textOf(use, 'load-to');
    const off = {
      who,
      'start-on': arm,
      arm,
      pose: to,
      partner: receiver,
      'partner-restraint': receiver === undefined ? undefined : textOf(use, 'load-to-restraint'),
    };
    const handOver = { to: receiver, say: 'your load', hear: 'my load' };
    return resultOf(use, CHILDREN, [
      ...stintOf(use, 'mount', 'Get on the arm', { who, at: textOf(use, 'at'), 'end-on': arm, arm, pose: from }, [
        ...sentences(use, 'safe', armIds, { by: 'arm' }),
        ...sentences(use, 'mount', armIds),
        ...sentences(use, 'take', load, { from: textOf(use, 'load-from') }),
      ]),
      ...stintOf(use, 'ride', 'Ride the arm', { who, on: arm, arm, pose: from, 'to-pose': to }, [
        ...sentences(use, 'ride', armIds),
        ...sentences(use, 'safe', armIds, { by: 'arm' }),
      ]),
      ...(use.args['stay'] === true
        ? []
        : stintOf(use, 'dismount', 'Get off the arm', off, [
            ...(receiver === undefined ? [] : sentences(use, 'hand-over', load, handOver)),
            ...sentences(use, 'dismount', armIds),
          ])),
    ]);
  },
});
