import type { Campaign } from '@handrail/eva/campaign/campaign';
import styles from './ranked-list.module.css';

/** What somebody wants done, and how much of it the plan in hand reaches. */
export function Objectives({
  campaign,
  planned,
}: {
  readonly campaign: Campaign;
  readonly planned: ReadonlySet<string>;
}) {
  if (campaign.objectives.length === 0) return null;
  return (
    <>
      <h2>Objectives</h2>
      <ol>
        {campaign.objectives
          .toSorted((a, b) => a.rank - b.rank)
          .map((objective) => {
            const reached = objective.tasks.filter((task) => planned.has(task)).length;
            const milestones = objective.milestones.filter(({ tasks }) => tasks.every((task) => planned.has(task)));
            const event = campaign.events.find(({ id }) => id === objective.neededBy);
            return (
              <li key={objective.id} className={styles.objective}>
                <span className={styles.rank}>{objective.rank}</span>
                <span>{objective.title}</span>
                <span className={styles.where} data-whole={String(reached === objective.tasks.length)}>
                  {reached === objective.tasks.length
                    ? 'whole'
                    : reached === 0
                      ? 'not planned'
                      : `${reached} of ${objective.tasks.length}`}
                </span>
                {event === undefined && objective.milestones.length === 0 ? null : (
                  <span className={styles.why}>
                    {objective.milestones.length === 0
                      ? ''
                      : `${milestones.length} of ${objective.milestones.length} milestones. `}
                    {event === undefined ? '' : `${event.title} waits for it.`}
                  </span>
                )}
              </li>
            );
          })}
      </ol>
    </>
  );
}
