/**
 * The state of an EVA for any progress of its people: what is written when each of them has finished so many segments, which
 * clocks run then, which requests are in force. Values and clocks are kept for each progress once worked out.
 *
 * A step that is interrupted counts as not done: a value is that of the last finished step. At an instant all else is as planned.
 * Anywhere in their segments a clock has run for as long as it can have (progress-network.ts), a request is in force where it is so
 * in every execution, and what neither of the two does (outside events, arms alone) has happened or not as either may be.
 */
import { clockRuns } from '../timeline/clock-runs.ts';
import { type StateWrite, stateWrites } from '../timeline/state-writes.ts';
import type { EvaTimeline, Timeline } from '../timeline/timeline.ts';
import { type TravelTable, travelTable } from '../vehicle/travel-table.ts';
import { stintsByKey } from '../timeline/person-course.ts';
import { flexiblePlan } from '../proof/network/flexible-plan.ts';
import { personNow } from './person-now.ts';
import { WayHomeMemory } from './way-home-memory.ts';
import { ProgressNetwork } from './progress-network.ts';
import { untilNextEvaS, type WayHomeGround } from './safe-until.ts';
import { boundaryName, type Segment, segmentsOf } from './segments.ts';
import type { Basis } from './step-time.ts';
import type { ArmIs, PersonNow, RunningClock, WayHomeState } from './way-home-state.ts';

/** Anywhere in the segments that people are in, with so many of the writes that are neither's done. */
export interface Anywhere {
  readonly othersDone: number;
}
/** An instant of the plan (PET), or anywhere. */
export type When = number | Anywhere;

interface PlacedWrite extends StateWrite {
  /** By index of the person: done once they have finished this many segments; null: not theirs. */
  readonly doneAt: readonly (number | null)[];
  /** In the network; null: it is not. */
  readonly event: number | null;
}
interface Running {
  readonly clock: RunningClock['clock'];
  readonly startS: number;
  readonly event: number | null;
  /** What runs before this one have taken of a clock that adds up: as planned, and at the most. */
  readonly usedS: number;
  readonly usedMostS: number;
}
interface Standing {
  /** Equal numbers are equal standings. */
  readonly number: number;
  /** Loads in whose hands, and how the rails stand. */
  readonly held: number;
  readonly values: ReadonlyMap<string, string>;
  readonly writtenBy: ReadonlyMap<string, string>;
  readonly running: readonly Running[];
}

export class EvaProgress {
  readonly eva: EvaTimeline;
  /** Outside persons of this EVA, as in the campaign. */
  readonly persons: readonly string[];
  readonly segments: readonly (readonly Segment[])[];
  readonly network: ProgressNetwork;
  private readonly ground: WayHomeGround;
  private readonly atEgress: ReadonlyMap<string, string>;
  private readonly writes: readonly PlacedWrite[];
  /** Those that neither of the two makes, as planned one after the other. */
  private readonly others: readonly PlacedWrite[];
  /** By person and number of finished segments: how many changes of state of theirs are behind them. */
  private readonly ranks: readonly Int32Array[];
  private readonly stints: ReturnType<typeof stintsByKey>;
  private readonly standings = new Map<number, Standing>();
  /** By person and number of finished segments: what the text says of the last of them, as a number. */
  private readonly sayings: readonly Int32Array[];
  private readonly known = new Map<string, PersonNow | null>();
  private readonly forces = new Map<number, ReadonlySet<string>>();
  private readonly forcesAnywhere = new Map<number, ReadonlySet<string>>();
  private readonly othersAnywhere = new Map<number, readonly Anywhere[]>();
  private readonly signatures = new Map<Segment, number>();
  private readonly memory: WayHomeMemory;
  private readonly writeNumbers = new Map<StateWrite, number>();
  private readonly egressNumber: number;
  private readonly railVariables: readonly string[];
  private readonly clockVariables: ReadonlySet<string>;
  private readonly loads: readonly string[];

  constructor(
    ground: WayHomeGround,
    atEgress: ReadonlyMap<string, string>,
    timeline: Timeline,
    eva: EvaTimeline,
    memory = new WayHomeMemory(),
  ) {
    const { campaign, hardware } = ground;
    this.memory = memory;
    this.egressNumber = memory.numberOf(
      JSON.stringify([eva.eva, ...[...atEgress].sort(([a], [b]) => (a < b ? -1 : 1))]),
    );
    this.ground = ground;
    this.eva = eva;
    this.atEgress = atEgress;
    this.railVariables = [
      ...new Set(campaign.vehicle.rails.flatMap((rail) => rail.openWhile.map(({ variable }) => variable))),
    ];
    this.clockVariables = new Set(campaign.clocks.flatMap(({ start, stop }) => [start.variable, stop.variable]));
    this.loads = campaign.hardware.filter((piece) => piece.loadClass !== null).map((piece) => piece.id);
    const outside = campaign.people.filter((person) => person.role === 'outside').map((person) => person.id);
    const flying = outside.filter(
      (person) =>
        eva.passages.some((passage) => passage.person === person) ||
        eva.moves.some((move) => move.who === person) ||
        eva.stints.some((planned) => planned.assigned.includes(person)),
    );
    this.persons = flying.slice(0, 2);
    this.segments = this.persons.map((person) =>
      segmentsOf(campaign, eva, person, (from, to) => this.travelOf(person, this.atEgress).railSeconds(from, to, null)),
    );
    this.stints = stintsByKey(campaign);
    this.network = new ProgressNetwork(flexiblePlan(campaign, hardware, timeline, eva.eva), this.segments);
    this.writes = this.placeWrites(stateWrites(campaign, hardware, eva));
    this.sayings = this.segments.map((list) =>
      Int32Array.from({ length: list.length + 1 }, (_, finished) => {
        const said = this.saidOf(list[finished - 1]);
        return said === null ? 0 : this.memory.numberOf(`${said.stint} ${said.safeStop}`) + 1;
      }),
    );
    this.others = this.writes.filter((write) => write.doneAt.every((at) => at === null));
    this.ranks = this.segments.map((list, person) => {
      const thresholds = new Set(this.writes.flatMap((write) => write.doneAt[person] ?? []));
      return Int32Array.from(
        { length: list.length + 1 },
        (_, finished) => [...thresholds].filter((at) => at <= finished).length,
      );
    });
  }

  /** Table of this person's ways in the state of these values. */
  travelOf(person: string, values: ReadonlyMap<string, string>): TravelTable {
    const key = `${person}|${this.railVariables.map((variable) => this.valueOf(values, variable)).join('|')}`;
    const known = this.memory.tables.get(key);
    if (known !== undefined) return known;
    const valuation = new Map(
      this.railVariables.map((variable) => [variable, this.valueOf(values, variable)] as const),
    );
    const table = travelTable(this.ground.campaign, { valuation, person });
    this.memory.tables.set(key, table);
    return table;
  }

  /** The segment of each person at an instant; at a boundary the one that begins. */
  at(petS: number): readonly Segment[] {
    return this.segments.map((list) => (list.find((segment) => petS < segment.endS) ?? list.at(-1)) as Segment);
  }

  /**
   * What of the others' writes may be done while people are in these segments, one after the other.
   * @returns at least one
   */
  anywhere(now: readonly Segment[]): readonly Anywhere[] {
    if (this.others.length === 0) return NONE_OF_OTHERS;
    const key = keyOf(now);
    const known = this.othersAnywhere.get(key);
    if (known !== undefined) return known;
    const happened = this.others.map(({ event }) => this.network.hasHappened(event, now));
    const least = happened.lastIndexOf(true) + 1;
    const first = happened.indexOf(false);
    const most = Math.max(least, first < 0 ? happened.length : first);
    const made = Array.from({ length: most - least + 1 }, (_, more) => ({ othersDone: least + more }));
    this.othersAnywhere.set(key, made);
    return made;
  }

  /**
   * @param now the segment of each person
   * @param finished how many segments each has finished: the segment's own index, or one more for its end
   */
  state(now: readonly Segment[], finished: readonly number[], when: When, arm: ArmIs, basis: Basis): WayHomeState {
    const standing = this.standing(finished, when);
    return {
      eva: this.eva.eva,
      petS: this.petOf(now, when),
      values: standing.values,
      writtenBy: standing.writtenBy,
      inForce: this.inForce(now, when),
      clocks: this.clocks(now, finished, when),
      people: now.flatMap((segment) => this.personNow(segment, when, standing, arm, basis) ?? []),
      said: this.said(finished),
    };
  }

  /** The clocks that run, with the least that can be left of each, in whole seconds. */
  clocks(now: readonly Segment[], finished: readonly number[], when: When): readonly RunningClock[] {
    return this.standing(finished, when).running.map(({ clock, startS, event, usedS, usedMostS }) => {
      const goneS = typeof when === 'number' ? usedS + when - startS : usedMostS + this.network.mostSinceS(event, now);
      return { clock, leftS: Math.floor(clock.limitS - goneS) };
    });
  }

  /** What is done, asked for and present: equal keys leave equal work to close. */
  workKey(now: readonly Segment[], finished: readonly number[], when: When): string {
    const standing = this.standing(finished, when);
    let outside = 0;
    for (const { kind } of now) outside = 2 * outside + (kind === 'inside' ? 0 : 1);
    return `${standing.number}|${this.forceNumber(now, when)}|${outside}|${this.dueClocks(standing, now, finished, when)}`;
  }

  /** How the people are held and what they hold: equal keys start equal ways. */
  peopleKey(now: readonly Segment[], finished: readonly number[], when: When): string {
    let key = `${this.egressNumber}|${this.standing(finished, when).held}`;
    for (let person = 0; person < now.length; person++) {
      const segment = now[person] as Segment;
      key += `|${this.signature(segment)},${this.sayings[person]?.[finished[person] ?? 0] ?? 0}`;
      const moves = segment.rail !== null || segment.kind === 'in' || segment.kind === 'out';
      if (moves && typeof when === 'number') key += `@${when - segment.startS}`;
    }
    return key;
  }

  /** All that a way home rests on: equal keys have equal ways in every mode. */
  wholeKey(now: readonly Segment[], finished: readonly number[], when: When): string {
    let key = `${this.workKey(now, finished, when)}#${this.peopleKey(now, finished, when)}`;
    for (const { clock, leftS } of this.clocks(now, finished, when)) key += `,${clock.id}=${leftS}`;
    return key;
  }

  /** Which of the running clocks do not last until somebody is outside again. */
  private dueClocks(standing: Standing, now: readonly Segment[], finished: readonly number[], when: When): string {
    if (standing.running.length === 0) return '';
    const untilS = untilNextEvaS(this.ground.campaign, { eva: this.eva.eva, petS: this.petOf(now, when) });
    return this.clocks(now, finished, when)
      .map(({ leftS }) => (leftS < untilS ? '!' : '.'))
      .join('');
  }

  /** Whether anything is written, or said of a safe stop, where this segment ends. */
  turnsAtEnd(segment: Segment): boolean {
    const person = this.persons.indexOf(segment.person);
    const [ranks, sayings] = [this.ranks[person], this.sayings[person]];
    if (ranks === undefined || sayings === undefined) return false;
    const { index } = segment;
    return ranks[index] !== ranks[index + 1] || sayings[index] !== sayings[index + 1];
  }

  /** A number for each way of being somewhere. */
  private signature(segment: Segment): number {
    const known = this.signatures.get(segment);
    if (known !== undefined) return known;
    const { kind, place, rail, restraint, onArm, startS, endS } = segment;
    const length = kind === 'move' || kind === 'in' || kind === 'out' || onArm !== null ? endS - startS : '';
    const arm = onArm === null ? '' : `${onArm.arm},${onArm.fromPose},${onArm.toPose}`;
    const inside = kind === 'inside' ? (segment.index === 0 ? 'before' : 'after') : '';
    const made = `${segment.person} ${inside}${kind === 'in' || kind === 'out' ? kind : ''}${place},${rail?.[1] ?? ''},${restraint ?? ''},${arm},${length}`;
    const number = this.memory.numberOf(made);
    this.signatures.set(segment, number);
    return number;
  }

  /** Anywhere: the earliest. A clock that must last until the next egress has then the longest to go. */
  private petOf(now: readonly Segment[], when: When): number {
    return typeof when === 'number' ? when : Math.max(0, this.network.earliestS(now));
  }

  private forceNumber(now: readonly Segment[], when: When): number {
    const force = this.inForce(now, when);
    return force.size === 0 ? -1 : this.memory.numberOf(`requests ${[...force].sort().join()}`);
  }

  private inForce(now: readonly Segment[], when: When): ReadonlySet<string> {
    const [forces, key] = typeof when === 'number' ? [this.forces, when] : [this.forcesAnywhere, keyOf(now)];
    const known = forces.get(key);
    if (known !== undefined) return known;
    const made =
      typeof when === 'number'
        ? new Set(
            this.eva.holds.filter((hold) => hold.verifiedS <= when && when < hold.clearedS).map((hold) => hold.request),
          )
        : this.network.requestsInForce(now);
    forces.set(key, made);
    return made;
  }

  private personNow(segment: Segment, when: When, standing: Standing, arm: ArmIs, basis: Basis): PersonNow | null {
    const key = `${segment.person}|${this.signature(segment)}|${standing.held}|${arm}|${basis}`;
    const atS = typeof when === 'number' ? when : null;
    if (atS === null) {
      const before = this.known.get(key);
      if (before !== undefined) return before;
    }
    const held = this.loads.filter((id) => standing.values.get(`${id}.holder`) === `person:${segment.person}`);
    const { campaign, library } = this.ground;
    const made = personNow(campaign, library, segment, atS, held, arm, basis);
    if (atS === null) this.known.set(key, made);
    return made;
  }

  private valueOf(values: ReadonlyMap<string, string>, variable: string): string {
    return values.get(variable) ?? this.ground.hardware.variables.get(variable)?.initial ?? 'unknown';
  }

  private standing(finished: readonly number[], when: When): Standing {
    const othersDone =
      typeof when === 'number' ? this.others.filter((write) => write.petS <= when).length : when.othersDone;
    let key = othersDone;
    for (let person = 0; person < finished.length; person++) {
      key = key * 4096 + (this.ranks[person]?.[finished[person] as number] ?? 0);
    }
    const known = this.standings.get(key);
    if (known !== undefined) return known;
    const others = new Set(this.others.slice(0, othersDone));
    const done = this.writes.filter(
      (write) => others.has(write) || write.doneAt.some((at, person) => at !== null && (finished[person] ?? 0) >= at),
    );
    const values = new Map(this.atEgress);
    const writtenBy = new Map<string, string>();
    for (const write of done) {
      values.set(write.variable, write.value);
      writtenBy.set(write.variable, write.by);
    }
    const changes = done.filter(({ variable }) => this.clockVariables.has(variable));
    const runs = clockRuns(this.ground.campaign, this.ground.hardware, this.eva, changes, this.atEgress);
    const running = runs
      .filter((run) => run.stopS === null && run.clock.sense === 'most')
      .map(({ clock, startS, startedBy }): Running => {
        const before = clock.onStop === 'accumulate' ? runs.filter((run) => run.clock === clock) : [];
        const over = before.flatMap(({ startedBy: by, startS: fromS, stoppedBy, stopS }) =>
          stopS === null || stoppedBy === null ? [] : [{ by, fromS, stoppedBy, stopS }],
        );
        return {
          clock,
          startS,
          event: this.eventAt(startedBy, startS),
          usedS: over.reduce((sum, run) => sum + run.stopS - run.fromS, 0),
          usedMostS: over.reduce((sum, run) => {
            const [from, to] = [this.eventAt(run.by, run.fromS), this.eventAt(run.stoppedBy, run.stopS)];
            return sum + this.network.mostBetweenS(from, to);
          }, 0),
        };
      });
    const standing: Standing = {
      number: this.memory.numberOf(`${this.egressNumber}<${done.map((write) => this.writeNumber(write)).join()}`),
      held: this.memory.numberOf(
        [
          ...this.loads
            .map((id) => values.get(`${id}.holder`) ?? '')
            .map((holder) => (holder.startsWith('person:') ? holder : '')),
          ...this.railVariables.map((variable) => this.valueOf(values, variable)),
        ].join(','),
      ),
      values,
      writtenBy,
      running,
    };
    this.standings.set(key, standing);
    return standing;
  }

  private writeNumber(write: StateWrite): number {
    const known = this.writeNumbers.get(write);
    if (known !== undefined) return known;
    const number = this.memory.numberOf(`${write.by}: ${write.variable}=${write.value}`);
    this.writeNumbers.set(write, number);
    return number;
  }

  /** What the text says of the last finished step of a stint that somebody is in. */
  private said(finished: readonly number[]): WayHomeState['said'] {
    return this.segments.flatMap((list, person) => this.saidOf(list[(finished[person] ?? 0) - 1]) ?? []);
  }

  private saidOf(last: Segment | undefined): WayHomeState['said'][number] | null {
    if (last === undefined || last.stint === null || last.step === null) return null;
    const safeStop = this.stints.get(last.stint)?.steps[last.step]?.safeStop ?? null;
    return safeStop === null ? null : { stint: last.stint, safeStop };
  }

  private placeWrites(writes: readonly StateWrite[]): readonly PlacedWrite[] {
    const segments = this.segments.map((list) => {
      const tills = new Map<string, number>();
      for (const segment of list) {
        tills.set(segment.till, segment.index + 1);
        if (segment.step === 0 || segment.step === null) tills.set(segment.from, segment.index);
      }
      return tills;
    });
    return writes.map((write) => {
      const boundary = this.boundaryAt(write.by, write.petS);
      const event = this.eventAt(write.by, write.petS);
      if (boundary === null) return { ...write, event, doneAt: this.persons.map(() => null) };
      const name = boundaryName(write.by, boundary);
      return { ...write, event, doneAt: segments.map((tills) => tills.get(name) ?? null) };
    });
  }

  /** In the network: what a stint, or an outside event, changes at this planned instant. */
  private eventAt(by: string, petS: number): number | null {
    return this.network.eventOf(by, this.boundaryAt(by, petS) ?? 0);
  }

  /** The boundary of a planned stint at this planned instant; null: no such stint. */
  private boundaryAt(stint: string, petS: number): number | null {
    const one = this.eva.stints.find((candidate) => candidate.stint === stint);
    if (one === undefined) return null;
    const count = Math.max(1, this.stints.get(stint)?.steps.length ?? 1);
    let boundary = 0;
    while (boundary < count && petS > (boundary === 0 ? one.startS : (one.stepEndsS[boundary - 1] ?? one.endS))) {
      boundary++;
    }
    return boundary;
  }
}

const NONE_OF_OTHERS: readonly Anywhere[] = [{ othersDone: 0 }];

function keyOf(now: readonly Segment[]): number {
  let key = 0;
  for (const { index } of now) key = key * 4096 + index;
  return key;
}
