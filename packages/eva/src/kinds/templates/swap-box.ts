import { defineTemplate } from './template.ts';
import { idsOf, resultOf, sentences, stintOf, textOf } from './write-nodes.ts';

const CHILDREN = [
  { name: 'free', about: 'Added to the stint that frees the old box.' },
  { name: 'out', about: 'Added to the stint that takes it out.' },
  { name: 'in', about: 'Added to the stint that seats and fastens the new box.' },
  { name: 'close', about: 'Added to the stint that connects it and closes up.' },
];

/** Old box out, new box in, at one worksite: four stints in the order of the text. */
export const swapBox = defineTemplate({
  name: 'swap-box',
  title: 'Swap a box',
  about:
    'Opens the covers, demates the lines, tethers the old box before its fasteners let go, parks it, seats and fastens the new one, mates its lines and closes the covers.',
  arguments: [
    { id: 'who', about: 'Who works.', type: 'text', required: true },
    { id: 'partner', about: 'Who helps; absent: nobody.', type: 'text', required: false },
    { id: 'at', about: 'Worksite.', type: 'id', required: true },
    { id: 'restraint', about: 'Foot restraint.', type: 'id', required: false },
    { id: 'old', about: 'The box that comes out.', type: 'id', required: true },
    { id: 'new', about: 'The box that goes in.', type: 'id', required: true },
    { id: 'old-to', about: 'Where the old box is put: bag, bay, place.', type: 'id', required: true },
    {
      id: 'new-from',
      about: 'Where the new box is taken from; absent: it is in hand already.',
      type: 'id',
      required: false,
    },
    {
      id: 'seat',
      about: 'Bay for the new box; absent: the only one at the worksite, else the worksite.',
      type: 'id',
      required: false,
    },
    { id: 'old-fasteners', about: 'Fasteners of the old box.', type: 'ids', required: true },
    { id: 'new-fasteners', about: 'Fasteners of the new box.', type: 'ids', required: true },
    { id: 'old-lines', about: 'Connectors of the old box.', type: 'ids', required: false },
    { id: 'new-lines', about: 'Connectors of the new box.', type: 'ids', required: false },
    { id: 'covers', about: 'Covers opened first and closed last.', type: 'ids', required: false },
    { id: 'tool', about: 'Driver; absent: the only one that fits.', type: 'id', required: false },
  ],
  childNames: CHILDREN,
  example: {
    use: `use swap-box swap who=EV1 at=bay-4 old=old-unit new=new-unit old-to=bag-1 new-from=bag-1 seat=rails old-fasteners="b1 b2" new-fasteners="b3 b4" old-lines=j1 new-lines=j2 covers=lid tool=driver {
  free { minutes low=10 likely=14 high=22; }
}`,
    expands: `stint swap-free "Free the old box" who=EV1 at=bay-4 {
  open lid
  demate j1
  tether old-unit
  release b1 b2 with=driver
  minutes low=10 likely=14 high=22
}
stint swap-out "Take the old box out" who=EV1 at=bay-4 {
  take old-unit
  put old-unit to=bag-1
  untether old-unit
}
stint swap-in "Seat and fasten the new box" who=EV1 at=bay-4 {
  take new-unit from=bag-1
  seat new-unit in=rails
  drive b3 b4 with=driver
  secure new-unit
}
stint swap-close "Connect and close up" who=EV1 at=bay-4 {
  mate j2
  close lid
}`,
  },
  expand: (use) => {
    const site = {
      who: textOf(use, 'who'),
      at: textOf(use, 'at'),
      restraint: textOf(use, 'restraint'),
      partner: textOf(use, 'partner'),
    };
    const oldBox = idsOf(use, 'old');
    const newBox = idsOf(use, 'new');
    const tool = { with: textOf(use, 'tool') };
    const newFrom = textOf(use, 'new-from');
    return resultOf(use, CHILDREN, [
      ...stintOf(use, 'free', 'Free the old box', site, [
        ...sentences(use, 'open', idsOf(use, 'covers')),
        ...sentences(use, 'demate', idsOf(use, 'old-lines')),
        ...sentences(use, 'tether', oldBox),
        ...sentences(use, 'release', idsOf(use, 'old-fasteners'), tool),
      ]),
      ...stintOf(use, 'out', 'Take the old box out', site, [
        ...sentences(use, 'take', oldBox),
        ...sentences(use, 'put', oldBox, { to: textOf(use, 'old-to') }),
        ...sentences(use, 'untether', oldBox),
      ]),
      ...stintOf(use, 'in', 'Seat and fasten the new box', site, [
        ...(newFrom === undefined ? [] : sentences(use, 'take', newBox, { from: newFrom })),
        ...sentences(use, 'seat', newBox, { in: textOf(use, 'seat') }),
        ...sentences(use, 'drive', idsOf(use, 'new-fasteners'), tool),
        ...sentences(use, 'secure', newBox),
      ]),
      ...stintOf(use, 'close', 'Connect and close up', site, [
        ...sentences(use, 'mate', idsOf(use, 'new-lines')),
        ...sentences(use, 'close', idsOf(use, 'covers')),
      ]),
    ]);
  },
});
