import { formatDuration } from '@handrail/quantity/time';
import { oxygenBlocks } from '../../prebreathe/break-payback.ts';
import { defineRule } from '../define-rule.ts';

const campaign = (minutes: number): string => `
prebreathe masked suit-pressure="29.6 kPa" limit=1.65 half-time="360 min" start-nitrogen="80 kPa" vapour=dry source="invented; model after [E14]" {
    stage "mask" role=oxygen pressure="101.3 kPa" oxygen=1 minutes=60
    break "mask off" pressure="101.3 kPa" oxygen=0.21 minutes=${minutes}
    stage "in the suit" role=oxygen pressure="101.3 kPa" oxygen=1 minutes=240
    break-rule payback=2 longest="10 min" source="[B24] 3.2"
}
task look rank=1 eva=later { stint see who=EV1 at=bay { inspect bay } }
eva later egress="2031-05-03T10:00:00Z" longest="6 h" prebreathe=masked
`;
const timeline = `eva later
EV1 0:00-0:05 out
EV1 0:05-0:09 porch > bay
EV1 0:09-0:20 look/see
EV1 0:20-0:24 bay > porch
EV1 0:24-0:29 in
hatch 0:29-0:34`;

export const breaksDoNotRestartIt = defineRule({
  title: 'No break of a pre-breathe is longer than its rule allows',
  broken: 'A break restarts the pre-breathe',
  severity: 'warning',
  why: 'A short break is paid back with extra oxygen; after a longer one what was served before it does not count. Not medical advice: the flight surgeon decides.',
  source: '[B24]',
  *check(facts) {
    for (const { eva } of facts.evas) {
      const planned = facts.campaign.evas.find((candidate) => candidate.id === eva.eva);
      const protocol = facts.campaign.prebreathes.find((candidate) => candidate.id === planned?.prebreathe);
      if (protocol === undefined || protocol.breakRule === null) continue;
      for (const block of oxygenBlocks(protocol.stages, protocol.breakRule)) {
        if (block.restarts === 0) continue;
        yield {
          where: { eva: eva.eva, petS: 0, span: protocol.span },
          why: `${protocol.title}: a break longer than ${formatDuration(protocol.breakRule.longestBreakS)}; ${formatDuration(block.countsS)} of oxygen counts after it`,
          mend: 'shorten the break, or state the oxygen that the flight surgeon asks for after it',
        };
      }
    }
  },
  examples: { violates: { campaign: campaign(15), timeline }, satisfies: { campaign: campaign(5), timeline } },
});
