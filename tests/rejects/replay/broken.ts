/** One change that breaks the two EVAs, and the finding that must come of it. */
import type { Role, Stint } from '@handrail/eva/campaign/campaign';
import type { StintEffects } from '@handrail/eva/hardware/effects';
import type {
  EvaTimeline,
  PlannedMove,
  PlannedPassage,
  PlannedStint,
  RequestHold,
} from '@handrail/eva/timeline/timeline';
import { MIN } from './build-work.ts';
import { type Flight, TWO_EVAS } from './two-evas.ts';

type Mutable<T> =
  T extends ReadonlyMap<infer K, infer V>
    ? Map<K, Mutable<V>>
    : T extends readonly (infer E)[]
      ? Mutable<E>[]
      : T extends object
        ? { -readonly [K in keyof T]: Mutable<T[K]> }
        : T;

export type MutableFlight = Mutable<Flight>;

export interface Broken {
  /** What was changed, as a sentence about the plan. */
  readonly name: string;
  readonly rule: `replay/${string}`;
  /** What the finding's reason must say: figures added up by hand. */
  readonly says: string;
  /** Where it must point. */
  readonly stint?: string;
  readonly person?: string;
  readonly change: (flight: MutableFlight, find: Finder) => void;
}

/** The parts of a flight by name, for changing. */
export class Finder {
  private readonly flight: MutableFlight;
  constructor(flight: MutableFlight) {
    this.flight = flight;
  }
  eva(id = 'one'): Mutable<EvaTimeline> {
    return must(this.flight.timeline.evas.find((one) => one.eva === id));
  }
  stint(key: string): Mutable<PlannedStint> {
    return must(this.flight.timeline.evas.flatMap((one) => one.stints).find((one) => one.stint === key));
  }
  move(who: string, startMin: number, eva = 'one'): Mutable<PlannedMove> {
    return must(this.eva(eva).moves.find((one) => one.who === who && one.startS === startMin * MIN));
  }
  passage(kind: PlannedPassage['kind'], person: string | null, eva = 'one'): Mutable<PlannedPassage> {
    return must(this.eva(eva).passages.find((one) => one.kind === kind && one.person === person));
  }
  hold(): Mutable<RequestHold> {
    return must(this.eva().holds[0]);
  }
  written(key: string): Mutable<Stint> {
    return must(this.flight.campaign.tasks.flatMap((one) => one.stints).find((one) => one.key === key));
  }
  role(key: string, index = 0): Mutable<Role> {
    return must(this.written(key).roles[index]);
  }
  effects(key: string): Mutable<StintEffects> {
    return must(this.flight.model.effects.get(key));
  }
}

/** Moves a planned stint by minutes, steps and all. */
export function shift(stint: Mutable<PlannedStint>, minutes: number): void {
  stint.startS += minutes * MIN;
  stint.endS += minutes * MIN;
  stint.stepEndsS = stint.stepEndsS.map((endS) => endS + minutes * MIN);
}

export function must<T>(value: T | undefined | null): T {
  if (value === undefined || value === null) throw new Error('the two EVAs do not have what this change is about');
  return value;
}

export function breakIt(broken: Broken): Flight {
  const flight = structuredClone(TWO_EVAS) as unknown as MutableFlight;
  broken.change(flight, new Finder(flight));
  return flight as unknown as Flight;
}
