/** A network being drawn up. Links between bodies get the reaction time: a call is heard, understood and acted on. */
import type { Campaign } from '../../campaign/campaign.ts';
import type { Span } from '../../campaign/span.ts';
import { boundaryS, type Placed, type ReplayContext } from '../replay/replay-context.ts';
import type { EvaTimeline } from '../../timeline/timeline.ts';
import type {
  ContingentLink,
  LinkKind,
  NetworkEvent,
  PassageEvents,
  RequestEvents,
  RequirementLink,
  WayEvents,
} from './temporal-network.ts';

export interface NetworkOptions {
  /**
   * Bounds of moves and passages as factors of their planning figure. Absent: as the limits of the campaign state them; where they
   * do not, taken as exact, which is said among the assumptions.
   */
  readonly moveSpread?: readonly [least: number, most: number];
  /** Where the reader sits. Absent: inside, with the crew on a radio of their own; on the ground, calls wait for coverage. */
  readonly reader?: 'inside' | 'ground';
  /** Scales every spread of a duration about its planning figure: 1 as stated. */
  readonly spreadScale?: number;
  /** PET 0 may slip by up to this; absent: as the EVA states. */
  readonly slipS?: number;
  /** Holds agreed on beside what the text says. */
  readonly holds?: readonly AgreedHold[];
}
/** What holds of the spread of moves and passages: as the caller says, else as the campaign does; null: nobody does. */
export function moveSpreadOf(
  campaign: Pick<Campaign, 'limits'>,
  { moveSpread }: NetworkOptions,
): readonly [least: number, most: number] | null {
  return moveSpread ?? campaign.limits.travelSpread;
}

/** Steps [waitsStep, …) of `waits` do not start before the first `releasesSteps` steps of `releases` are called done. */
export interface AgreedHold {
  /** Stint keys. */
  readonly releases: string;
  readonly waits: string;
  /** Absent: all of them. */
  readonly releasesSteps?: number;
  /** Absent: 0. */
  readonly waitsStep?: number;
  /** Person whose way from `releases` on is to be over; absent: the stint itself. */
  readonly releasesWayOf?: string;
  /** Person whose way to `waits`, or home from it where none leads there, waits; absent: the stint itself. */
  readonly waitsWayOf?: string;
}

/** The reader inside, who speaks with everybody. */
export const READER = 'IV';

export class NetworkDraft {
  readonly campaign: Campaign;
  readonly context: ReplayContext;
  readonly plan: EvaTimeline;
  readonly placed: readonly Placed[];
  readonly options: NetworkOptions;
  readonly reactionS: number;
  readonly events: NetworkEvent[] = [];
  readonly requirements: RequirementLink[] = [];
  readonly contingents: ContingentLink[] = [];
  readonly boundaries = new Map<string, Map<number, number>>();
  readonly requestEvents: RequestEvents[] = [];
  readonly ways: WayEvents[] = [];
  readonly passages: PassageEvents[] = [];
  readonly outside = new Map<string, number>();
  readonly assumptions: string[] = [];
  /** Earliest instant, stated egress, PET 0. */
  readonly origin = 0;
  readonly egressUtc = 1;
  valuesAtStart: ReadonlyMap<string, string> = new Map();
  petZero = 1;
  bothIn = 1;

  constructor(context: ReplayContext, plan: EvaTimeline, placed: readonly Placed[], options: NetworkOptions) {
    this.context = context;
    this.campaign = context.campaign;
    this.plan = plan;
    this.placed = placed;
    this.options = options;
    const { reactionS } = this.campaign.limits;
    this.reactionS = Math.ceil(reactionS ?? 30);
    if (reactionS === null)
      this.assumptions.push('no reaction time is stated: 30 s from hearing a call to acting on it');
  }

  event(words: string, plannedS: number, lanes: readonly string[], of: Partial<NetworkEvent> = {}): number {
    this.events.push({ words, plannedS, lanes, stint: null, boundary: null, ...of });
    return this.events.length - 1;
  }

  at(event: number): NetworkEvent {
    return this.events[event] as NetworkEvent;
  }

  link(
    from: number,
    to: number,
    leastS: number | null,
    mostS: number | null,
    kind: LinkKind,
    reason: string,
    span: Span | null = null,
  ): void {
    if (from === to) return;
    this.requirements.push({ from, to, leastS, mostS, kind, reason, span });
  }

  /** A state as the EVAs before leave it. */
  valueAtStart(variable: string): string {
    return this.valuesAtStart.get(variable) ?? this.context.model.variables.get(variable)?.initial ?? 'unknown';
  }

  /** `to` comes after `from`; between bodies a call and the reaction to it lie in between. */
  order(from: number, to: number, kind: LinkKind, reason: string, span: Span | null = null, leastS = 0): void {
    if (from === to) return;
    const calledS = Math.max(leastS, this.isShared(from, to) ? 0 : this.reactionS);
    this.requirements.push({ from, to, leastS: calledS, atOnceS: leastS, mostS: null, kind, reason, span });
  }

  isShared(a: number, b: number): boolean {
    return this.at(a).lanes.some((lane) => this.at(b).lanes.includes(lane));
  }

  /** A length that nobody picks, between bounds scaled about the planning figure and rounded outward. */
  length(
    from: number,
    to: number,
    boundsS: readonly [number, number],
    link: Pick<ContingentLink, 'kind' | 'reason' | 'bounded' | 'plannedS' | 'span'>,
    delayS = this.reactionS,
  ): void {
    const scales = link.kind === 'work' || link.kind === 'move' || link.kind === 'passage';
    const scale = scales ? (this.options.spreadScale ?? 1) : 1;
    const figureS = Math.min(Math.max(link.plannedS, boundsS[0]), boundsS[1]);
    const leastS = Math.max(0, Math.floor(figureS - scale * (figureS - boundsS[0]) + 1e-6));
    const mostS = Math.max(leastS, Math.ceil(figureS + scale * (boundsS[1] - figureS) - 1e-6));
    this.contingents.push({ from, to, leastS, mostS, delayS, ...link });
  }

  /** The event of a boundary of a planned stint; drawn up by `stintEvents` before. */
  boundary(placed: Placed, step: number): number {
    const drawn = this.boundaries.get(placed.stint.key);
    const at = Math.min(Math.max(step, 0), placed.steps);
    const event = drawn?.get(at);
    if (event === undefined) throw new Error(`boundary ${at} of ${placed.stint.key} is not in the network`);
    return event;
  }

  plannedBoundaryS(placed: Placed, step: number): number {
    return boundaryS(placed, step);
  }
}
