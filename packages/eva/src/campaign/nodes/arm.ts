import { argument, defineNode, needed } from '../definition/define-node.ts';
import { declaresId, reference } from '../definition/value-type.ts';

export const arm = defineNode({
  name: 'arm',
  parents: ['document'],
  arguments: [argument('id', declaresId('arm'), 'Short name.')],
  title: true,
  properties: {
    operator: needed(reference('person'), 'Who flies it.'),
    start: needed(reference('pose'), 'Pose at PET 0.'),
  },
  about: 'A robotic arm with the poses it may stand in and the times between them.',
  examples: {
    valid: ['arm crane "Crane arm" operator=IV start=crane-park { pose crane-park "Parked" }'],
    invalid: [
      { text: 'arm crane operator=IV start=a', code: 'campaign/missing-node' },
      { text: 'arm crane start=a { pose a }', code: 'campaign/missing-property' },
    ],
  },
});
