import { defineVerb } from '../define-verb.ts';
import { defineKind } from '../kind.ts';

export const crew = defineKind({
  id: 'crew',
  title: 'Crew',
  about: 'The people themselves: what they do with no hardware in hand, or with one another.',
  aspects: [],
  carried: false,
  holds: 'items',
  verbs: [
    defineVerb('rest', 'Rest', [60, 120, 300]),
    defineVerb('wait', 'Wait', [60, 60, 60]),
    defineVerb('glove-check', 'Check gloves', [30, 60, 120], { voice: true }),
    defineVerb('pad-check', 'Check the helmet pad', [20, 40, 90], { voice: true }),
    defineVerb('check', 'Check {object}: hooks closed and locked, gloves, visor', [60, 120, 240], { voice: true }),
    defineVerb('report', 'Report', [10, 20, 60]),
    defineVerb('look-around', 'Look around the worksite for loose items', [30, 60, 120]),
    defineVerb('ingress-restraint', 'Get into the foot restraint', [45, 90, 180], { effort: 'moderate' }),
    defineVerb('egress-restraint', 'Get out of the foot restraint', [30, 60, 120], { effort: 'moderate' }),
    defineVerb(
      'swap-tether',
      'Swap the safety tether: new hook closed and locked before the old one opens',
      [45, 60, 120],
      {
        voice: true,
      },
    ),
  ],
  properties: [],
  source: 'common practice',
});
