/**
 * The state of an EVA for any progress of its people: what is written when each of them has finished so many segments, which
 * clocks run then, which requests are in force. Values and clocks are kept for each progress once worked out.
 *
 * A step that is interrupted counts as not done: a value is that of the last finished step. Requests and outside events go by
 * the clock: they stand as planned at the later of the two people's planned instants.
 */
import { clockRuns } from '../timeline/clock-runs.ts';
import { type StateWrite, stateWrites } from '../timeline/state-writes.ts';
import type { EvaTimeline } from '../timeline/timeline.ts';
import { type TravelTable, travelTable } from '../vehicle/travel-table.ts';
import { stintsByKey } from '../timeline/person-course.ts';
import { personNow } from './person-now.ts';
import type { WayHomeGround } from './safe-until.ts';
import { boundaryName, type Segment, segmentsOf } from './segments.ts';
import type { Basis } from './step-time.ts';
import type { ArmIs, PersonNow, RunningClock, WayHomeState } from './way-home-state.ts';

interface PlacedWrite extends StateWrite {
  /** By index of the person: done once they have finished this many segments; null: not theirs. */
  readonly doneAt: readonly (number | null)[];
}
interface Standing {
  readonly key: string;
  /** Loads in whose hands, and how the rails stand. */
  readonly held: number;
  readonly values: ReadonlyMap<string, string>;
  readonly writtenBy: ReadonlyMap<string, string>;
  /** Clock id → planned instant of its start. */
  readonly running: readonly { readonly clock: RunningClock['clock']; readonly startS: number }[];
}

export class EvaProgress {
  readonly eva: EvaTimeline;
  /** Outside persons of this EVA, as in the campaign. */
  readonly persons: readonly string[];
  readonly segments: readonly (readonly Segment[])[];
  private readonly ground: WayHomeGround;
  private readonly atEgress: ReadonlyMap<string, string>;
  private readonly writes: readonly PlacedWrite[];
  private readonly outsideWrites: readonly PlacedWrite[];
  /** By person and number of finished segments: how many changes of state of theirs are behind them. */
  private readonly ranks: readonly Int32Array[];
  private readonly stints: ReturnType<typeof stintsByKey>;
  private readonly standings = new Map<string, Standing>();
  private readonly known = new Map<string, PersonNow | null>();
  private readonly forces = new Map<number, ReadonlySet<string>>();
  private readonly signatures = new Map<Segment, number>();
  private readonly names = new Map<string, number>();
  private readonly tables = new Map<string, TravelTable>();
  private readonly railVariables: readonly string[];
  private readonly loads: readonly string[];

  constructor(ground: WayHomeGround, atEgress: ReadonlyMap<string, string>, eva: EvaTimeline) {
    const { campaign, hardware } = ground;
    this.ground = ground;
    this.eva = eva;
    this.atEgress = atEgress;
    this.railVariables = [
      ...new Set(campaign.vehicle.rails.flatMap((rail) => rail.openWhile.map(({ variable }) => variable))),
    ];
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
    this.writes = this.placeWrites(stateWrites(campaign, hardware, eva));
    this.outsideWrites = this.writes.filter((write) => write.doneAt.every((at) => at === null));
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
    const known = this.tables.get(key);
    if (known !== undefined) return known;
    const valuation = new Map(
      this.railVariables.map((variable) => [variable, this.valueOf(values, variable)] as const),
    );
    const table = travelTable(this.ground.campaign, { valuation, person });
    this.tables.set(key, table);
    return table;
  }

  /** The segment of each person at an instant; at a boundary the one that begins. */
  at(petS: number): readonly Segment[] {
    return this.segments.map((list) => (list.find((segment) => petS < segment.endS) ?? list.at(-1)) as Segment);
  }

  /**
   * @param now the segment of each person
   * @param finished how many segments each has finished: the segment's own index, or one more for its end
   * @param atS an instant; null: anywhere in those segments
   */
  state(
    now: readonly Segment[],
    finished: readonly number[],
    atS: number | null,
    arm: ArmIs,
    basis: Basis,
  ): WayHomeState {
    const plannedS = atS ?? Math.max(...now.map((segment) => segment.startS));
    const standing = this.standing(finished, plannedS);
    return {
      eva: this.eva.eva,
      petS: plannedS,
      values: standing.values,
      writtenBy: standing.writtenBy,
      inForce: this.inForce(plannedS),
      clocks: standing.running.map(({ clock, startS }) => ({ clock, leftS: clock.limitS - (plannedS - startS) })),
      people: now.flatMap((segment) => this.personNow(segment, atS, standing, arm, basis) ?? []),
      said: this.said(finished),
    };
  }

  /** What is done, asked for and present: equal keys leave equal work to close. */
  workKey(now: readonly Segment[], finished: readonly number[], plannedS: number): string {
    const outside = now.filter((segment) => segment.kind !== 'inside').map((segment) => segment.person);
    return `${this.standing(finished, plannedS).key}|${[...this.inForce(plannedS)].join()}|${outside.join()}`;
  }

  /** How the people are held and what they hold: equal keys start equal ways. */
  peopleKey(now: readonly Segment[], finished: readonly number[], atS: number | null, plannedS: number): string {
    const standing = this.standing(finished, plannedS);
    const said = this.said(finished)
      .map((one) => `${one.stint}${one.safeStop ? '+' : '-'}`)
      .join();
    const exact =
      atS !== null && now.some((segment) => segment.rail !== null || segment.kind === 'in' || segment.kind === 'out');
    return `${now.map((segment) => this.signature(segment)).join('/')}|${standing.held}|${said}|${exact ? atS : ''}`;
  }

  /** Whether anything is written, or said of a safe stop, where this segment ends. */
  turnsAtEnd(segment: Segment): boolean {
    const person = this.persons.indexOf(segment.person);
    const ranks = this.ranks[person];
    if (ranks === undefined) return false;
    const word = (count: number): boolean | null => {
      const last = this.segments[person]?.[count - 1];
      return last === undefined || last.stint === null || last.step === null
        ? null
        : (this.stints.get(last.stint)?.steps[last.step]?.safeStop ?? null);
    };
    const { index } = segment;
    return ranks[index] !== ranks[index + 1] || word(index) !== word(index + 1);
  }

  /** A number for each way of being somewhere. */
  private signature(segment: Segment): number {
    const known = this.signatures.get(segment);
    if (known !== undefined) return known;
    const { kind, place, rail, restraint, onArm, startS, endS } = segment;
    const length = kind === 'move' || kind === 'in' || kind === 'out' || onArm !== null ? endS - startS : '';
    const arm = onArm === null ? '' : `${onArm.arm},${onArm.fromPose},${onArm.toPose}`;
    const inside = kind === 'inside' ? (segment.index === 0 ? 'before' : 'after') : '';
    const made = `${inside}${kind === 'in' || kind === 'out' ? kind : ''}${place},${rail?.[1] ?? ''},${restraint ?? ''},${arm},${length}`;
    const number = this.numberOf(made);
    this.signatures.set(segment, number);
    return number;
  }

  private numberOf(text: string): number {
    const known = this.names.get(text);
    if (known !== undefined) return known;
    this.names.set(text, this.names.size);
    return this.names.size - 1;
  }

  private inForce(plannedS: number): ReadonlySet<string> {
    const known = this.forces.get(plannedS);
    if (known !== undefined) return known;
    const made = new Set(
      this.eva.holds
        .filter((hold) => hold.verifiedS <= plannedS && plannedS < hold.clearedS)
        .map((hold) => hold.request),
    );
    this.forces.set(plannedS, made);
    return made;
  }

  private personNow(
    segment: Segment,
    atS: number | null,
    standing: Standing,
    arm: ArmIs,
    basis: Basis,
  ): PersonNow | null {
    const key = `${segment.person}|${this.signature(segment)}|${standing.held}|${arm}|${basis}`;
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

  private standing(finished: readonly number[], plannedS: number): Standing {
    const events = this.outsideWrites.filter((write) => write.petS <= plannedS).length;
    const key = `${finished.map((count, person) => this.ranks[person]?.[count] ?? 0).join('-')}|${events}`;
    const known = this.standings.get(key);
    if (known !== undefined) return known;
    const done = this.writes.filter((write) =>
      write.doneAt.every((at) => at === null)
        ? write.petS <= plannedS
        : write.doneAt.some((at, person) => at !== null && (finished[person] ?? 0) >= at),
    );
    const values = new Map(this.atEgress);
    const writtenBy = new Map<string, string>();
    for (const write of done) {
      values.set(write.variable, write.value);
      writtenBy.set(write.variable, write.by);
    }
    const runs = clockRuns(this.ground.campaign, this.ground.hardware, this.eva, done, this.atEgress);
    const standing: Standing = {
      key,
      held: this.numberOf(
        [
          ...this.loads
            .map((id) => values.get(`${id}.holder`) ?? '')
            .map((holder) => (holder.startsWith('person:') ? holder : '')),
          ...this.railVariables.map((variable) => this.valueOf(values, variable)),
        ].join(','),
      ),
      values,
      writtenBy,
      running: runs
        .filter((run) => run.stopS === null && run.clock.sense === 'most')
        .map((run) => ({ clock: run.clock, startS: run.startS })),
    };
    this.standings.set(key, standing);
    return standing;
  }

  /** What the text says of the last finished step of a stint that somebody is in. */
  private said(finished: readonly number[]): WayHomeState['said'] {
    return this.segments.flatMap((list, person) => {
      const last = list[(finished[person] ?? 0) - 1];
      if (last === undefined || last.stint === null || last.step === null) return [];
      const word = this.stints.get(last.stint)?.steps[last.step]?.safeStop ?? null;
      return word === null ? [] : [{ stint: last.stint, safeStop: word }];
    });
  }

  private placeWrites(writes: readonly StateWrite[]): readonly PlacedWrite[] {
    const planned = new Map(this.eva.stints.map((one) => [one.stint, one] as const));
    const segments = this.segments.map((list) => {
      const tills = new Map<string, number>();
      for (const segment of list) {
        tills.set(segment.till, segment.index + 1);
        if (segment.step === 0 || segment.step === null) tills.set(segment.from, segment.index);
      }
      return tills;
    });
    return writes.map((write) => {
      const one = planned.get(write.by);
      if (one === undefined) return { ...write, doneAt: this.persons.map(() => null) };
      const count = Math.max(1, this.stints.get(write.by)?.steps.length ?? 1);
      let boundary = 0;
      while (boundary < count && write.petS > (boundary === 0 ? one.startS : (one.stepEndsS[boundary - 1] ?? one.endS)))
        boundary++;
      const name = boundaryName(write.by, boundary);
      return { ...write, doneAt: segments.map((tills) => tills.get(name) ?? null) };
    });
  }
}
