/**
 * The way home from a state: a found joint plan until both are on vehicle supplies with the hatch closed.
 *
 * terminate: everything that the horizon demands is closed, what is in hand is put away, tools come along. abort: only what may
 * never be left is closed; what is tethered stays tethered. assist: one person cannot move (see assist-plan.ts).
 *
 * The plan is the least over all assignments of the closing jobs, their orders and both orders at the hatch (joint-plan.ts), for
 * these times and with the quickest closing verbs of each kind; `shortest` says whether that was proved or only an upper bound
 * found. With high times (step-time.ts) its length is what the margins call W.
 */
import type { Eva } from '../campaign/campaign.ts';
import { type ClosingWork, closingJobs, type Job } from './closing-jobs.ts';
import type { Horizon } from './horizon.ts';
import { type Chain, jointPlan, type JointPlan, type Walker } from './joint-plan.ts';
import { assistPlan } from './assist-plan.ts';
import { type SafeUntil, safeUntil, type WayHomeGround } from './safe-until.ts';
import { putSeconds, putWords } from './put-away.ts';
import { type Basis, stepAssumption, travelAssumption, travelFactor } from './step-time.ts';
import {
  blockedWords,
  type PersonWay,
  type PlanStep,
  sumInWords,
  type TravelOf,
  type WayHome,
} from './way-home-plan.ts';
import type { PersonNow, RunningClock, WayHomeCase, WayHomeState } from './way-home-state.ts';

/**
 * The way home that holds nine times in ten: with the 90th percentiles where at most one person has anything to do whose time is
 * drawn, with the 95th of both where two have.
 * @param stateAt the state with the times of a basis in it
 */
export function wayHomeInNineOfTen(
  ground: WayHomeGround,
  stateAt: (basis: Basis) => WayHomeState,
  what: Omit<WayHomeCase, 'basis'>,
  travelOf: TravelOf,
  horizon: Horizon = 'tonight',
): WayHome {
  const alone = wayHome(ground, stateAt('high'), { ...what, basis: 'high' }, travelOf, horizon);
  if (!isDrawnTwice(alone)) return alone;
  return wayHome(ground, stateAt('high-of-two'), { ...what, basis: 'high-of-two' }, travelOf, horizon);
}

/**
 * Whether two people each do something whose time is a percentile: ways and passages count at the slowest that is stated. In assist
 * there is one pair of hands.
 */
export function isDrawnTwice({ mode, people }: WayHome): boolean {
  if (mode === 'assist') return false;
  const drawn = people.filter(({ steps }) => steps.some(({ kind }) => DRAWN.has(kind)));
  return drawn.length > 1;
}

const DRAWN: ReadonlySet<PlanStep['kind']> = new Set(['put', 'close', 'leave', 'help']);

export function wayHome(
  ground: WayHomeGround,
  state: WayHomeState,
  what: WayHomeCase,
  travelOf: TravelOf,
  horizon: Horizon = 'tonight',
  work: ClosingWork = closingWork(ground, state, what, horizon),
): WayHome {
  const eva = ground.campaign.evas.find((candidate) => candidate.id === state.eva);
  const hatch = ground.campaign.vehicle.hatch;
  const closeHatchS = (eva?.closeHatchS ?? 0) * travelFactor(ground.campaign, what.basis);
  const base = {
    ...what,
    horizon,
    people: [],
    towS: null,
    closeHatchS,
    shortest: false,
    jobs: [],
    assumptions: [
      stepAssumption(what.basis),
      travelAssumption(ground.campaign, what.basis),
      ...hatchAssumptions(eva, state),
    ],
  };
  const none = (unknown: readonly string[], blocked: WayHome['blocked']): WayHome => ({
    ...base,
    totalS: null,
    words: [...unknown.map((words) => `unknown here: ${words}`), ...blocked.map(blockedWords)].join('; '),
    unknown,
    blocked,
  });
  if (eva === undefined || hatch === null) return none(['no places are given, so no way can be told'], []);
  if (what.mode === 'assist') return assistPlan(ground, state, what, travelOf, horizon, eva, hatch);
  const stuck = state.people
    .filter((person) => person.starts.length === 0)
    .map(({ person, stuck: why }) => ({
      words: `${person}: ${why ?? 'no way'}`,
      by: [person],
      cause: 'arm' as const,
      leftS: null,
    }));
  const saidSafe = new Set(state.said.filter((one) => one.safeStop).map((one) => one.stint));
  const jobs = work.jobs.filter((job) => !(job.openedBy.length > 0 && job.openedBy.every((by) => saidSafe.has(by))));
  const blocked: WayHome['blocked'] = [
    ...stuck,
    ...work.unreachable
      .filter(({ by }) => !(by.length > 0 && by.every((one) => saidSafe.has(one))))
      .map(({ words, by, clock }) => ({
        words,
        by,
        cause: clock ? ('clock' as const) : ('piece' as const),
        leftS: null,
      })),
    ...(what.mode === 'terminate'
      ? state.said
          .filter((one) => !one.safeStop)
          .map(({ stint }) => ({
            words: `${stint}: the text says that this step does not end in a safe stop`,
            by: [stint],
            cause: 'said' as const,
            leftS: null,
          }))
      : []),
  ];
  if (work.unknown.length > 0 || blocked.length > 0) return none(work.unknown, blocked);
  const walkers = state.people.map((person) => walkerOf(ground, person, what, travelOf, eva));
  const placed = jobs.filter((job) => job.place !== null);
  const inHand = jobs.filter((job) => job.place === null);
  const own = walkers.map((walker) => inHand.filter((job) => job.by.includes(walker.person)));
  const ready = walkers.map((walker, index) => ({
    ...walker,
    firstS: walker.firstS + (own[index] ?? []).reduce((sum, job) => sum + job.durationS * walker.pace, 0),
  }));
  const passages = ready.map(({ passageS }) => passageS);
  const along = (plan: JointPlan): WayHome => {
    const people = ready.map((walker, index) =>
      wayOf(ground, walker, plan, index, own[index] ?? [], what, hatch, passages),
    );
    const words = sumInWords(people, plan.order, closeHatchS, plan.bothInS);
    return { ...base, totalS: plan.bothInS, words, people, shortest: plan.proved, jobs, unknown: [], blocked: [] };
  };
  const plan = jointPlan(ready, placed, hatch, closeHatchS);
  if (plan === null) {
    return none(
      [],
      [
        {
          words: 'no way leads from here to the hatch, or to what must be closed',
          by: state.people.map(({ person }) => person),
          cause: 'way',
          leftS: null,
        },
      ],
    );
  }
  const way = along(plan);
  const missed = missedClocks(way, state.clocks);
  if (missed.length === 0) return way;
  // The shortest is too late for a clock: another order may not be.
  const hurried = jointPlan(
    ready,
    placed.map((job) => ({ ...job, deadlineS: deadlineOf(job, state.clocks) })),
    hatch,
    closeHatchS,
  );
  const inTime = hurried === null ? null : along(hurried);
  return inTime === null || missedClocks(inTime, state.clocks).length > 0 ? none([], missed) : inTime;
}

/** Clocks that run out before this way home stops them. */
export function missedClocks({ jobs, people }: WayHome, clocks: readonly RunningClock[]): WayHome['blocked'] {
  return jobs.flatMap((job) =>
    clocks
      .filter((running) => job.clocks.includes(running.clock.id) && endOf(people, job) > running.leftS)
      .map(({ clock, leftS }) => ({
        words: `${clock.title} runs out before ${job.words} can be done`,
        by: job.openedBy,
        cause: 'clock' as const,
        leftS,
      })),
  );
}

function deadlineOf(job: Job, clocks: readonly RunningClock[]): number {
  const stopped = clocks.filter(({ clock }) => job.clocks.includes(clock.id));
  return Math.min(Number.POSITIVE_INFINITY, ...stopped.map(({ leftS }) => leftS));
}

/** What the sum takes for the hatch, and what of it nobody has stated. */
function hatchAssumptions(eva: Eva | undefined, state: WayHomeState): readonly string[] {
  const missing = state.people
    .map(({ person }) => person)
    .filter((person) => !eva?.ingress.some((one) => one.person === person));
  return [
    ...missing.map((person) => `no time through the hatch is stated for ${person}: none is counted`),
    ...(eva?.closeHatchS === 0 ? ['no time to close the hatch is stated: none is counted'] : []),
  ];
}

/** What must be closed in this state; nothing in assist. */
export function closingWork(
  ground: WayHomeGround,
  state: WayHomeState,
  what: WayHomeCase,
  horizon: Horizon,
  found: SafeUntil | null = null,
): ClosingWork {
  if (what.mode === 'assist') return { jobs: [], unreachable: [], unknown: [] };
  const safe = found ?? safeUntil(ground, state, horizon);
  return closingJobs(ground, state, safe, horizon, what.mode, what.basis);
}

function walkerOf(
  ground: WayHomeGround,
  now: PersonNow,
  what: WayHomeCase,
  travelOf: TravelOf,
  eva: { readonly ingress: readonly { readonly person: string; readonly durationS: number }[] },
): Walker & { readonly loads: readonly string[] } {
  const pace = ground.campaign.people.find((person) => person.id === now.person)?.pace ?? 1;
  const table = travelOf(now.person);
  const factor = travelFactor(ground.campaign, what.basis);
  const passageS = eva.ingress.find((passage) => passage.person === now.person)?.durationS ?? 0;
  return {
    person: now.person,
    pace,
    starts: now.starts,
    firstS: now.loads.reduce((sum, id) => sum + putSeconds(ground, id, pace, what), 0),
    travelS: (from, to) => {
      const seconds = table.secondsBetween(from, to, null, pace);
      return seconds === null ? null : seconds * factor;
    },
    passageS: (now.passageLeftS ?? passageS) * factor,
    inHatch: now.inHatch,
    loads: now.loads,
  };
}

function wayOf(
  ground: WayHomeGround,
  walker: Walker & { readonly loads: readonly string[] },
  plan: JointPlan,
  index: number,
  inHand: readonly Job[],
  what: WayHomeCase,
  hatch: string,
  passages: readonly number[],
): PersonWay {
  const chain = plan.chains[index] as Chain;
  const { start } = chain;
  const steps: PlanStep[] = [];
  const closedS = new Map<string, number>();
  let nowS = 0;
  let at = start.place;
  const add = (kind: PlanStep['kind'], lengthS: number, words: string, to = at): void => {
    if (lengthS > 0) steps.push({ kind, startS: nowS, endS: nowS + lengthS, words, from: at, to });
    nowS += lengthS;
    at = to;
  };
  add('go', start.delayS, start.delayWords ?? 'go on');
  for (const id of walker.loads) {
    add('put', putSeconds(ground, id, walker.pace, what), putWords(ground, id));
  }
  const close = (job: Job): void => {
    add('close', job.durationS * walker.pace, job.words);
    for (const piece of job.pieces) closedS.set(piece, nowS);
  };
  for (const job of inHand) close(job);
  let left = false;
  const goTo = (to: string, isHatch: boolean): void => {
    if (!isHatch && to === at) return;
    if (!left) {
      add('leave', start.leaveS, start.leaveWords ?? 'let go', start.exit);
      at = start.exit;
    }
    left = true;
    add('travel', walker.travelS(at, to) ?? 0, `${at} to ${to}`, to);
  };
  for (const job of chain.jobs) {
    goTo(job.place ?? at, false);
    if (job.releaseS > nowS) add('wait', job.releaseS - nowS, 'wait until the request is set and verified');
    close(job);
  }
  goTo(hatch, true);
  const atHatchS = nowS;
  const turn = plan.order.indexOf(index);
  const first = plan.order[0];
  const freeS =
    turn === 0 || first === undefined
      ? 0
      : (plan.chains[first]?.atHatchS ?? 0) + (plan.chains[first] === undefined ? 0 : (passages[first] ?? 0));
  if (freeS > nowS) add('wait', freeS - nowS, 'wait for the hatch');
  add('hatch', walker.passageS, 'in through the hatch');
  return { person: walker.person, steps, atHatchS, inS: nowS, closedS };
}

function endOf(people: readonly PersonWay[], job: Job): number {
  return Math.max(...job.pieces.map((piece) => closingS(people, piece)));
}

function closingS(people: readonly PersonWay[], piece: string): number {
  return people.find(({ closedS }) => closedS.has(piece))?.closedS.get(piece) ?? Number.POSITIVE_INFINITY;
}
