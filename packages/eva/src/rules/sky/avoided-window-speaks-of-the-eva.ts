import { formatUtc } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (day: string): string => `
window firing "Thruster firing" source="example" { interval "2031-${day}T09:40:00Z" "2031-${day}T09:45:00Z" }
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay; outside firing part=whole } }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:22 look/see
EV1 0:22-0:26 bay > porch
EV2 0:26-0:31 in
EV1 0:31-0:36 in
hatch 0:36-0:41`;

/** Longer than any revolution of a low orbit: something that recurs would show within it. */
const NEAR_MS = 3 * 3_600_000;

export const avoidedWindowSpeaksOfTheEva = defineRule({
  title: 'A window that work must stay out of says something about the time of the EVA',
  broken: 'A window that work must stay out of says nothing about the time of this EVA',
  severity: 'warning',
  why: 'Staying outside is easily met when nobody wrote the intervals of that day. An empty list looks the same as a free day.',
  source: 'common practice',
  *check(facts) {
    for (const { eva } of facts.evas) {
      const from = eva.petZeroUtcMs - NEAR_MS;
      const to = eva.petZeroUtcMs + eva.bothInS * 1000 + NEAR_MS;
      const told = new Set<string>();
      for (const planned of eva.stints) {
        for (const use of facts.stints.get(planned.stint)?.windowUses ?? []) {
          const window = facts.campaign.windows.find((candidate) => candidate.id === use.window);
          if (use.mode !== 'outside' || window === undefined || told.has(window.id)) continue;
          // A computed window that was filled has been looked for over the whole EVA.
          if (window.computed?.filled === true || window.intervals.some(([a, b]) => a < to && b > from)) continue;
          told.add(window.id);
          yield {
            where: { eva: eva.eva, stint: planned.stint, petS: planned.startS, span: use.span },
            why: `${window.title} has no interval within 3 h of the EVA of ${formatUtc(eva.petZeroUtcMs)}`,
            mend: `write the intervals of that day into window ${window.id}, or say in its source that there are none`,
          };
        }
      }
    }
  },
  examples: {
    violates: { campaign: campaign('04-20'), timeline },
    satisfies: { campaign: campaign('05-01'), timeline },
  },
});
