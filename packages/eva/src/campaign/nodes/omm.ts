import { argument, defineNode } from '../definition/define-node.ts';
import { text } from '../definition/value-type.ts';

export const omm = defineNode({
  name: 'omm',
  parents: ['orbit'],
  repeat: 'at-most-once',
  arguments: [argument('message', text, 'The message itself, as keyword = value lines or as JSON.')],
  about: 'An orbit mean-elements message (CCSDS 502.0), moved by SGP4. A raw text, #"""…"""#, takes it as it stands.',
  examples: {
    valid: ['omm "CCSDS_OMM_VERS = 2.0"'],
    invalid: [{ text: 'omm', code: 'campaign/missing-argument' }],
  },
});
