import { formatDuration } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (agreed: number): string => `
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay; minutes low=10 likely=14 high=20 agreed=${agreed} } }
`;
const timeline = (end: string): string => `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-${end} look/see
EV1 0:40-0:44 bay > porch
EV2 0:44-0:49 in
EV1 0:49-0:54 in
hatch 0:54-0:59`;

export const planningFigureIsNearItsEvidence = defineRule({
  title: 'The planning figure lies within what the evidence says',
  broken: 'A planning figure is far from its evidence',
  severity: 'warning',
  why: 'A figure below the 10th percentile is a wish, one above the 90th hides slack that the next plan will not have.',
  source: 'common practice',
  *check(facts) {
    for (const { eva } of facts.evas) {
      for (const planned of eva.stints) {
        const stint = facts.stints.get(planned.stint);
        const spread = stint?.duration.spread ?? null;
        if (stint === undefined || spread === null) continue;
        const { agreedS } = stint.duration;
        if (agreedS >= spread.lowS && agreedS <= spread.highS) continue;
        yield {
          where: { eva: eva.eva, stint: stint.key, petS: planned.startS, span: stint.duration.span },
          why: `agreed ${formatDuration(agreedS)}; evidence says ${formatDuration(spread.lowS)} to ${formatDuration(spread.highS)} (10th to 90th percentile)`,
          mend: 'review the figure, or add the samples it rests on',
        };
      }
    }
  },
  examples: {
    violates: { campaign: campaign(6), timeline: timeline('0:20') },
    satisfies: { campaign: campaign(15), timeline: timeline('0:29') },
  },
});
