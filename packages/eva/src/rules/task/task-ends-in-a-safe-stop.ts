import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (last: string): string => `
hardware line kind=cable at=bay state=stowed { state retainer none }
task lay-it rank=1 eva=day {
    stint lay-out who=EV1 at=bay { lay line${last} }
}
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:30 lay-it/lay-out
EV1 0:30-0:34 bay > porch
EV2 0:34-0:39 in
EV1 0:39-0:44 in
hatch 0:44-0:49`;

export const taskEndsInASafeStop = defineRule({
  title: 'When a task ends, what it touched may be left as it is',
  broken: 'A task ends with something that may not be left so',
  severity: 'warning',
  why: 'Tasks move between EVAs whole and any of them may be the last that is done. Each has to end in a state that can be left.',
  source: 'common practice',
  *check(facts) {
    for (const { eva, writes, valueAt } of facts.evas) {
      for (const taskId of eva.tasks) {
        const task = facts.campaign.tasks.find((candidate) => candidate.id === taskId);
        const ends = eva.stints
          .filter((planned) => facts.stints.get(planned.stint)?.task === taskId)
          .map((planned) => planned.endS);
        if (task === undefined || ends.length === 0) continue;
        const endS = Math.max(...ends);
        const own = new Set(
          writes.filter((write) => facts.stints.get(write.by)?.task === taskId).map((write) => write.variable),
        );
        const open: string[] = [];
        for (const variable of own) {
          const state = facts.hardware.variables.get(variable);
          const kind =
            state === undefined ? undefined : facts.library.kinds.get(facts.pieces.get(state.of)?.kind ?? '');
          const aspect =
            state === undefined
              ? undefined
              : kind?.aspects.find((candidate, index) =>
                  index === 0 ? variable === state.of : variable === `${state.of}.${candidate.id}`,
                );
          const value = valueAt(variable, endS);
          if (aspect?.safe[value] === 'never' && !valueAt(`${state?.of ?? ''}.holder`, endS).startsWith('person:'))
            open.push(`${variable} ${value}`);
        }
        if (open.length === 0) continue;
        yield {
          where: { eva: eva.eva, petS: endS, span: task.span },
          why: `"${task.title}" ends with ${open.join(', ')}, which may not be left so`,
          mend: 'put the closing steps into the same task',
        };
      }
    }
  },
  examples: {
    violates: { campaign: campaign(''), timeline },
    satisfies: { campaign: campaign('; gather line'), timeline },
  },
});
