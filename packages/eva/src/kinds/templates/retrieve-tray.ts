import { defineTemplate } from './template.ts';
import { idsOf, resultOf, sentences, stintOf, textOf } from './write-nodes.ts';

const CHILDREN = [{ name: 'retrieve', about: 'Added to the stint.' }];

/** One exposure tray into its bag. */
export const retrieveTray = defineTemplate({
  name: 'retrieve-tray',
  title: 'Retrieve a tray',
  about: 'Closes a tray, tethers it, lets its fasteners go, takes it off and stows it.',
  arguments: [
    { id: 'who', about: 'Who does it.', type: 'text', required: true },
    { id: 'at', about: 'Worksite.', type: 'id', required: true },
    { id: 'restraint', about: 'Foot restraint.', type: 'id', required: false },
    { id: 'tray', about: 'The tray.', type: 'id', required: true },
    { id: 'latches', about: 'Its latches.', type: 'ids', required: false },
    { id: 'bolts', about: 'Its bolts.', type: 'ids', required: false },
    { id: 'lines', about: 'Its connectors.', type: 'ids', required: false },
    { id: 'bag', about: 'Where it is stowed.', type: 'id', required: true },
    { id: 'tool', about: 'Driver; absent: the only one that fits.', type: 'id', required: false },
  ],
  childNames: CHILDREN,
  example: {
    use: 'use retrieve-tray one who=EV2 at=rack tray=tray-1 latches="l1 l2" bag=bag-2',
    expands: `stint one-retrieve "Retrieve the tray" who=EV2 at=rack {
  close tray-1
  tether tray-1
  unlatch l1 l2
  take tray-1
  stow tray-1 in=bag-2
  untether tray-1
}`,
  },
  expand: (use) => {
    const tray = idsOf(use, 'tray');
    const site = { who: textOf(use, 'who'), at: textOf(use, 'at'), restraint: textOf(use, 'restraint') };
    return resultOf(use, CHILDREN, [
      ...stintOf(use, 'retrieve', 'Retrieve the tray', site, [
        ...sentences(use, 'close', tray),
        ...sentences(use, 'demate', idsOf(use, 'lines')),
        ...sentences(use, 'tether', tray),
        ...sentences(use, 'unlatch', idsOf(use, 'latches')),
        ...sentences(use, 'release', idsOf(use, 'bolts'), { with: textOf(use, 'tool') }),
        ...sentences(use, 'take', tray),
        ...sentences(use, 'stow', tray, { in: textOf(use, 'bag') }),
        ...sentences(use, 'untether', tray),
      ]),
    ]);
  },
});
