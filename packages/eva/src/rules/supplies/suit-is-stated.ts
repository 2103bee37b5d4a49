import { defineRule } from '../define-rule.ts';
import { exampleSuit } from '../example-suit.ts';

const campaign = (suit: string): string => `${suit}
task look rank=1 eva=day { stint see who=EV3 at=bay { inspect bay } }
`;
const timeline = `eva day
EV3 0:00-0:05 out
EV3 0:05-0:09 porch > bay
EV3 0:09-0:20 look/see
EV3 0:20-0:24 bay > porch
EV3 0:24-0:29 in
hatch 0:29-0:34`;

export const suitIsStated = defineRule({
  title: 'What everybody outside breathes and uses is stated',
  broken: 'Nothing says how long the supplies of somebody outside last',
  severity: 'error',
  why: 'Without a suit or a limit on it the plan cannot say who runs out of what, or when both must be in.',
  source: 'common practice',
  *check(facts) {
    if (facts.campaign.vehicle.hatch === null) return;
    const someSuit = facts.outside.some((person) => person.suit !== null);
    for (const { eva } of facts.evas) {
      for (const person of facts.outside) {
        const isOut = eva.passages.some((passage) => passage.person === person.id);
        if (!isOut || person.suit !== null) continue;
        const where = { eva: eva.eva, person: person.id, span: person.span };
        const mend = `write suit=… work-factor=… body-mass=… on ${person.id}`;
        if (person.suitLimitS === null) {
          yield {
            severity: 'unknown',
            where,
            why: `${person.id} states neither a suit nor a suit-limit: supplies cannot be told`,
            mend: `${mend}, or the suit-limit that the suit people give`,
          };
        } else if (someSuit) {
          yield {
            title: `The supplies of ${person.id} rest on the stated suit-limit alone`,
            severity: 'note',
            where,
            why: `${person.id} states a suit-limit and no suit, others do: what is left of each supply cannot be told`,
            mend,
          };
        }
      }
    }
  },
  examples: {
    violates: {
      campaign: campaign(
        `${exampleSuit('worn')}person EV3 role=outside\nperson EV4 role=outside suit=worn work-factor=1.0 body-mass="75 kg"`,
      ),
      timeline: `${timeline}\nEV1 0:00-0:05 out`,
    },
    satisfies: {
      campaign: campaign(`${exampleSuit('worn')}person EV3 role=outside suit=worn work-factor=1.0 body-mass="75 kg"`),
      timeline,
    },
  },
});
