import { defineTemplate } from './template.ts';
import { idsOf, resultOf, sentences, stintOf, textOf } from './write-nodes.ts';

const CHILDREN = [
  { name: 'fetch', about: 'Added to the stint that unseats it.' },
  { name: 'place', about: 'Added to the stint that seats it.' },
];

/** A foot restraint from one socket to another. */
export const moveRestraint = defineTemplate({
  name: 'move-restraint',
  title: 'Move a foot restraint',
  about: 'Unseats a foot restraint at one worksite, seats it at another and sets it.',
  arguments: [
    { id: 'who', about: 'Who does it.', type: 'text', required: true },
    { id: 'restraint', about: 'The foot restraint.', type: 'id', required: true },
    { id: 'from', about: 'Socket that it is in.', type: 'id', required: true },
    { id: 'at', about: 'Place of that socket.', type: 'id', required: true },
    { id: 'to', about: 'Socket that it goes into.', type: 'id', required: true },
    { id: 'to-at', about: 'Place of that socket.', type: 'id', required: true },
    { id: 'settings', about: 'Settings to dial at the new place.', type: 'text', required: false },
  ],
  childNames: CHILDREN,
  example: {
    use: 'use move-restraint mv who=EV1 restraint=r1 from=socket-a at=spine-1 to=socket-b to-at=spine-2 settings="roll 30 deg"',
    expands: `stint mv-fetch "Fetch the restraint" who=EV1 at=spine-1 {
  unseat r1 from=socket-a
}
stint mv-place "Place the restraint" who=EV1 at=spine-2 {
  seat r1 in=socket-b
  adjust r1 settings="roll 30 deg"
}`,
  },
  expand: (use) => {
    const who = textOf(use, 'who');
    const restraint = idsOf(use, 'restraint');
    const settings = textOf(use, 'settings');
    return resultOf(use, CHILDREN, [
      ...stintOf(use, 'fetch', 'Fetch the restraint', { who, at: textOf(use, 'at') }, [
        ...sentences(use, 'unseat', restraint, { from: textOf(use, 'from') }),
      ]),
      ...stintOf(use, 'place', 'Place the restraint', { who, at: textOf(use, 'to-at') }, [
        ...sentences(use, 'seat', restraint, { in: textOf(use, 'to') }),
        ...(settings === undefined ? [] : sentences(use, 'adjust', restraint, { settings })),
      ]),
    ]);
  },
});
