import { defineNode, optional, optionalArgument } from '../definition/define-node.ts';
import { minuteCount } from '../definition/value-type.ts';

export const minutes = defineNode({
  name: 'minutes',
  parents: ['stint', 'response'],
  repeat: 'at-most-once',
  arguments: [optionalArgument('agreed', minuteCount, 'The agreed planning figure.')],
  properties: {
    low: optional(minuteCount, 'One time in ten it takes less.'),
    likely: optional(minuteCount, 'Half the time it takes less.'),
    high: optional(minuteCount, 'One time in ten it takes more.'),
    agreed: optional(minuteCount, 'The planning figure that reviewers signed. Absent: likely.'),
  },
  about:
    "How long it takes, in minutes: one agreed figure, or 10th, 50th and 90th percentile. Without it the kinds' figures are summed.",
  examples: {
    valid: ['minutes 18', 'minutes low=14 likely=18 high=27', 'minutes low=14 likely=18 high=27 agreed=20'],
    invalid: [
      { text: 'minutes "18"', code: 'campaign/wrong-type' },
      { text: 'minutes -3', code: 'campaign/out-of-range' },
      { text: 'minutes 18 19', code: 'campaign/extra-argument' },
    ],
  },
});
