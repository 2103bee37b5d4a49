import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (source: string): string => `
window night "Eclipse" pad="30 s" shown-as=night ${source} { interval "2031-05-01T10:00:00Z" "2031-05-01T10:50:00Z" }
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay } }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:22 look/see
EV1 0:22-0:26 bay > porch
EV2 0:26-0:31 in
EV1 0:31-0:36 in
hatch 0:36-0:41`;

export const windowsComeFromASource = defineRule({
  title: 'Every window says where its times come from',
  broken: 'A window does not say where its times come from',
  severity: 'warning',
  why: 'Night, coverage and granted times change with the orbit and with other plans. Times without a source cannot be checked again, and nobody knows when they went stale.',
  source: 'common practice',
  *check(facts) {
    for (const window of facts.campaign.windows) {
      if (window.computed !== undefined && !window.computed.filled) {
        yield {
          severity: 'unknown',
          where: { span: window.span },
          why: `${window.title} is to be computed and the engines have not run, so it says nothing`,
        };
      } else if (window.source === null) {
        yield {
          where: { span: window.span },
          why: `${window.title} has ${window.intervals.length} ${window.intervals.length === 1 ? 'interval' : 'intervals'} and no source`,
          mend: `write source="…" on window ${window.id}, or computed= with an orbit`,
        };
      }
    }
  },
  examples: {
    violates: { campaign: campaign(''), timeline },
    satisfies: { campaign: campaign('source="flight dynamics, 2031-04-30"'), timeline },
  },
});
