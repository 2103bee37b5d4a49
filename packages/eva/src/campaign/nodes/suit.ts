import { argument, defineNode, needed } from '../definition/define-node.ts';
import { choice, declaresId, quantity } from '../definition/value-type.ts';

const INSIDE =
  'constant water-start "4.2 kg" low="4.1 kg" high="4.3 kg" source="invented"; effort steady "290 W" low="200 W" high="400 W" source="invented"; inspired-curve measured=#false; secondary-oxygen fitted=#false; effort-use low=steady moderate=steady high=steady moving=steady passing=steady helping=steady unknown=steady idle=steady beyond=steady planning=steady';

export const suit = defineNode({
  name: 'suit',
  parents: ['document'],
  arguments: [argument('id', declaresId('suit'), 'Short name.')],
  title: true,
  properties: {
    'gas-law': needed(choice('ideal', 'real'), 'Which gas law gives the oxygen in a bottle from its pressure.'),
    energy: needed(
      choice('lusk-1924', 'peronnet-massicotte-1991', 'weir-1949'),
      'Which published relation turns metabolic heat into oxygen used.',
    ),
    'before-egress': needed(
      quantity('time', '0 s', '6 h'),
      'How long before PET 0 it leaves vehicle supplies: from then on everything in it falls.',
    ),
  },
  about:
    'What a suit holds and uses. Every constant is stated with a band and a source by whoever owns the suit; a missing one is an error and never filled in.',
  examples: {
    valid: [`suit one "Suit 1" gas-law=real energy=lusk-1924 before-egress="10 min" { ${INSIDE} }`],
    invalid: [
      { text: `suit one gas-law=real before-egress="10 min" { ${INSIDE} }`, code: 'campaign/missing-property' },
      {
        text: `suit one gas-law=perfect energy=lusk-1924 before-egress="10 min" { ${INSIDE} }`,
        code: 'campaign/not-a-choice',
      },
    ],
  },
});
