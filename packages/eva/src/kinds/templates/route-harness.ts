import { defineTemplate } from './template.ts';
import { idsOf, resultOf, sentences, stintOf, textOf } from './write-nodes.ts';

const CHILDREN = [
  { name: 'lay', about: 'Added to the stint that lays out and routes the cable.' },
  { name: 'near', about: 'Added to the stint that mates the near end.' },
  { name: 'far', about: 'Added to the stint that mates the far end.' },
];

/** A cable from one place to another: laid, tied, both ends mated. */
export const routeHarness = defineTemplate({
  name: 'route-harness',
  title: 'Route a harness',
  about:
    'Takes the cable out, lays and routes it on the way from one place to the other, ties it, and mates both ends.',
  arguments: [
    { id: 'who', about: 'Who works.', type: 'text', required: true },
    { id: 'cable', about: 'The cable.', type: 'id', required: true },
    {
      id: 'cable-from',
      about: 'Bag or place that it is taken from; absent: it is in hand already.',
      type: 'id',
      required: false,
    },
    { id: 'from', about: 'Place of the near end.', type: 'id', required: true },
    { id: 'to', about: 'Place of the far end.', type: 'id', required: true },
    { id: 'ties', about: 'Wire ties, in the order of the way.', type: 'ids', required: false },
    { id: 'near-ends', about: 'Connectors at the near end.', type: 'ids', required: false },
    { id: 'far-ends', about: 'Connectors at the far end.', type: 'ids', required: false },
    { id: 'near-caps', about: 'Caps to take off there first.', type: 'ids', required: false },
    { id: 'far-caps', about: 'Caps to take off there first.', type: 'ids', required: false },
    { id: 'near-restraint', about: 'Foot restraint at the near end.', type: 'id', required: false },
    { id: 'far-restraint', about: 'Foot restraint at the far end.', type: 'id', required: false },
  ],
  childNames: CHILDREN,
  example: {
    use: 'use route-harness h1 who=EV2 cable=harness cable-from=bag-2 from=panel to=mast-foot ties="t1 t2" near-ends=j1 far-ends=j2 far-caps=c2',
    expands: `stint h1-lay "Lay and route the cable" who=EV2 at=panel to=mast-foot {
  take harness from=bag-2
  lay harness
  route harness to=mast-foot
  tie t1 t2
  secure harness
}
stint h1-near "Mate the near end" who=EV2 at=panel {
  mate j1
  check j1
}
stint h1-far "Mate the far end" who=EV2 at=mast-foot {
  uncap c2
  mate j2
  check j2
}`,
  },
  expand: (use) => {
    const who = textOf(use, 'who');
    const from = textOf(use, 'from');
    const to = textOf(use, 'to');
    const cable = idsOf(use, 'cable');
    const cableFrom = textOf(use, 'cable-from');
    const end = (which: 'near' | 'far'): ReturnType<typeof sentences> => [
      ...sentences(use, 'uncap', idsOf(use, `${which}-caps`)),
      ...sentences(use, 'mate', idsOf(use, `${which}-ends`)),
      ...sentences(use, 'check', idsOf(use, `${which}-ends`)),
    ];
    return resultOf(use, CHILDREN, [
      ...stintOf(use, 'lay', 'Lay and route the cable', { who, at: from, to }, [
        ...(cableFrom === undefined ? [] : sentences(use, 'take', cable, { from: cableFrom })),
        ...sentences(use, 'lay', cable),
        ...sentences(use, 'route', cable, { to }),
        ...sentences(use, 'tie', idsOf(use, 'ties')),
        ...sentences(use, 'secure', cable),
      ]),
      ...stintOf(
        use,
        'near',
        'Mate the near end',
        { who, at: from, restraint: textOf(use, 'near-restraint') },
        end('near'),
      ),
      ...stintOf(use, 'far', 'Mate the far end', { who, at: to, restraint: textOf(use, 'far-restraint') }, end('far')),
    ]);
  },
});
