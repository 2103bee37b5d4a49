import { defineNode } from '../definition/define-node.ts';

export const limits = defineNode({
  name: 'limits',
  parents: ['document'],
  repeat: 'at-most-once',
  about:
    "The operator's limits. None has a default: what is not stated is unknown, and what rests on it is not claimed.",
  examples: {
    valid: ['limits { home-within "30 min"; margin "15 min" }'],
    invalid: [{ text: 'limits { home-withn "30 min" }', code: 'campaign/unknown-node' }],
  },
});
