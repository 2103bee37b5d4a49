import { defineNode, needed, optional } from '../definition/define-node.ts';
import { flag, text } from '../definition/value-type.ts';

export const inspiredCurve = defineNode({
  name: 'inspired-curve',
  parents: ['suit'],
  repeat: 'once',
  properties: {
    measured: needed(flag, '#false: never measured, so nothing is claimed about CO2 breathed in.'),
    source: optional(text, 'Where the measurement comes from; needed where there is one.'),
  },
  about: 'CO2 that people breathe in inside the helmet, as it was measured by work rate.',
  examples: {
    valid: [
      'inspired-curve measured=#false',
      'inspired-curve measured=#true source="[KIM20] abstract" { point "293 W" mean="8.09 mmHg" deviation="1.39 mmHg"; point "586 W" mean="11.39 mmHg" deviation="1.26 mmHg" }',
    ],
    invalid: [{ text: 'inspired-curve', code: 'campaign/missing-property' }],
  },
});
