/**
 * The history of every state variable over all EVAs, walked from its initial value: writes of stints, requests and outside
 * events, and the stretches in which a stint holds a variable and it shows "in work" to everybody else.
 *
 * At one instant ends apply before starts; intervals are half-open [start, end). `unknown` stays until somebody writes.
 */
import { boundaryS, type Placed, type ReplayContext, utcMs } from '../replay-context.ts';

export interface Write {
  readonly ms: number;
  /** Written by what ends at that instant; else by what starts. */
  readonly atEnd: boolean;
  readonly value: string;
  /** Stint key, "request ID", "event ID". */
  readonly by: string;
  /** Written by a stint's own step, not by its end as a whole. */
  readonly ownStep: boolean;
}
export interface HeldSpan {
  readonly fromMs: number;
  readonly toMs: number;
  readonly by: string;
}
export interface SeenValue {
  readonly value: string;
  readonly fromMs: number;
  /** Who wrote it, or holds it; null: initial. */
  readonly by: string | null;
}

export const IN_WORK = 'in work';

export class StateHistory {
  private readonly initial: ReadonlyMap<string, string>;
  private readonly written = new Map<string, Write[]>();
  private readonly held = new Map<string, HeldSpan[]>();

  constructor(context: ReplayContext) {
    this.initial = new Map([...context.model.variables].map(([id, variable]) => [id, variable.initial]));
    for (const { plan, placed } of context.flown) {
      for (const one of placed) this.addStint(context, one);
      for (const hold of plan.holds) {
        const by = `request ${hold.request}`;
        const variable = `request:${hold.request}`;
        const at = (petS: number): number => plan.petZeroUtcMs + petS * 1000;
        this.add(variable, { ms: at(hold.verifiedS), atEnd: true, value: 'in force', by, ownStep: false });
        this.add(variable, { ms: at(hold.lastUseS), atEnd: true, value: 'clear', by, ownStep: false });
      }
    }
    for (const event of context.campaign.events) {
      for (const { variable, value } of event.leaves) {
        this.add(variable, { ms: event.atUtcMs, atEnd: true, value, by: `event ${event.id}`, ownStep: false });
      }
    }
    for (const list of this.written.values()) list.sort((a, b) => a.ms - b.ms || Number(b.atEnd) - Number(a.atEnd));
    for (const list of this.held.values()) list.sort((a, b) => a.fromMs - b.fromMs || a.toMs - b.toMs);
  }

  variables(): Iterable<string> {
    return this.written.keys();
  }
  writes(variable: string): readonly Write[] {
    return this.written.get(variable) ?? [];
  }
  holds(variable: string): readonly HeldSpan[] {
    return this.held.get(variable) ?? [];
  }
  initialOf(variable: string): string {
    return this.initial.get(variable) ?? 'unknown';
  }

  /** Just before something starts at `ms`: ends at that instant have applied, starts have not. */
  before(variable: string, ms: number, viewer: string | null): SeenValue {
    const hold = this.holds(variable).find((one) => one.by !== viewer && one.fromMs < ms && ms < one.toMs);
    if (hold !== undefined) return { value: IN_WORK, fromMs: hold.fromMs, by: hold.by };
    return this.base(variable, (write) => write.ms < ms || (write.ms === ms && write.atEnd));
  }

  /** Just before the viewer's end at `ms`, after the writes of its own steps. */
  atEnd(variable: string, ms: number, viewer: string): SeenValue {
    const hold = this.holds(variable).find((one) => one.by !== viewer && one.fromMs < ms && ms <= one.toMs);
    if (hold !== undefined) return { value: IN_WORK, fromMs: hold.fromMs, by: hold.by };
    return this.base(variable, (write) => write.ms < ms || (write.ms === ms && write.by === viewer && write.ownStep));
  }

  /** Everything seen over [fromMs, toMs), in order; nothing for an empty interval. */
  during(variable: string, fromMs: number, toMs: number, viewer: string | null): readonly SeenValue[] {
    if (fromMs >= toMs) return [];
    const foreign = this.holds(variable).filter((one) => one.by !== viewer && one.fromMs < toMs && fromMs < one.toMs);
    const instants = new Set([fromMs]);
    for (const write of this.writes(variable)) if (write.ms > fromMs && write.ms < toMs) instants.add(write.ms);
    for (const { fromMs: a, toMs: b } of foreign)
      for (const ms of [a, b]) if (ms > fromMs && ms < toMs) instants.add(ms);
    return [...instants]
      .sort((a, b) => a - b)
      .map((ms) => {
        const hold = foreign.find((one) => one.fromMs <= ms && ms < one.toMs);
        if (hold !== undefined) return { value: IN_WORK, fromMs: ms, by: hold.by };
        const { value, by } = this.base(variable, (write) => write.ms <= ms);
        return { value, fromMs: ms, by };
      });
  }

  private base(variable: string, counts: (write: Write) => boolean): SeenValue {
    const last = this.writes(variable).findLast(counts);
    if (last === undefined) return { value: this.initialOf(variable), fromMs: Number.NEGATIVE_INFINITY, by: null };
    return { value: last.value, fromMs: last.ms, by: last.by };
  }

  private addStint(context: ReplayContext, placed: Placed): void {
    const { effects, stint, planned } = placed;
    if (effects === null) return;
    const spans = new Map<string, [number, number]>();
    const cover = (variable: string, fromMs: number, toMs: number): void => {
      const span = spans.get(variable);
      if (span === undefined) spans.set(variable, [fromMs, toMs]);
      else spans.set(variable, [Math.min(span[0], fromMs), Math.max(span[1], toMs)]);
    };
    for (const leave of effects.leaves) {
      const ms = utcMs(placed, leave.step < 0 ? planned.startS : boundaryS(placed, leave.step + 1));
      const atEnd = leave.step >= 0 && ms > utcMs(placed, planned.startS);
      const value = bodyValue(context, leave.value, planned.assigned);
      this.add(leave.variable, { ms, atEnd, value, by: stint.key, ownStep: leave.step < placed.steps });
      cover(leave.variable, ms, ms);
    }
    for (const hold of effects.holds) {
      cover(
        hold.variable,
        utcMs(placed, boundaryS(placed, hold.fromStep)),
        utcMs(placed, boundaryS(placed, hold.toStep)),
      );
    }
    for (const [variable, [fromMs, toMs]] of spans) {
      const list = this.held.get(variable);
      const span = { fromMs, toMs, by: stint.key };
      if (list === undefined) this.held.set(variable, [span]);
      else list.push(span);
    }
  }

  private add(variable: string, write: Write): void {
    const list = this.written.get(variable);
    if (list === undefined) this.written.set(variable, [write]);
    else list.push(write);
  }
}

/** "role:1" as the person or arm that fills it; other values as they are. */
export function bodyValue(context: ReplayContext, value: string, assigned: readonly string[]): string {
  const match = /^role:(\d+)$/.exec(value);
  const body = match === null ? undefined : assigned[Number(match[1])];
  if (body === undefined) return value;
  return context.arms.has(body) ? `arm:${body}` : `person:${body}`;
}
