import { formatDuration, formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = `
window night pad="30 s" shown-as=night source="example" { interval "2031-05-01T10:14:00Z" "2031-05-01T10:50:00Z" }
hardware plug kind=data-connector at=bay state=mated
task open rank=1 eva=day { stint pull who=EV1 at=bay { demate plug; mate plug; inside night part=whole } }
`;
const timeline = (when: string): string => `${OUT}EV1 0:10-0:14 porch > bay
EV1 ${when} open/pull
EV1 0:30-0:34 bay > porch
EV2 0:34-0:39 in
EV1 0:39-0:44 in
hatch 0:44-0:49`;

export const windowIsKept = defineRule({
  title: 'Work that may only be done in a window lies inside one, with its pad',
  broken: 'Work falls outside its window',
  severity: 'error',
  why: 'A connector of a solar wing carries current whenever the Sun is on it; a call needs coverage. The pad covers what the forecast may be wrong by.',
  source: 'common practice',
  *check(facts) {
    for (const { eva } of facts.evas) {
      for (const planned of eva.stints) {
        const stint = facts.stints.get(planned.stint);
        for (const use of stint?.windowUses ?? []) {
          const window = facts.campaign.windows.find((candidate) => candidate.id === use.window);
          if (window === undefined || use.prefers || stint === undefined) continue;
          const fromStep = use.part === 'steps' ? use.fromStep : 0;
          const toStep = use.part === 'steps' ? use.toStep : stint.steps.length;
          const startS = fromStep <= 0 ? planned.startS : (planned.stepEndsS[fromStep - 1] ?? planned.startS);
          const endS = use.part === 'start' ? startS : (planned.stepEndsS[toStep - 1] ?? planned.endS);
          const pad = use.mode === 'inside' ? window.padS : -window.padS;
          const intervals = window.intervals.map(
            ([from, to]) => [(from - eva.petZeroUtcMs) / 1000 + pad, (to - eva.petZeroUtcMs) / 1000 - pad] as const,
          );
          const inside = intervals.some(([from, to]) => from <= startS && endS <= to);
          const meets = intervals.find(([from, to]) => from < Math.max(endS, startS + 1) && startS < to);
          if (use.mode === 'inside' ? inside : meets === undefined) continue;
          const next = intervals.find(([from]) => from >= startS);
          yield {
            where: {
              eva: eva.eva,
              person: planned.assigned[0] ?? null,
              stint: planned.stint,
              petS: startS,
              span: use.span,
            },
            why: `PET ${formatPet(startS)} to ${formatPet(endS)} is ${use.mode === 'inside' ? 'not wholly inside' : 'not outside'} ${window.title} with a pad of ${formatDuration(window.padS)}${next === undefined ? '' : `; the next one is PET ${formatPet(next[0])} to ${formatPet(next[1])}`}`,
            mend:
              next === undefined
                ? 'move it into a window'
                : `start it at PET ${formatPet(Math.ceil(next[0] / 60) * 60)}`,
          };
        }
      }
    }
  },
  examples: {
    violates: { campaign, timeline: timeline('0:14-0:24') },
    satisfies: { campaign, timeline: timeline('0:15-0:25') },
  },
});
