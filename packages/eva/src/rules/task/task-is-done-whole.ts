import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = `
task look rank=1 eva=day {
    stint see who=EV1 at=bay { inspect bay }
    stint clean-up who=EV1 at=bay { tidy bay }
}
`;
const timeline = (second: string): string => `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:20 look/see
${second}
EV1 0:30-0:34 bay > porch
EV2 0:34-0:39 in
EV1 0:39-0:44 in
hatch 0:44-0:49`;

export const taskIsDoneWhole = defineRule({
  title: 'A task is planned whole in one EVA, its clean-up counted',
  broken: 'A task is planned in part',
  severity: 'error',
  why: 'A task is trained and reviewed as a package; the part that is left off is usually the clean-up.',
  source: 'common practice',
  *check(facts) {
    const where = new Map<string, string[]>();
    for (const { eva } of facts.evas)
      for (const planned of eva.stints) where.set(planned.stint, [...(where.get(planned.stint) ?? []), eva.eva]);
    for (const { eva } of facts.evas) {
      for (const taskId of eva.tasks) {
        const task = facts.campaign.tasks.find((candidate) => candidate.id === taskId);
        if (task === undefined) continue;
        const missing = task.stints.filter((stint) => !(where.get(stint.key) ?? []).includes(eva.eva));
        if (missing.length === 0) continue;
        yield {
          where: { eva: eva.eva, stint: missing[0]?.key ?? null, span: task.span },
          why: `"${task.title}" is planned without ${missing.map((stint) => `"${stint.title}"`).join(', ')}`,
          mend: 'plan the whole task, or take it out',
        };
      }
    }
  },
  examples: {
    violates: { campaign, timeline: timeline('# nothing') },
    satisfies: { campaign, timeline: timeline('EV1 0:20-0:26 look/clean-up') },
  },
});
