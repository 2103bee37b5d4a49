import { defineNode, needed } from '../definition/define-node.ts';
import { word } from '../definition/value-type.ts';

const one = (about: string) => needed(word, about);

export const effortUse = defineNode({
  name: 'effort-use',
  parents: ['suit'],
  repeat: 'once',
  properties: {
    low: one('The class for verbs that the library calls low.'),
    moderate: one('The class for verbs that it calls moderate.'),
    high: one('The class for verbs that it calls high.'),
    moving: one('For moving hand over hand.'),
    passing: one('For passing the hatch.'),
    helping: one('For steps that somebody else of the stint does.'),
    unknown: one('For steps whose verb the library does not know.'),
    idle: one('For time in which nothing is planned.'),
    beyond: one('For the time after the planned end, to find when a supply would run out.'),
    planning: one(
      'For the whole excursion before there is a plan: the wall of a person without suit-limit rests on it.',
    ),
  },
  about: 'Which class of effort counts for what. All are said: none has a default.',
  examples: {
    valid: [
      'effort-use low=light moderate=steady high=hard moving=steady passing=steady helping=light unknown=hard idle=light beyond=steady planning=steady',
    ],
    invalid: [
      {
        text: 'effort-use low=light moderate=steady high=hard moving=steady passing=steady helping=light unknown=hard idle=light beyond=steady',
        code: 'campaign/missing-property',
      },
    ],
  },
});
