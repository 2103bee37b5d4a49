import { runPrebreathe } from '../../prebreathe/run-prebreathe.ts';
import { formatDuration } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { exampleSuit, inSuit } from '../example-suit.ts';

const campaign = (minutes: number): string => `${inSuit(exampleSuit('worn')).replace('eva=day', 'eva=later')}
prebreathe in-suit suit-pressure="29.6 kPa" limit=1.65 half-time="360 min" start-nitrogen="80 kPa" vapour=dry source="invented; model after [E14]" {
    stage "in the suit" role=oxygen pressure="101.3 kPa" oxygen=1 minutes=${minutes}
}
eva later egress="2031-05-03T10:00:00Z" longest="6 h" prebreathe=in-suit
`;
const timeline = `eva later
EV3 0:00-0:05 out
EV3 0:05-0:09 porch > bay
EV3 0:09-0:20 look/see
EV3 0:20-0:24 bay > porch
EV3 0:24-0:29 in
hatch 0:29-0:34`;

export const protocolMeetsTheLimit = defineRule({
  title: "The stated pre-breathe ends at or below the operator's limit",
  broken: "The pre-breathe ends above the operator's limit",
  severity: 'error',
  why: 'Nitrogen that is still in the tissue at suit pressure comes out as bubbles. Not medical advice: the flight surgeon decides.',
  source: '[E14]',
  *check(facts) {
    for (const { eva } of facts.evas) {
      const planned = facts.campaign.evas.find((candidate) => candidate.id === eva.eva);
      if (planned === undefined) continue;
      const where = { eva: eva.eva, petS: 0, span: planned.span };
      const protocol = facts.campaign.prebreathes.find((candidate) => candidate.id === planned.prebreathe);
      if (protocol === undefined) {
        const suited = facts.outside.filter(
          (person) => person.suit !== null && eva.passages.some((one) => one.person === person.id),
        );
        if (suited.length === 0) continue;
        yield {
          severity: 'unknown',
          where,
          why: `no pre-breathe is stated for EVA ${eva.eva}, and none is filled in`,
          mend: 'write prebreathe=… on the EVA',
        };
        continue;
      }
      const { ratio, limit, holds, stillNeededS } = runPrebreathe(protocol.stages, protocol.model);
      if (holds) continue;
      yield {
        where: { ...where, span: protocol.span },
        why: `${protocol.title} ends at a ratio of ${ratio.toFixed(3)}; the limit is ${limit} (above by ${(ratio - limit).toFixed(3)})`,
        mend:
          stillNeededS === null
            ? 'oxygen at rest never brings it there: ask the flight surgeon'
            : `${formatDuration(Math.ceil(stillNeededS / 60) * 60)} more oxygen at rest would; the flight surgeon decides`,
      };
    }
  },
  examples: { violates: { campaign: campaign(240), timeline }, satisfies: { campaign: campaign(260), timeline } },
});
