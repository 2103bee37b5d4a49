/** One EVA as a model: tasks that can be manned, and everything the campaign asks of them. */
import type { Model } from '@handrail/solver/model/model';
import { EvaDraft } from './eva-draft.ts';
import type { EvaProblem } from './eva-problem.ts';
import { postAcrossEvas } from './post/post-across-evas.ts';
import { postArmLanes } from './post/post-arm-lanes.ts';
import { postClocks } from './post/post-clocks.ts';
import { postHatch } from './post/post-hatch.ts';
import { postObjectives } from './post/post-objectives.ts';
import { postOrders } from './post/post-orders.ts';
import { postPast } from './post/post-past.ts';
import { postPersonLanes } from './post/post-person-lanes.ts';
import { postRequests } from './post/post-requests.ts';
import { postShared } from './post/post-shared.ts';
import { postStates } from './post/post-states.ts';
import { postTeamLoad } from './post/post-team-load.ts';
import { postWindows } from './post/post-windows.ts';
import { screenTasks, type Screened } from './screen-tasks.ts';

export interface EvaModel {
  readonly problem: EvaProblem;
  readonly model: Model;
  readonly draft: EvaDraft;
  /** Tasks that cannot be planned here whatever the order, and why. */
  readonly screened: Screened;
}

export function evaModel(problem: EvaProblem): EvaModel {
  const screened = screenTasks(problem);
  const draft = new EvaDraft(problem);
  for (const task of problem.tasks) {
    if (!screened.reasons.has(task.id)) draft.addTask(task, screened.modes);
  }
  postHatch(draft);
  postPersonLanes(draft);
  postArmLanes(draft);
  postOrders(draft);
  postAcrossEvas(draft);
  postRequests(draft);
  // Before the states: clocks add needs to them.
  postClocks(draft);
  postStates(draft);
  postWindows(draft);
  postShared(draft);
  postTeamLoad(draft);
  for (const [id, presence] of draft.tasks) {
    if (problem.forced.has(id)) draft.builder.post({ kind: 'clause', literals: [presence], tag: `in:${id}` });
  }
  postPast(draft);
  postObjectives(draft);
  return { problem, model: draft.builder.build(), draft, screened };
}
