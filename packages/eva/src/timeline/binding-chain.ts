/**
 * Why a stint stands where it stands: what it waits for at the very minute it starts, back to the start of the EVA; or that it
 * is late on purpose, because a clock or a request would run over if it started sooner; or by how much it is free.
 *
 * Method: with everything else left where it is, each thing that must come before gives an earliest instant; the latest of
 * these binds. It is read off the timeline and the document alone, whoever made the timeline.
 */
import { formatDuration, formatPet } from '@handrail/quantity/time';
import type { Campaign, Role, Stint } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import { personCourse, stepStart, type Stretch, stintsByKey } from './person-course.ts';
import { stateWrites } from './state-writes.ts';
import type { EvaTimeline, PlannedStint } from './timeline.ts';

export interface Binding {
  readonly stint: string;
  /** tight: it cannot start sooner. late on purpose: it could, and something else would break. free: nothing holds it. */
  readonly kind: 'tight' | 'late on purpose' | 'free';
  /** How much sooner it could start with everything else as it is. */
  readonly slackS: number;
  /** "EV1 comes from \"Bolt the mast\"". */
  readonly words: string;
  /** The stint that it waits for; null: the hatch, a window, a pin. */
  readonly waitsFor: string | null;
}

interface Earliest {
  readonly slackS: number;
  readonly words: string;
  readonly waitsFor: string | null;
}

/** One binding for each planned stint of the EVA. */
export function bindings(campaign: Campaign, hardware: HardwareModel, eva: EvaTimeline): ReadonlyMap<string, Binding> {
  const finder = new BindingFinder(campaign, hardware, eva);
  return new Map(eva.stints.map((planned) => [planned.stint, finder.bindingOf(planned)] as const));
}

/** From this stint back to what starts the EVA, a window or free time; the stint itself first. */
export function bindingChain(found: ReadonlyMap<string, Binding>, stint: string): readonly Binding[] {
  const chain: Binding[] = [];
  const seen = new Set<string>();
  for (let at: string | null = stint; at !== null && !seen.has(at); ) {
    seen.add(at);
    const binding: Binding | undefined = found.get(at);
    if (binding === undefined) break;
    chain.push(binding);
    at = binding.kind === 'tight' ? binding.waitsFor : null;
  }
  return chain;
}

class BindingFinder {
  private readonly stints: ReadonlyMap<string, Stint>;
  private readonly planned: ReadonlyMap<string, PlannedStint>;
  private readonly campaign: Campaign;
  private readonly hardware: HardwareModel;
  private readonly eva: EvaTimeline;

  constructor(campaign: Campaign, hardware: HardwareModel, eva: EvaTimeline) {
    this.campaign = campaign;
    this.hardware = hardware;
    this.eva = eva;
    this.stints = stintsByKey(campaign);
    this.planned = new Map(eva.stints.map((planned) => [planned.stint, planned]));
  }

  bindingOf(planned: PlannedStint): Binding {
    const stint = this.stints.get(planned.stint);
    const earliest = stint === undefined ? [] : this.earliest(stint, planned);
    const least = earliest.reduce<Earliest | null>((a, b) => (a === null || b.slackS < a.slackS ? b : a), null);
    if (least === null) {
      return {
        stint: planned.stint,
        kind: 'free',
        slackS: planned.startS,
        words: 'nothing comes before it',
        waitsFor: null,
      };
    }
    if (least.slackS <= 0)
      return { stint: planned.stint, kind: 'tight', slackS: 0, words: least.words, waitsFor: least.waitsFor };
    const later = stint === undefined ? null : this.lateOnPurpose(stint, planned);
    if (later !== null && later.slackS < least.slackS) {
      return {
        stint: planned.stint,
        kind: 'late on purpose',
        slackS: later.slackS,
        words: later.words,
        waitsFor: null,
      };
    }
    return {
      stint: planned.stint,
      kind: 'free',
      slackS: least.slackS,
      words: `free by ${formatDuration(least.slackS)}; then ${least.words}`,
      waitsFor: least.waitsFor,
    };
  }

  private title(key: string): string {
    return `"${this.stints.get(key)?.title ?? key}"`;
  }

  private earliest(stint: Stint, planned: PlannedStint): readonly Earliest[] {
    return [
      ...this.people(stint, planned),
      ...this.arms(stint, planned),
      ...this.orders(stint, planned),
      ...this.states(stint, planned),
      ...this.windows(stint, planned),
      ...this.pins(planned),
    ];
  }

  private people(stint: Stint, planned: PlannedStint): readonly Earliest[] {
    return stint.roles.flatMap((role, index): Earliest[] => {
      const person = planned.assigned[index];
      if (person === undefined || role.name === 'arm') return [];
      const startS = stepStart(planned, role.fromStep);
      const course = personCourse(this.campaign, this.eva, person).filter((stretch) => stretch.kind !== 'wait');
      const here = course.findIndex((stretch) => stretch.stint?.key === stint.key && stretch.role === index);
      const before = course[here - 1];
      if (before === undefined) return [];
      // A move may start at leisure: what counts is when the work before it ended.
      const moveS = before.kind === 'move' ? before.endS - before.startS : 0;
      const from = before.kind === 'move' ? course[here - 2] : before;
      const readyS = (from?.endS ?? 0) + moveS + this.restraintS(from, role);
      const what = from?.stint == null ? 'out of the hatch' : `from ${this.title(from.stint.key)}`;
      return [{ slackS: startS - readyS, words: `${person} comes ${what}`, waitsFor: from?.stint?.key ?? null }];
    });
  }

  /** Getting out of one restraint and into the next, where they are not the same one. */
  private restraintS(from: Stretch | undefined, role: Role): number {
    const before = from?.stint?.roles[from.role ?? 0];
    const isSame = before !== undefined && before.restraint === role.restraint && before.to === role.at;
    if (isSame) return 0;
    const { restraintEgressS, restraintIngressS } = this.campaign.limits;
    return (
      (before === undefined || before.restraint === null ? 0 : (restraintEgressS ?? 0)) +
      (role.restraint === null ? 0 : (restraintIngressS ?? 0))
    );
  }

  private arms(stint: Stint, planned: PlannedStint): readonly Earliest[] {
    return stint.roles.flatMap((role, index): Earliest[] => {
      const arm = planned.assigned[index];
      if (arm === undefined || role.name !== 'arm') return [];
      const startS = stepStart(planned, role.fromStep);
      const works = this.eva.stints.filter(
        (other) =>
          other.stint !== stint.key &&
          other.endS <= startS &&
          this.stints
            .get(other.stint)
            ?.roles.some((candidate, at) => candidate.name === 'arm' && other.assigned[at] === arm),
      );
      const last = works.reduce<PlannedStint | null>((a, b) => (a === null || b.endS > a.endS ? b : a), null);
      const moves = this.eva.moves.filter(
        (move) => move.who === arm && move.startS >= (last?.endS ?? 0) && move.endS <= startS,
      );
      const moveS = moves.reduce((sum, move) => sum + move.endS - move.startS, 0);
      if (last === null && moves.length === 0) return [];
      return [
        {
          slackS: startS - (last?.endS ?? 0) - moveS,
          words:
            last === null ? `${arm} comes from where it was parked` : `${arm} comes from ${this.title(last.stint)}`,
          waitsFor: last?.stint ?? null,
        },
      ];
    });
  }

  private orders(stint: Stint, planned: PlannedStint): readonly Earliest[] {
    const task = this.campaign.tasks.find((candidate) => candidate.id === stint.task);
    const found: Earliest[] = [];
    const add = (first: string, lagS: number, words: string): void => {
      const other = this.planned.get(first);
      if (other !== undefined) found.push({ slackS: planned.startS - other.endS - lagS, words, waitsFor: first });
    };
    for (const join of this.campaign.tasks.flatMap((candidate) => candidate.joins)) {
      if (join.waits === stint.key)
        add(join.releases, 0, `it waits for the call "${join.title}" from ${this.title(join.releases)}`);
    }
    for (const after of stint.after) {
      add(
        after.stint,
        after.leastS,
        `it comes at least ${formatDuration(after.leastS)} after ${this.title(after.stint)}`,
      );
    }
    if (task?.order === 'written') {
      const at = task.stints.findIndex((candidate) => candidate.key === stint.key);
      const named = (candidate: Stint): readonly string[] =>
        candidate.roles.flatMap((role) => (role.candidates.length === 1 ? [...role.candidates] : []));
      const before = task.stints
        .slice(0, at)
        .findLast((candidate) => named(candidate).some((id) => named(stint).includes(id)));
      if (before !== undefined) add(before.key, 0, `it is written after ${this.title(before.key)}`);
    }
    for (const pin of this.campaign.pins) {
      if (pin.kind === 'order' && pin.then === stint.key)
        add(pin.first, 0, `it is pinned after ${this.title(pin.first)}`);
    }
    return found;
  }

  /** What it needs was left by somebody; what it changes was needed by somebody before. */
  private states(stint: Stint, planned: PlannedStint): readonly Earliest[] {
    const effects = this.hardware.effects.get(stint.key);
    const found: Earliest[] = [];
    const writes = stateWrites(this.campaign, this.hardware, this.eva);
    for (const need of effects?.needs ?? []) {
      const needS = need.when === 'end' ? planned.endS : stepStart(planned, need.fromStep);
      const write = writes.findLast(
        (candidate) => candidate.variable === need.variable && candidate.petS <= needS && candidate.by !== stint.key,
      );
      if (write === undefined || write.petS < 0) continue;
      const words = this.stints.has(write.by)
        ? `${need.variable} is ${write.value} from ${this.title(write.by)} on`
        : `${need.variable} is ${write.value} from ${write.by} on`;
      found.push({ slackS: needS - write.petS, words, waitsFor: this.stints.has(write.by) ? write.by : null });
    }
    const changed = new Map(
      (effects?.holds ?? []).map((hold) => [hold.variable, stepStart(planned, hold.fromStep)] as const),
    );
    for (const other of this.eva.stints) {
      if (other.stint === stint.key) continue;
      for (const need of this.hardware.effects.get(other.stint)?.needs ?? []) {
        const changeS = changed.get(need.variable);
        if (changeS === undefined) continue;
        const untilS = need.when === 'during' ? (other.stepEndsS[need.toStep - 1] ?? other.endS) : other.startS;
        if (untilS > changeS) continue;
        found.push({
          slackS: changeS - untilS,
          words: `${this.title(other.stint)} needs ${need.variable} ${need.allowed.join(' or ')} until then`,
          waitsFor: other.stint,
        });
      }
    }
    return found;
  }

  private windows(stint: Stint, planned: PlannedStint): readonly Earliest[] {
    return stint.windowUses.flatMap((use): Earliest[] => {
      const window = this.campaign.windows.find((candidate) => candidate.id === use.window);
      if (window === undefined || use.prefers) return [];
      const fromS = use.part === 'steps' ? stepStart(planned, use.fromStep) : planned.startS;
      const edges = window.intervals.map(([from, to]) =>
        use.mode === 'inside'
          ? (from - this.eva.petZeroUtcMs) / 1000 + window.padS
          : (to - this.eva.petZeroUtcMs) / 1000 + window.padS,
      );
      const edge = edges.findLast((s) => s <= fromS);
      if (edge === undefined) return [];
      // The planner works on a grid of 10 s: less than that is tight.
      const slackS = Math.floor((fromS - edge) / 10) * 10;
      return [
        {
          slackS,
          words: `${window.title} ${use.mode === 'inside' ? 'begins' : 'ends'} at PET ${formatPet(Math.round(edge))}, its pad counted`,
          waitsFor: null,
        },
      ];
    });
  }

  private pins(planned: PlannedStint): readonly Earliest[] {
    const pin = this.campaign.pins.find((candidate) => candidate.kind === 'start' && candidate.stint === planned.stint);
    return pin === undefined
      ? []
      : [{ slackS: 0, words: `it is pinned to PET ${formatPet(planned.startS)}`, waitsFor: null }];
  }

  /** How much sooner before a clock that it starts, or a request that it uses first, would run over. */
  private lateOnPurpose(stint: Stint, planned: PlannedStint): { slackS: number; words: string } | null {
    const found: { slackS: number; words: string }[] = [];
    const writes = stateWrites(this.campaign, this.hardware, this.eva);
    for (const clock of this.campaign.clocks) {
      if (clock.sense !== 'most') continue;
      const start = writes.find(
        (write) =>
          write.by === stint.key && write.variable === clock.start.variable && clock.start.values.includes(write.value),
      );
      const stop =
        start &&
        writes.find(
          (write) =>
            write.petS >= start.petS &&
            write.variable === clock.stop.variable &&
            clock.stop.values.includes(write.value),
        );
      if (start === undefined || stop === undefined) continue;
      found.push({
        slackS: clock.limitS - (stop.petS - start.petS),
        words: `late on purpose: ${clock.title} would run over ${formatDuration(clock.limitS)}`,
      });
    }
    for (const hold of this.eva.holds) {
      const request = this.campaign.requests.find((candidate) => candidate.id === hold.request);
      if (request === undefined || request.longestHoldS === null) continue;
      const isFirst = hold.firstUseS >= planned.startS && hold.firstUseS <= planned.endS;
      if (
        !isFirst ||
        !(this.hardware.effects.get(stint.key)?.controls.some((control) => control.request === hold.request) ?? false)
      )
        continue;
      found.push({
        slackS: request.longestHoldS - (hold.clearedS - hold.verifiedS),
        words: `late on purpose: ${request.title} would be held over ${formatDuration(request.longestHoldS)}`,
      });
    }
    return found.reduce<{ slackS: number; words: string } | null>(
      (a, b) => (a === null || b.slackS < a.slackS ? b : a),
      null,
    );
  }
}
