import { argument, defineNode } from '../definition/define-node.ts';
import { declaresId } from '../definition/value-type.ts';

export const milestone = defineNode({
  name: 'milestone',
  parents: ['objective'],
  arguments: [argument('id', declaresId('milestone'), 'Short name.')],
  title: true,
  about: 'Partial credit inside an objective.',
  examples: {
    valid: ['milestone powered "Mast powered" { tasks route-mast-power }'],
    invalid: [{ text: 'milestone { tasks a }', code: 'campaign/missing-argument' }],
  },
});
