import { argument, defineNode, needed, optional } from '../definition/define-node.ts';
import { choice, decimal, declaresId, integer, quantity, text } from '../definition/value-type.ts';

const halfTime = quantity('time', '10 s', '270 h');
const tension = quantity('pressure', '0 kPa', '200 kPa');
const ratio = decimal(0.5, 4);

export const prebreathe = defineNode({
  name: 'prebreathe',
  parents: ['document'],
  arguments: [argument('id', declaresId('prebreathe'), 'Short name.')],
  title: true,
  properties: {
    'suit-pressure': needed(quantity('pressure', '10 kPa', '110 kPa'), 'Pressure of the suit outside.'),
    limit: needed(ratio, 'Greatest tissue nitrogen over suit pressure that the operator accepts.'),
    'limit-low': optional(ratio, 'Its low end, for the sensitivity.'),
    'limit-high': optional(ratio, 'Its high end.'),
    'half-time': needed(halfTime, 'Half-time of the tissue that the limit was set for.'),
    'half-time-low': optional(halfTime, 'Its low end.'),
    'half-time-high': optional(halfTime, 'Its high end.'),
    'start-nitrogen': needed(tension, 'Nitrogen in that tissue when the first stage begins.'),
    'start-nitrogen-low': optional(tension, 'Its low end.'),
    'start-nitrogen-high': optional(tension, 'Its high end.'),
    vapour: needed(
      choice('dry', 'body'),
      'dry: no water vapour is taken off what is breathed; body: 47 mmHg are. It belongs to the limit.',
    ),
    'compared-decimals': optional(integer(1, 12), 'Decimals at which the source compares. Absent: as computed.'),
    'exercise-rate': optional(
      decimal(0, 0.06),
      'Added to the rate constant for each mL/kg/min of oxygen uptake, 1/min. Absent: exercise earns nothing.',
    ),
    source: needed(text, 'Where model and limit come from.'),
  },
  about:
    'A pre-breathe: stages, breaks, tissue model and limit, all as the operator states them. Not medical advice: the flight surgeon decides.',
  examples: {
    valid: [
      'prebreathe in-suit "In-suit protocol" suit-pressure="29.6 kPa" limit=1.65 half-time="360 min" start-nitrogen="80 kPa" vapour=dry source="invented" { stage "in the suit" role=oxygen pressure="101.3 kPa" oxygen=1 minutes=250 }',
    ],
    invalid: [
      {
        text: 'prebreathe in-suit suit-pressure="29.6 kPa" half-time="360 min" start-nitrogen="80 kPa" vapour=dry source="invented" { stage "in the suit" role=oxygen pressure="101.3 kPa" oxygen=1 minutes=250 }',
        code: 'campaign/missing-property',
      },
      {
        text: 'prebreathe in-suit suit-pressure="29.6 kPa" limit=1.65 half-time="360 min" start-nitrogen="80 kPa" vapour=dry source="invented"',
        code: 'campaign/missing-node',
      },
    ],
  },
});
