/**
 * A published job shop read as an EVA: machines are people, jobs are tasks whose stints follow one another, everything at one
 * place. The least makespan is then the time at which everybody is in.
 */
import { describe, expect, it } from 'vitest';
import { firstEva, planChecked } from '../../properties/schedule/plan-checked.ts';
import {
  campaign,
  eva,
  hardwareModel,
  passages,
  person,
  rail,
  role,
  SPAN,
  stint,
  task,
} from '../../properties/schedule/small-campaign.ts';

/** H. Fisher, G. L. Thompson, Industrial Scheduling (1963), the 6 × 6 problem: machine and time of each operation, by job. */
const FT06 = [
  [
    [2, 1],
    [0, 3],
    [1, 6],
    [3, 7],
    [5, 3],
    [4, 6],
  ],
  [
    [1, 8],
    [2, 5],
    [4, 10],
    [5, 10],
    [0, 10],
    [3, 4],
  ],
  [
    [2, 5],
    [3, 4],
    [5, 8],
    [0, 9],
    [1, 1],
    [4, 7],
  ],
  [
    [1, 5],
    [0, 5],
    [2, 5],
    [3, 3],
    [4, 8],
    [5, 9],
  ],
  [
    [2, 9],
    [1, 3],
    [4, 5],
    [5, 4],
    [0, 3],
    [3, 1],
  ],
  [
    [1, 3],
    [3, 3],
    [5, 9],
    [0, 10],
    [4, 4],
    [2, 1],
  ],
] as const;
/** Least makespan, min. Same source; proved optimal many times since, first by J. Carlier and E. Pinson (1989) along with the 10 × 10. MEMORY */
const LEAST_MAKESPAN_MIN = 55;

describe('the 6 × 6 job shop of Fisher and Thompson', () => {
  it('has everybody in at its least makespan, proved', () => {
    const people = Array.from({ length: 6 }, (_, machine) => person(`M${machine}`));
    const tasks = FT06.map((operations, job) =>
      task(
        `j${job}`,
        job + 1,
        operations.map(([machine, minutes], i) =>
          stint(`j${job}/o${i}`, [minutes], [role('lead', [`M${machine}`], 'shop')], {
            after: i === 0 ? [] : [{ stint: `j${job}/o${i - 1}`, leastS: 0, mostS: null, span: SPAN }],
          }),
        ),
      ),
    );
    const ids = people.map(({ id }) => id);
    const c = campaign({
      people,
      evas: [eva('one', { ...passages(ids, 0), longestS: 6 * 3600 })],
      tasks,
      rails: [rail('shop', 'store', 5)],
    });
    const plan = firstEva(
      planChecked(
        c,
        hardwareModel(
          {},
          {},
          tasks.flatMap(({ stints }) => stints),
        ),
      ),
    );
    expect(plan.bothInS / 60).toBe(LEAST_MAKESPAN_MIN);
    expect(plan.claim.levels.find(({ name }) => name === 'finish')?.proved).toBe(true);
  });
});
