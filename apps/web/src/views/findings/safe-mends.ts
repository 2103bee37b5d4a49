/** Mends that cannot make anything worse than it is said to be: they touch the plan only, in one step, and the replay judges them. */
import type { Finding } from '@handrail/eva/finding/finding';
import { layLanes } from '@handrail/eva/timeline/edit/lay-lanes';
import { moveStint } from '@handrail/eva/timeline/edit/move-stint';
import { editPlan } from '../../actions/stint-actions.ts';
import { documentStore } from '../../document/document-store.ts';

export interface SafeMend {
  readonly title: string;
  readonly run: () => void;
}

/** Findings that come of ways which no longer fit the stints between them. */
const OF_WAYS = /^replay\/(people-are|moves-|path-|each-piece|rails-|tether|walks)/;
const OF_OVERLAP = /^replay\/(one-thing|nobody-does-two)/;

export function safeMend(finding: Finding): SafeMend | null {
  const { eva, stint } = finding.where;
  if (eva === null) return null;
  if (OF_WAYS.test(finding.rule)) {
    return {
      title: 'Lay the ways anew',
      run: () =>
        editPlan('Lay the ways anew', (ground, timeline) => {
          const outside = new Set(ground.campaign.people.filter(({ role }) => role === 'outside').map(({ id }) => id));
          return {
            ...timeline,
            evas: timeline.evas.map((one) => (one.eva === eva ? layLanes(ground, one, one, outside) : one)),
          };
        }),
    };
  }
  if (OF_OVERLAP.test(finding.rule) && stint !== null) {
    const planned = documentStore
      .getState()
      .copy.timeline?.evas.flatMap(({ stints }) => stints)
      .find((one) => one.stint === stint);
    if (planned === undefined) return null;
    return {
      title: 'Start it when the one before ends, and push what follows',
      run: () =>
        editPlan('Start a stint after the one before', (ground, timeline) => {
          const stints = timeline.evas.find((one) => one.eva === eva)?.stints ?? [];
          const ends = stints
            .filter(
              (one) =>
                one.stint !== stint &&
                one.startS <= planned.startS &&
                one.assigned.some((who) => planned.assigned.includes(who)),
            )
            .map(({ endS }) => endS);
          return moveStint({ stint, startS: Math.max(planned.startS, ...ends), pushesLater: true })(ground, timeline);
        }),
    };
  }
  return null;
}
