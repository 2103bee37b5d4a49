import { argument, defineNode, needed, optional } from '../definition/define-node.ts';
import { quantity, reference, text } from '../definition/value-type.ts';

const temperature = quantity('temperature', '3 K', '600 K');
const time = quantity('time', '1 s', '30 d');

export const unitTemperature = defineNode({
  name: 'unit-temperature',
  parents: ['document'],
  arguments: [argument('hardware', reference('hardware'), 'The unit that may stand without power.')],
  properties: {
    clock: needed(reference('clock'), 'The clock that counts it: its limit must be within what is found here.'),
    'limit-low': optional(time, 'Where the owner states minutes: the least time without power.'),
    'limit-likely': optional(time, 'The likely time.'),
    'limit-high': optional(time, 'The greatest time.'),
    start: optional(temperature, 'Likely temperature when power goes.'),
    'start-low': optional(temperature, 'Its low end.'),
    'start-high': optional(temperature, 'Its high end.'),
    surroundings: optional(temperature, 'Likely temperature of what it drifts towards.'),
    'surroundings-low': optional(temperature, 'Its low end: shade.'),
    'surroundings-high': optional(temperature, 'Its high end: sun.'),
    'time-constant': optional(time, 'Likely time constant.'),
    'time-constant-low': optional(time, 'Its low end.'),
    'time-constant-high': optional(time, 'Its high end.'),
    lowest: optional(temperature, 'Temperature that it must not fall below. Absent: none on that side.'),
    highest: optional(temperature, 'Temperature that it must not rise above. Absent: none on that side.'),
    source: needed(text, 'Where the figures come from.'),
  },
  about:
    'How long a unit may stand without power: minutes that its owner states, or a lump that drifts towards its surroundings. Either the three limits, or all of start, surroundings and time-constant with their ends.',
  examples: {
    valid: [
      'unit-temperature spare-pump clock=spare-cold limit-low="1 h 50 min" limit-likely="2 h" limit-high="2 h 20 min" source="invented"',
      'unit-temperature mast clock=mast-cold start="15 °C" start-low="10 °C" start-high="20 °C" surroundings="-60 °C" surroundings-low="-90 °C" surroundings-high="-40 °C" time-constant="8 h" time-constant-low="7 h" time-constant-high="9 h" lowest="-20 °C" source="invented"',
    ],
    invalid: [
      { text: 'unit-temperature spare-pump limit-low="1 h" source="invented"', code: 'campaign/missing-property' },
      {
        text: 'unit-temperature spare-pump clock=spare-cold start="15 W" source="invented"',
        code: 'campaign/wrong-dimension',
      },
    ],
  },
});
