import type { Campaign } from '../campaign/campaign.ts';
import type { Finding } from '../finding/finding.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import type { KindsLibrary } from '../kinds/kinds-library.ts';
import { replayTimeline } from '../proof/replay/replay-timeline.ts';
import { ruleFacts } from '../rules/rule-facts.ts';
import { runRules } from '../rules/run-rules.ts';
import { rules } from '../rules/rules.generated.ts';
import type { EvaTimeline, Timeline } from '../timeline/timeline.ts';
import { type LaterFit, laterFit } from './later-fit.ts';
import { startingLate, waitingFrom } from './shift-timeline.ts';

/** What a late egress breaks in one EVA. */
export interface EvaSlip {
  readonly eva: string;
  readonly petZeroUtcMs: number;
  /** How late PET 0 may be by the text. */
  readonly statedSlipS: number;
  readonly rows: readonly SlipRow[];
  /** Latest of the steps up to which nothing breaks at all. null: not even on time. */
  readonly cleanUntilS: number | null;
  /** Latest of the steps up to which every row is acceptable. null: not even on time. */
  readonly lastAcceptableS: number | null;
}
export interface SlipRow {
  readonly lateS: number;
  /** Findings that the plan kept at its PET times has then and not when on time, by time. */
  readonly breaks: readonly Finding[];
  /** Waits that put broken windows right, in the order in which they were tried; everybody waits. */
  readonly waits: readonly LaterFit[];
  /** Findings at error level that stay with the waits taken, and those that the waits bring. */
  readonly left: readonly Finding[];
  /** Both in, with the waits taken. */
  readonly bothInS: number;
  /** null: no wall is stated. */
  readonly beforeTheWallS: number | null;
  /** Tasks that have to go, with the reason: what has lost its window for good, then the cut order as far as time is short. */
  readonly cut: readonly { readonly task: string; readonly why: string }[];
  /** Nothing at error level is left with the waits taken, and both are in before the wall where one is stated. */
  readonly acceptable: boolean;
}
export interface SlipInput {
  readonly campaign: Campaign;
  readonly hardware: HardwareModel;
  readonly library: KindsLibrary;
  readonly timeline: Timeline;
}

/** Rules that ask what the sky or the clock on the wall does at a time; the replay asks the rest. */
const SUBJECTS = new Set(['radio', 'radiation', 'light', 'sky']);
/** Says no more than that the start is late, which is the question here. */
const PET_ZERO_RULE = 'replay/pet-zero-is-as-stated';
const WINDOW_RULES = new Set(['replay/work-is-inside-its-window', 'replay/work-is-outside-the-window']);
const MOST_WAITS = 4;

/**
 * For each late egress: what breaks, which waits mend it, what has to be cut, and the last acceptable egress.
 *
 * The plan keeps its PET times and its PET 0 moves, one EVA at a time; windows, events and granted times stay in UTC. Each
 * start is replayed in full and judged by the rules of radio, light and radiation; what is new against the start on time is a
 * break. Where a window is missed, everything from that stint on is moved into the next interval it fits and the whole is
 * replayed again, so a wait that breaks a clock, another window or the wall says so. Waiting is one way out of a late start,
 * not the best one: planning again may find another.
 * @param lateS steps, s; 0 is added when absent
 * @checked tests/scenarios/slip/slip-table.test.ts
 */
export function slipTable(input: SlipInput, lateS: readonly number[]): readonly EvaSlip[] {
  const steps = [...new Set([0, ...lateS])].sort((a, b) => a - b);
  return input.timeline.evas.map((plan) => {
    const onTime = judged(input, startingLate(input.timeline, plan.eva, 0), plan.eva);
    const rows = steps.map((late) => slipRow(input, plan.eva, late, onTime));
    const until = (holds: (row: SlipRow) => boolean): number | null => {
      const bad = rows.findIndex((row) => !holds(row));
      return rows[(bad < 0 ? rows.length : bad) - 1]?.lateS ?? null;
    };
    return {
      eva: plan.eva,
      petZeroUtcMs: plan.petZeroUtcMs,
      statedSlipS: input.campaign.evas.find(({ id }) => id === plan.eva)?.slipS ?? 0,
      rows,
      cleanUntilS: until((row) => row.breaks.length === 0),
      lastAcceptableS: until((row) => row.acceptable),
    };
  });
}

function slipRow(input: SlipInput, eva: string, lateS: number, onTime: readonly Finding[]): SlipRow {
  let timeline = startingLate(input.timeline, eva, lateS);
  let found = newAgainst(onTime, judged(input, timeline, eva));
  const breaks = found;
  const waits: LaterFit[] = [];
  const lost = new Set<string>();
  for (let k = 0; k < MOST_WAITS; k++) {
    const plan = planOf(timeline, eva);
    const missed = found.find(
      ({ rule, severity, where }) =>
        severity === 'error' && WINDOW_RULES.has(rule) && where.stint !== null && !lost.has(where.stint),
    );
    const stint = missed?.where.stint;
    if (missed === undefined || stint === undefined || stint === null || plan === undefined) break;
    const fit = fitOf(input.campaign, plan, stint, missed);
    if (fit === null) {
      lost.add(stint);
      continue;
    }
    waits.push(fit);
    const waited = waitingFrom(plan, fit.startS - fit.waitS, fit.waitS);
    timeline = { ...timeline, evas: timeline.evas.map((one) => (one.eva === eva ? waited : one)) };
    found = newAgainst(onTime, judged(input, timeline, eva));
  }
  const plan = planOf(timeline, eva);
  const left = found.filter(({ severity }) => severity === 'error');
  const bothInS = plan?.bothInS ?? 0;
  const beforeTheWallS = plan?.wall == null ? null : plan.wall.petS - bothInS;
  return {
    lateS,
    breaks,
    waits,
    left,
    bothInS,
    beforeTheWallS,
    cut: plan === undefined ? [] : cutOf(input.campaign, plan, lost, beforeTheWallS),
    acceptable: left.length === 0 && (beforeTheWallS ?? 0) >= 0,
  };
}

function planOf(timeline: Timeline, eva: string): EvaTimeline | undefined {
  return timeline.evas.find((one) => one.eva === eva);
}

/** Findings of one EVA or of none in particular: the replay of the plan so far, and the rules on that EVA alone. */
function judged({ campaign, hardware, library }: SlipInput, timeline: Timeline, eva: string): readonly Finding[] {
  const alone = { ...timeline, evas: timeline.evas.filter((one) => one.eva === eva) };
  const asked = rules.filter(({ id }) => SUBJECTS.has(id.split('/')[0] ?? ''));
  const now = alone.evas[0]?.petZeroUtcMs ?? 0;
  return [
    ...replayTimeline(campaign, hardware, timeline),
    ...runRules(ruleFacts(campaign, hardware, library, alone), now, asked),
  ].filter(({ rule, where }) => (where.eva === eva || where.eva === null) && rule !== PET_ZERO_RULE);
}

/** What is there now and was not on time, worst first, then by time. Times in the words may differ; the place may not. */
function newAgainst(before: readonly Finding[], now: readonly Finding[]): readonly Finding[] {
  const known = new Map<string, number>();
  const keyOf = ({ rule, severity, where }: Finding): string =>
    [rule, severity, where.person, where.stint, where.step, where.span?.line].join('|');
  for (const finding of before) known.set(keyOf(finding), (known.get(keyOf(finding)) ?? 0) + 1);
  const weight = { error: 0, unknown: 1, warning: 2, note: 3 };
  return now
    .filter((finding) => {
      const count = known.get(keyOf(finding)) ?? 0;
      known.set(keyOf(finding), count - 1);
      return count <= 0 && finding.waiver === null;
    })
    .sort((a, b) => weight[a.severity] - weight[b.severity] || (a.where.petS ?? 0) - (b.where.petS ?? 0));
}

function fitOf(campaign: Campaign, plan: EvaTimeline, key: string, missed: Finding): LaterFit | null {
  const planned = plan.stints.find(({ stint }) => stint === key);
  const use = campaign.tasks
    .flatMap((task) => task.stints)
    .find((stint) => stint.key === key)
    ?.windowUses.find(({ span }) => span.line === missed.where.span?.line && span.file === missed.where.span.file);
  return planned === undefined || use === undefined ? null : laterFit(campaign, plan, planned, use);
}

function cutOf(
  campaign: Campaign,
  plan: EvaTimeline,
  lost: ReadonlySet<string>,
  beforeTheWallS: number | null,
): SlipRow['cut'] {
  const cut = new Map<string, string>();
  for (const stint of lost) {
    const task = stint.split('/')[0] ?? stint;
    cut.set(task, 'no later interval of its window fits it in this EVA');
  }
  let shortS = Math.max(0, -(beforeTheWallS ?? 0));
  for (const task of campaign.cutOrders.find((order) => order.eva === plan.eva)?.tasks ?? []) {
    const stints = plan.stints.filter(({ stint }) => stint.startsWith(`${task}/`));
    if (shortS <= 0) break;
    if (stints.length === 0 || cut.has(task)) continue;
    const savedS = Math.max(...sumPerPerson(stints).values());
    cut.set(
      task,
      `first in the cut order that is planned; gives back about ${Math.round(savedS / 60)} min, travel not counted`,
    );
    shortS -= savedS;
  }
  return [...cut].map(([task, why]) => ({ task, why }));
}

function sumPerPerson(stints: EvaTimeline['stints']): ReadonlyMap<string, number> {
  const sums = new Map<string, number>();
  for (const { assigned, startS, endS } of stints) {
    for (const person of new Set(assigned)) sums.set(person, (sums.get(person) ?? 0) + endS - startS);
  }
  return sums;
}
