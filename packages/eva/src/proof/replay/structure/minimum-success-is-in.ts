import type { Finding } from '../../../finding/finding.ts';
import type { ReplayContext } from '../replay-context.ts';
import { noticed } from '../replay-finding.ts';

/** Each EVA that is flown carries the tasks that make it worth flying. */
export function minimumSuccessIsIn({ flown, tasks, timeline }: ReplayContext): Finding[] {
  return flown.flatMap(({ eva, plan }) =>
    eva.minimumSuccess
      .filter((task) => !plan.tasks.includes(task))
      .map((task) => {
        const reason = timeline.leftOut.find((one) => one.task === task)?.why;
        const elsewhere = timeline.evas.find((other) => other.tasks.includes(task))?.eva;
        return noticed('replay/minimum-success-is-in', {
          title: `EVA ${eva.id} is planned without "${tasks.get(task)?.title ?? task}", which its minimum success demands`,
          why:
            reason !== undefined
              ? `it is left out: ${reason}`
              : elsewhere !== undefined
                ? `it is planned in EVA ${elsewhere}`
                : 'it is planned nowhere',
          mend: 'make room for it, or agree on another minimum success',
          eva: eva.id,
          span: tasks.get(task)?.span ?? eva.span,
        });
      }),
  );
}
