/** What planning itself can report, for `explain`: the id of its findings, what must hold, and why. */
export const PLAN_CHECKS: readonly { readonly id: string; readonly title: string; readonly why: string }[] = [
  {
    id: 'schedule/wall-is-stated',
    title: 'It is stated by when both must be in',
    why: 'Without the longest EVA or a suit limit no plan can be called in time.',
  },
  {
    id: 'schedule/a-plan-exists',
    title: 'There is a plan for each EVA',
    why: 'When none exists the passages and what is pinned do not fit; when none was found yet, the search was stopped first.',
  },
  {
    id: 'schedule/minimum-success-is-in',
    title: 'Each EVA carries the tasks of its minimum success',
    why: 'That is what the EVA is flown for; without it the EVA is not worth its risk.',
  },
  {
    id: 'schedule/ranked-work-is-in',
    title: 'Ranked work is planned, or it is said why not',
    why: 'Whoever wanted it learns what it collides with, and what would have to give.',
  },
  {
    id: 'schedule/optimum-is-proved',
    title: 'A plan called optimal has a proof that a second program accepts',
    why: 'The engine is not believed on its word: without an accepted proof the plan is only the best found.',
  },
];
