import type { Finding } from '../../../finding/finding.ts';
import type { ReplayContext } from '../replay-context.ts';
import { noticed, oneOf } from '../replay-finding.ts';

/** Tasks go whole: every stint of a planned task once, in one EVA that it may fall in; every task is planned or left out. */
export function tasksAreWhole(context: ReplayContext): Finding[] {
  return [...stintsOnce(context), ...evasOnce(context), ...tasksInOneEva(context), ...everyTaskTold(context)];
}

function stintsOnce({ campaign, timeline }: ReplayContext): Finding[] {
  const findings: Finding[] = [];
  for (const plan of timeline.evas) {
    const counts = new Map<string, number>();
    for (const planned of plan.stints) counts.set(planned.stint, (counts.get(planned.stint) ?? 0) + 1);
    for (const task of campaign.tasks) {
      const planned = plan.tasks.includes(task.id);
      for (const stint of task.stints) {
        const count = counts.get(stint.key) ?? 0;
        if (count === (planned ? 1 : 0)) continue;
        findings.push(
          noticed('replay/every-stint-once', {
            title: planned
              ? count === 0
                ? `"${stint.title}" is missing from the plan`
                : `"${stint.title}" is planned ${count} times`
              : `"${stint.title}" is planned, but its task is not`,
            why: planned
              ? `task ${task.id} is planned in EVA ${plan.eva} and goes whole: each of its ${task.stints.length} stints once`
              : `EVA ${plan.eva} does not list task ${task.id} among its tasks`,
            mend: planned ? 'plan the whole task, or leave it out' : `list task ${task.id}, or take the stint out`,
            eva: plan.eva,
            stint: stint.key,
            petS: plan.stints.find((one) => one.stint === stint.key)?.startS ?? null,
            span: stint.span,
          }),
        );
      }
    }
  }
  return findings;
}

function evasOnce({ timeline }: ReplayContext): Finding[] {
  return timeline.evas
    .filter((plan, at) => timeline.evas.findIndex((other) => other.eva === plan.eva) !== at)
    .map((plan) =>
      noticed('replay/every-eva-once', {
        title: `EVA ${plan.eva} is in the timeline twice`,
        why: 'an EVA is flown once',
        eva: plan.eva,
      }),
    );
}

function tasksInOneEva({ tasks, timeline }: ReplayContext): Finding[] {
  const findings: Finding[] = [];
  const firstIn = new Map<string, string>();
  for (const plan of timeline.evas) {
    for (const id of plan.tasks) {
      const task = tasks.get(id);
      if (task === undefined) continue;
      const where = { eva: plan.eva, span: task.span };
      if (!task.evas.includes(plan.eva)) {
        findings.push(
          noticed('replay/task-is-in-an-eva-it-may-fall-in', {
            ...where,
            title: `"${task.title}" is planned in EVA ${plan.eva}, where it may not fall`,
            why: `it may fall in ${oneOf(task.evas)}`,
            mend: `move it, or write eva=${plan.eva} on the task`,
          }),
        );
      }
      const before = firstIn.get(id);
      if (before === undefined) firstIn.set(id, plan.eva);
      else {
        findings.push(
          noticed('replay/task-is-in-one-eva', {
            ...where,
            title: `"${task.title}" is planned twice`,
            why: `in EVA ${before} and in EVA ${plan.eva}; a task goes whole, once`,
          }),
        );
      }
    }
  }
  return findings;
}

function everyTaskTold({ campaign, timeline }: ReplayContext): Finding[] {
  const findings: Finding[] = [];
  for (const task of campaign.tasks) {
    const planned = timeline.evas.find((plan) => plan.tasks.includes(task.id));
    const left = timeline.leftOut.some((one) => one.task === task.id);
    if ((planned !== undefined) !== left) continue;
    // In a timeline of only some EVAs the task may be in one of the others.
    if (!left && task.evas.some((id) => !timeline.evas.some((plan) => plan.eva === id))) continue;
    findings.push(
      noticed('replay/every-task-is-planned-or-left-out', {
        title: left
          ? `"${task.title}" is both planned and said to be left out`
          : `"${task.title}" is neither planned nor said to be left out`,
        why: 'a plan accounts for every task of the campaign',
        mend: left ? 'take it off the left-out list' : 'plan it, or list it as left out with the reason',
        eva: planned?.eva ?? null,
        span: task.span,
      }),
    );
  }
  return findings;
}
