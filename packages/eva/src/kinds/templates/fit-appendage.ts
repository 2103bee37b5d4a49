import { defineTemplate } from './template.ts';
import { idsOf, resultOf, sentences, stintOf, textOf } from './write-nodes.ts';

const CHILDREN = [
  { name: 'seat', about: 'Added to the stint that seats it.' },
  { name: 'fasten', about: 'Added to the stint that fastens it.' },
  { name: 'connect', about: 'Added to the stint that mates its lines.' },
  { name: 'unfold', about: 'Added to the stint that unfolds it.' },
];

/** A mast, lamp, camera or other appendage onto its foot. */
export const fitAppendage = defineTemplate({
  name: 'fit-appendage',
  title: 'Fit an appendage',
  about: 'Takes the piece, seats it, fastens it, mates its lines, and unfolds it where it unfolds.',
  arguments: [
    { id: 'who', about: 'Who works.', type: 'text', required: true },
    { id: 'partner', about: 'Who helps to seat it; absent: nobody.', type: 'text', required: false },
    { id: 'at', about: 'Worksite.', type: 'id', required: true },
    { id: 'restraint', about: 'Foot restraint.', type: 'id', required: false },
    { id: 'piece', about: 'The piece.', type: 'id', required: true },
    { id: 'from', about: 'Where it is taken from; absent: it is in hand already.', type: 'id', required: false },
    {
      id: 'seat',
      about: 'Bay that it goes into; absent: the only one at the worksite, else the worksite.',
      type: 'id',
      required: false,
    },
    { id: 'fasteners', about: 'Fasteners of its foot.', type: 'ids', required: true },
    { id: 'lines', about: 'Its connectors.', type: 'ids', required: false },
    { id: 'unfold', about: 'It unfolds: #true writes the last stint.', type: 'boolean', required: false },
    { id: 'tool', about: 'Driver; absent: the only one that fits.', type: 'id', required: false },
  ],
  childNames: CHILDREN,
  example: {
    use: 'use fit-appendage fit who=EV1 partner=EV2 at=foot restraint=r1 piece=mast fasteners="b1 b2" lines=j1 unfold=#true tool=driver',
    expands: `stint fit-seat "Seat it" who=EV1 at=foot restraint=r1 partner=EV2 {
  seat mast
}
stint fit-fasten "Fasten it" who=EV1 at=foot restraint=r1 {
  start b1 b2
  drive b1 b2 with=driver
  secure mast
}
stint fit-connect "Mate its lines" who=EV1 at=foot restraint=r1 {
  mate j1
  check j1
}
stint fit-unfold "Unfold it" who=EV1 at=foot restraint=r1 {
  look-around
  deploy mast
}`,
  },
  expand: (use) => {
    const site = { who: textOf(use, 'who'), at: textOf(use, 'at'), restraint: textOf(use, 'restraint') };
    const piece = idsOf(use, 'piece');
    const from = textOf(use, 'from');
    const fasteners = idsOf(use, 'fasteners');
    const lines = idsOf(use, 'lines');
    return resultOf(use, CHILDREN, [
      ...stintOf(use, 'seat', 'Seat it', { ...site, partner: textOf(use, 'partner') }, [
        ...(from === undefined ? [] : sentences(use, 'take', piece, { from })),
        ...sentences(use, 'seat', piece, { in: textOf(use, 'seat') }),
      ]),
      ...stintOf(use, 'fasten', 'Fasten it', site, [
        ...sentences(use, 'start', fasteners),
        ...sentences(use, 'drive', fasteners, { with: textOf(use, 'tool') }),
        ...sentences(use, 'secure', piece),
      ]),
      ...stintOf(use, 'connect', 'Mate its lines', site, [
        ...sentences(use, 'mate', lines),
        ...sentences(use, 'check', lines),
      ]),
      ...(use.args['unfold'] === true
        ? stintOf(use, 'unfold', 'Unfold it', site, [
            { name: 'look-around', arguments: [], properties: {}, children: [], span: use.span },
            ...sentences(use, 'deploy', piece),
          ])
        : []),
    ]);
  },
});
