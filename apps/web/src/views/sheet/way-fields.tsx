/** How the people of the stint come to it: straight, or by a place that a hand puts in between. */
import type { Campaign, Stint } from '@handrail/eva/campaign/campaign';
import { insertMove } from '@handrail/eva/timeline/edit/insert-move';
import type { EvaTimeline, PlannedStint } from '@handrail/eva/timeline/timeline';
import { editPlan } from '../../actions/stint-actions.ts';
import { tell } from '../../session/session-store.ts';
import styles from './sheet.module.css';

interface WayFieldsProps {
  readonly campaign: Campaign;
  readonly stint: Stint;
  readonly eva: EvaTimeline;
  readonly planned: PlannedStint;
}

export function WayFields({ campaign, stint, eva, planned }: WayFieldsProps) {
  const people = planned.assigned.filter((who) =>
    campaign.people.some(({ id, role }) => id === who && role === 'outside'),
  );
  if (campaign.vehicle.hatch === null) return null;
  return (
    <div className={styles.fields}>
      {people.map((person) => (
        <label key={person}>
          {person} comes
          <select
            value={placeBetween(eva, planned, person) ?? ''}
            onChange={(event) => {
              const by = event.target.value === '' ? null : event.target.value;
              editPlan(`Way to ${stint.title}`, insertMove({ stint: stint.key, person, by }));
              tell(
                by === null
                  ? `${person} comes straight to ${stint.title}`
                  : `${person} comes to ${stint.title} by way of ${by}`,
              );
            }}
          >
            <option value="">straight</option>
            {campaign.vehicle.places
              .filter(({ keepOut }) => !keepOut)
              .map(({ id, title }) => (
                <option key={id} value={id}>
                  by {title}
                </option>
              ))}
          </select>
        </label>
      ))}
    </div>
  );
}

/** The place in between of the last two moves before the stint; null: one move, or none. */
function placeBetween(eva: EvaTimeline, planned: PlannedStint, person: string): string | null {
  const since = Math.max(
    0,
    ...eva.stints
      .filter(
        ({ stint, endS, assigned }) => stint !== planned.stint && assigned.includes(person) && endS <= planned.startS,
      )
      .map(({ endS }) => endS),
  );
  const moves = eva.moves.filter(
    ({ who, startS, endS }) => who === person && startS >= since && endS <= planned.startS,
  );
  return moves.length > 1 ? (moves[0]?.to ?? null) : null;
}
