/**
 * Assist: one of the two cannot move. The partner puts away what is in hand, goes to them, frees them from what holds them, and
 * both travel at towed pace; at the hatch there is one pair of hands, so the two passages follow each other, the helped one's at
 * towed pace, and the same hands close it. Nothing else is closed: that is what abort and terminate are for.
 *
 * Towed pace is that of the load class called "towed" if the vehicle has one, else of its slowest load class; which one is said.
 * A vehicle without load classes gives no towed pace, and nothing is claimed. Both persons are tried as the one who cannot move;
 * the longer way counts.
 */
import type { Eva } from '../campaign/campaign.ts';
import { ARM_KIND } from '../kinds/kinds-library.ts';
import type { Horizon } from './horizon.ts';
import { restraintEgressS } from './person-now.ts';
import type { WayHomeGround } from './safe-until.ts';
import { stepAssumption, travelAssumption, travelFactor, verbTime } from './step-time.ts';
import { putSeconds, putWords } from './put-away.ts';
import {
  blockedWords,
  type PersonWay,
  type PlanStep,
  sumInWords,
  type TravelOf,
  type WayHome,
} from './way-home-plan.ts';
import type { PersonNow, Start, WayHomeCase, WayHomeState } from './way-home-state.ts';

const NOTHING: ReadonlyMap<string, number> = new Map();

export function assistPlan(
  ground: WayHomeGround,
  state: WayHomeState,
  what: WayHomeCase,
  travelOf: TravelOf,
  horizon: Horizon,
  eva: Eva,
  hatch: string,
): WayHome {
  const { people } = state;
  const factor = travelFactor(ground.campaign, what.basis);
  const closeHatchS = eva.closeHatchS * factor;
  const towed = towedClass(ground);
  const times = [stepAssumption(what.basis), travelAssumption(ground.campaign, what.basis)];
  const base = { ...what, horizon, closeHatchS, shortest: false, jobs: [], people: [], towS: null };
  const none = (unknown: readonly string[], blocked: WayHome['blocked']): WayHome => ({
    ...base,
    totalS: null,
    words: [...unknown.map((words) => `unknown here: ${words}`), ...blocked.map(blockedWords)].join('; '),
    unknown,
    blocked,
    assumptions: [],
  });
  if (towed === null) return none(['the vehicle has no load class, so how fast a person is towed is not stated'], []);
  if (people.length === 0) {
    const words = sumInWords([], [], closeHatchS, closeHatchS);
    return { ...base, totalS: closeHatchS, words, unknown: [], blocked: [], assumptions: times };
  }
  const [alone] = people;
  const rescuer =
    people.length === 1 && alone !== undefined && !alone.inHatch ? comesOut(eva, alone.person, hatch, factor) : null;
  if (people.length === 1 && alone !== undefined && !alone.inHatch && rescuer === null) {
    return none([`${alone.person} is outside alone, and nobody else passes the hatch in this EVA`], []);
  }
  let worst: WayHome | null = null;
  let longestTowS: number | null = null;
  for (const victim of people.filter(({ person }) => what.victim === undefined || person === what.victim)) {
    const helper = people.find((person) => person !== victim) ?? rescuer ?? undefined;
    const plan =
      helper === undefined
        ? alonePlan(victim, towed.factor * factor, eva)
        : helped(ground, what, travelOf, eva, hatch, victim, helper, towed.id, towed.factor);
    if (typeof plan === 'string') return none([], [{ words: plan, by: [victim.person], cause: 'way', leftS: null }]);
    const totalS = Math.max(...plan.map((person) => person.inS)) + closeHatchS;
    const towS = towOf(plan);
    if (towS !== null) longestTowS = Math.max(longestTowS ?? 0, towS);
    if (worst !== null && (worst.totalS ?? 0) >= totalS) continue;
    worst = {
      ...base,
      totalS,
      people: plan,
      words: `${victim.person} cannot move: ${sumInWords(plan, [plan.length - 1], closeHatchS, totalS)}`,
      unknown: [],
      blocked: [],
      assumptions: [...times, `towed pace as with ${towed.title} (${towed.factor} times as long)`],
    };
  }
  return worst === null ? none([], []) : { ...worst, towS: longestTowS };
}

/** From the moment the partner is there; null: the partner is not needed. */
function towOf(plan: readonly PersonWay[]): number | null {
  const helper = plan[1];
  const reached = helper?.steps.find((step) => step.kind === 'help');
  return helper === undefined ? null : helper.atHatchS - (reached?.startS ?? helper.atHatchS);
}

/** Longest first where no class is called "towed". */
export function towedClass(
  ground: WayHomeGround,
): { readonly id: string; readonly title: string; readonly factor: number } | null {
  const classes = ground.campaign.vehicle.loadClasses;
  return classes.find((one) => one.id === 'towed') ?? [...classes].sort((a, b) => b.factor - a.factor)[0] ?? null;
}

/** Who is inside in a suit, before their egress or after their ingress, comes out through the hatch (again). */
function comesOut(eva: Eva, outside: string, hatch: string, factor: number): PersonNow | null {
  const passage = eva.egress.find((one) => one.person !== outside);
  if (passage === undefined) return null;
  const start = {
    delayS: passage.durationS * factor,
    delayWords: 'out through the hatch',
    leaveS: 0,
    leaveWords: null,
  };
  return {
    person: passage.person,
    starts: [{ ...start, place: hatch, exit: hatch }],
    inHatch: false,
    passageLeftS: null,
    loads: [],
    stuck: null,
  };
}

/** The last one is in the hatch already and is brought in from inside. */
function alonePlan(victim: PersonNow, factor: number, eva: Eva): readonly PersonWay[] {
  const passageS = (victim.passageLeftS ?? passageOf(eva, victim.person)) * factor;
  const steps: PlanStep[] = [
    { kind: 'hatch', startS: 0, endS: passageS, words: 'in through the hatch', from: '', to: '' },
  ];
  return [{ person: victim.person, steps, atHatchS: 0, inS: passageS, closedS: NOTHING }];
}

function helped(
  ground: WayHomeGround,
  what: WayHomeCase,
  travelOf: TravelOf,
  eva: Eva,
  hatch: string,
  victim: PersonNow,
  helper: PersonNow,
  loadClass: string,
  factor: number,
): readonly PersonWay[] | string {
  const pace = ground.campaign.people.find((person) => person.id === helper.person)?.pace ?? 1;
  const slow = travelFactor(ground.campaign, what.basis);
  const table = travelOf(helper.person);
  if (victim.starts.length === 0) return `${victim.person}: ${victim.stuck ?? 'no way'}`;
  if (helper.starts.length === 0) return `${helper.person}: ${helper.stuck ?? 'no way'}`;
  const freeS = restraintEgressS(ground.campaign, ground.library, pace, what.basis);
  const offArmS = verbTime(ground.library.kinds.get(ARM_KIND), 'dismount', pace, what.basis) ?? 0;
  let best: readonly PersonWay[] | null = null;
  let bestS = Number.POSITIVE_INFINITY;
  for (const start of helper.starts) {
    for (const there of victim.starts) {
      const ways = oneWay(start, there);
      if (ways !== null && (ways[1] as PersonWay).inS < bestS) {
        best = ways;
        bestS = (ways[1] as PersonWay).inS;
      }
    }
  }
  return best ?? `no way for ${helper.person} to ${victim.person} and on to the hatch at towed pace`;

  function oneWay(start: Start, there: Start): readonly PersonWay[] | null {
    const steps: PlanStep[] = [];
    let nowS = 0;
    let at = start.place;
    const add = (kind: PlanStep['kind'], lengthS: number, words: string, to = at): void => {
      if (lengthS > 0) steps.push({ kind, startS: nowS, endS: nowS + lengthS, words, from: at, to });
      nowS += lengthS;
      at = to;
    };
    add('go', start.delayS, start.delayWords ?? 'go on');
    for (const id of helper.loads) add('put', putSeconds(ground, id, pace, what), putWords(ground, id));
    add('leave', start.leaveS, start.leaveWords ?? 'let go', start.exit);
    // Somebody on a plate is met where the plate lets them off; somebody on a rail, at the end of it that is nearer.
    const meet = there.exit;
    const reachS = table.secondsBetween(at, meet, null, pace);
    if (reachS === null) return null;
    add('travel', reachS * slow, `${at} to ${meet}`, meet);
    if (there.delayS > nowS) add('wait', there.delayS - nowS, `wait: ${there.delayWords ?? 'until they are there'}`);
    // Whatever held them takes at least as long with another's hands.
    const isOnArm = there.place !== there.exit || /plate|climb down/.test(there.leaveWords ?? '');
    const heldS = Math.max(there.leaveS, isOnArm ? offArmS : 0, freeS);
    add('help', heldS, `free ${victim.person}`);
    for (const id of victim.loads) add('put', putSeconds(ground, id, pace, what), putWords(ground, id));
    const towS = table.secondsBetween(at, hatch, loadClass, pace);
    if (towS === null) return null;
    add('travel', towS * slow, `${at} to ${hatch} with ${victim.person}`, hatch);
    const atHatchS = nowS;
    const passS = (victim.passageLeftS ?? passageOf(eva, victim.person)) * factor * slow;
    const victimSteps: PlanStep[] = [
      { kind: 'help', startS: 0, endS: nowS, words: 'is brought to the hatch', from: there.place, to: hatch },
      {
        kind: 'hatch',
        startS: nowS,
        endS: nowS + passS,
        words: 'is passed in through the hatch',
        from: hatch,
        to: hatch,
      },
    ];
    nowS += passS;
    steps.push({
      kind: 'hatch',
      startS: atHatchS,
      endS: nowS,
      words: `pass ${victim.person} in`,
      from: hatch,
      to: hatch,
    });
    add('hatch', (helper.passageLeftS ?? passageOf(eva, helper.person)) * slow, 'in through the hatch');
    return [
      { person: victim.person, steps: victimSteps, atHatchS, inS: atHatchS + passS, closedS: NOTHING },
      { person: helper.person, steps, atHatchS, inS: nowS, closedS: NOTHING },
    ];
  }
}

function passageOf(eva: Eva, person: string): number {
  return eva.ingress.find((passage) => passage.person === person)?.durationS ?? 0;
}
