import { defineNode, needed, restArgument } from '../definition/define-node.ts';
import { quantity, reference, text } from '../definition/value-type.ts';

const temperature = quantity('temperature', '3 K', '1000 K');

export const surfaceTemperature = defineNode({
  name: 'surface-temperature',
  parents: ['document'],
  arguments: [restArgument('hardware', reference('hardware'), 'One or many pieces that share the band.')],
  properties: {
    least: needed(temperature, 'The coldest that the surface may be when it is worked on.'),
    most: needed(temperature, 'The hottest that it may be.'),
    source: needed(text, 'Where the band comes from.'),
  },
  about: 'The band of temperatures that a surface may have when a glove touches it.',
  examples: {
    valid: ['surface-temperature tray-one tray-two least="-60 °C" most="70 °C" source="invented"'],
    invalid: [
      { text: 'surface-temperature tray-one least="-60 °C" source="invented"', code: 'campaign/missing-property' },
      { text: 'surface-temperature least="-60 °C" most="70 °C" source="invented"', code: 'campaign/missing-argument' },
    ],
  },
});
