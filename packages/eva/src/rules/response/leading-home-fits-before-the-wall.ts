import { formatDuration, formatPet } from '@handrail/quantity/time';
import { allResponses } from '../../response/any-response.ts';
import { isWhole } from '../../wayhome/worst-over-pairs.ts';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';
import { wayHomeOf } from '../way-home-facts.ts';

const campaign = `
task look rank=1 eva=day { stint see who=EV1 at=tip { inspect tip } }
response suit-caution "Suit caution" trigger="tone" { report; minutes low=1 likely=3 high=7 }
`;
const timeline = (wall: string): string => `${OUT}EV1 0:10-0:18 porch > bay > tip
EV1 0:18-0:30 look/see
EV1 0:30-0:38 tip > bay > porch
EV2 0:38-0:43 in
EV1 0:43-0:48 in
hatch 0:48-0:53
wall ${wall} longest EVA`;

export const leadingHomeFitsBeforeTheWall = defineRule({
  title: 'What is done before a response leads home fits before the wall as well, from every minute of the work',
  broken: 'A response that leads home comes home past the limit',
  severity: 'warning',
  why: 'A way home is counted from the moment the crew starts it. Before that the alarm is read aloud, valves are set, a partner is looked for: minutes that are gone when they turn back.',
  source: 'common practice',
  *check(facts) {
    for (const evaFacts of facts.evas) {
      const { samples, limit } = wayHomeOf(facts, evaFacts);
      if (limit === null) continue;
      for (const response of allResponses(facts.campaign)) {
        const { leadsTo: mode, timeS } = response;
        if (mode === null || timeS === null) continue;
        let least: { readonly at: (typeof samples)[number]; readonly marginS: number } | null = null;
        for (const at of samples) {
          const marginS = at.marginAtMostS[mode];
          // Who is in the hatch goes on in; past the limit without it is another rule's to say.
          const isOut = at.worst[mode].pair.some(({ kind }) => kind === 'work' || kind === 'move' || kind === 'wait');
          if (marginS === null || marginS < 0 || !isOut) continue;
          if (least === null || marginS < least.marginS) least = { at, marginS };
        }
        if (least === null || least.marginS >= timeS.high) continue;
        const { at, marginS } = least;
        yield {
          where: {
            eva: evaFacts.eva.eva,
            petS: at.petS,
            span: facts.campaign.responses.find(({ id }) => id === response.id)?.span ?? null,
          },
          why: `"${response.title}" takes up to ${formatDuration(timeS.high)} before it leads to ${mode}; at PET ${formatPet(at.endS)} the way home has ${isWhole(at.worst[mode]) ? '' : 'at most '}${formatDuration(marginS)} to the limit, PET ${formatPet(limit.petS)} (${limit.cause}): short by ${formatDuration(timeS.high - marginS)}`,
          mend: 'turn back earlier, work nearer to the hatch late, or shorten what is done before turning back',
        };
      }
    }
  },
  examples: {
    violates: { campaign, timeline: timeline('0:56') },
    satisfies: { campaign, timeline: timeline('2:00') },
  },
});
