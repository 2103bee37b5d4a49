/**
 * The cheapest ways out of a collision: for each requirement in it that has a figure, the least figure with which a plan exists
 * again; for each that has none, whether doing without it is enough; and who else could take a stint. Found by changing the
 * campaign and asking the engine again, so every way that is named has a plan behind it.
 */
import { formatDuration } from '@handrail/quantity/time';
import type { Campaign, Task } from '../campaign/campaign.ts';
import { evaModel } from './eva-model.ts';
import { evaProblem, type ProblemInput } from './eva-problem.ts';
import { type CollisionOptions, isFeasible } from './find-collision.ts';

/** Figures are found to the minute. */
const STEP_S = 60;
/** No limit is stretched to more than this. */
const MOST_S = 24 * 3600;

/** At most `most` ways, in words; none found is an empty list. */
export function waysOut(
  input: ProblemInput,
  task: Task,
  tags: readonly string[],
  options: CollisionOptions,
  most = 4,
): readonly string[] {
  const plansWith = (changed: ProblemInput): boolean => {
    if (options.shouldStop?.() === true) return false;
    const built = evaModel(evaProblem(changed));
    return !built.screened.reasons.has(task.id) && isFeasible(built.model, options);
  };
  const withCampaign = (change: (campaign: Campaign) => Campaign): ProblemInput => ({
    ...input,
    campaign: change(input.campaign),
  });
  const ways: string[] = [];
  for (const tag of tags) {
    if (ways.length >= most) break;
    const [kind, name] = split(tag);
    const way = wayFor(kind, name, input.campaign, withCampaign, plansWith);
    if (way !== null) ways.push(way);
  }
  if (ways.length < most) {
    const way = otherPerson(input, task, plansWith);
    if (way !== null) ways.push(way);
  }
  return ways;
}

function split(tag: string): readonly [string, string] {
  const at = tag.indexOf(':');
  return at < 0 ? [tag, ''] : [tag.slice(0, at), tag.slice(at + 1)];
}

function wayFor(
  kind: string,
  name: string,
  campaign: Campaign,
  withCampaign: (change: (campaign: Campaign) => Campaign) => ProblemInput,
  plansWith: (changed: ProblemInput) => boolean,
): string | null {
  if (kind === 'clock') {
    const clock = campaign.clocks.find(({ id }) => id === name);
    if (clock === undefined || clock.sense !== 'most') return null;
    const limitS = leastThatPlans(clock.limitS, (s) =>
      plansWith(
        withCampaign((c) => ({
          ...c,
          clocks: c.clocks.map((other) => (other.id === name ? { ...other, limitS: s } : other)),
        })),
      ),
    );
    return limitS === null
      ? null
      : `the clock "${clock.title}" at ${formatDuration(limitS)} instead of ${formatDuration(clock.limitS)}`;
  }
  if (kind === 'request') {
    const request = campaign.requests.find(({ id }) => id === name);
    if (request === undefined || request.longestHoldS === null) return null;
    const longestS = leastThatPlans(request.longestHoldS, (s) =>
      plansWith(
        withCampaign((c) => ({
          ...c,
          requests: c.requests.map((other) => (other.id === name ? { ...other, longestHoldS: s } : other)),
        })),
      ),
    );
    return longestS === null
      ? null
      : `the request "${request.title}" held for ${formatDuration(longestS)} instead of ${formatDuration(request.longestHoldS)}`;
  }
  if (kind === 'pin') {
    const freed = withCampaign((c) => ({ ...c, pins: [] }));
    return plansWith({ ...freed, pins: [] }) ? 'without the pins' : null;
  }
  if (kind === 'window') {
    const [window = '', stint = ''] = name.split(' ');
    const title = campaign.windows.find(({ id }) => id === window)?.title ?? window;
    const freed = withCampaign((c) => ({ ...c, windows: c.windows.filter(({ id }) => id !== window) }));
    const tasks = freed.tasks.map((other) => ({
      ...other,
      stints: other.stints.map((candidate) => ({
        ...candidate,
        windowUses: candidate.windowUses.filter((use) => use.window !== window),
      })),
    }));
    return plansWith({ ...freed, tasks }) ? `${stint} outside the window "${title}"` : null;
  }
  return null;
}

/** The least figure above `stated` with which there is a plan: doubled until there is, then halved down to the minute. */
function leastThatPlans(stated: number, plans: (s: number) => boolean): number | null {
  let low = stated;
  let high = stated + STEP_S;
  while (!plans(high)) {
    low = high;
    high = stated + (high - stated) * 2;
    if (high > MOST_S) return null;
  }
  while (high - low > STEP_S) {
    const middle = low + Math.ceil((high - low) / 2 / STEP_S) * STEP_S;
    if (middle >= high) break;
    if (plans(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** The first stint of the task that another person outside could do instead, if that is enough. */
function otherPerson(input: ProblemInput, task: Task, plansWith: (changed: ProblemInput) => boolean): string | null {
  const outside = input.campaign.people.filter(({ role }) => role === 'outside').map(({ id }) => id);
  for (const stint of task.stints) {
    const [lead] = stint.roles;
    if (lead === undefined || lead.name === 'arm' || lead.candidates.length !== 1) continue;
    for (const other of outside.filter((id) => !stint.roles.some((role) => role.candidates.includes(id)))) {
      const roles = stint.roles.map((role, index) => (index === 0 ? { ...role, candidates: [other] } : role));
      const tasks = input.tasks.map((candidate) =>
        candidate.id === task.id
          ? { ...candidate, stints: candidate.stints.map((one) => (one.key === stint.key ? { ...one, roles } : one)) }
          : candidate,
      );
      if (plansWith({ ...input, tasks })) return `"${stint.title}" by ${other} instead of ${lead.candidates[0]}`;
    }
  }
  return null;
}
