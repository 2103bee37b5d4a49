/**
 * The events of stints: start, end, and the ends of steps that something hangs on. Between them the lengths are the stint's
 * bounds, shared out over its steps as the planning figures are. Within a stint the crew goes on without a pause, except before
 * a step at which somebody joins, a request comes into use, a window opens or a call is waited for.
 */
import type { StintEffects } from '../../hardware/effects.ts';
import type { Placed } from '../replay/replay-context.ts';
import type { NetworkDraft } from './network-draft.ts';

export function stintEvents(draft: NetworkDraft): void {
  for (const placed of draft.placed) drawStint(draft, placed);
}

function drawStint(draft: NetworkDraft, placed: Placed): void {
  const { stint, planned, steps } = placed;
  if (draft.boundaries.has(stint.key)) return;
  const pauses = pausesOf(draft, placed);
  const marks = [...new Set([0, steps, ...pauses, ...marksOf(draft, placed)])].filter((at) => at >= 0 && at <= steps);
  marks.sort((a, b) => a - b);
  const events = new Map<number, number>();
  draft.boundaries.set(stint.key, events);
  const { boundsS, spread, span } = stint.duration;
  const shares = sharesOf(placed);
  const paceOf = (step: number): number => slowest(draft, placed, step);
  let before = -1;
  marks.forEach((mark, index) => {
    const lanes = lanesAround(placed, mark);
    const words =
      mark === 0
        ? `the start of "${stint.title}"`
        : mark === steps
          ? `the end of "${stint.title}"`
          : `step ${mark} of "${stint.title}" done`;
    const of = { stint: stint.key, boundary: mark };
    const end = draft.event(words, draft.plannedBoundaryS(placed, mark), lanes, of);
    if (index > 0) {
      const from = marks[index - 1] as number;
      let [leastS, mostS, figureS] = [0, 0, 0];
      for (let step = from; step < mark; step++) {
        const share = (shares[step] as number) * paceOf(step);
        leastS += boundsS[0] * share;
        mostS += boundsS[1] * share;
        figureS += stint.duration.agreedS * share;
      }
      const who = planned.assigned.join(' and ');
      const part =
        from === 0 && mark === steps ? '' : from + 1 === mark ? `, step ${mark}` : `, steps ${from + 1} to ${mark}`;
      draft.length(before, end, [leastS, mostS], {
        kind: 'work',
        reason: `"${stint.title}"${part} (${who})`,
        bounded: spread !== null,
        plannedS: figureS,
        span,
      });
    }
    events.set(mark, end);
    before = end;
    if (!pauses.has(mark) || mark === 0 || mark === steps) return;
    // The crew may wait here: the next step has a start of its own.
    const go = draft.event(`the start of step ${mark + 1} of "${stint.title}"`, draft.at(end).plannedS, lanes, of);
    draft.link(end, go, 0, null, 'own', `step ${mark + 1} of "${stint.title}" follows step ${mark}`, stint.span);
    events.set(mark + 0.5, go);
    before = go;
  });
}

/** The event at which step k starts: where the crew may wait before it, after the wait. */
export function stepStartEvent(draft: NetworkDraft, placed: Placed, step: number): number {
  return draft.boundaries.get(placed.stint.key)?.get(step + 0.5) ?? draft.boundary(placed, step);
}

function pausesOf(draft: NetworkDraft, placed: Placed): ReadonlySet<number> {
  const { stint, effects, steps } = placed;
  const pauses = new Set<number>();
  for (const role of stint.roles) if (role.fromStep > 0 && role.fromStep < steps) pauses.add(role.fromStep);
  for (const control of effects?.controls ?? []) if (control.fromStep > 0) pauses.add(control.fromStep);
  for (const use of stint.windowUses) if (use.part === 'steps' && use.fromStep > 0) pauses.add(use.fromStep);
  stint.steps.forEach((step, index) => {
    if (step.hear !== null && index > 0) pauses.add(index);
  });
  for (const { waits, waitsStep = 0 } of draft.options.holds ?? []) {
    if (waits === stint.key && waitsStep > 0 && waitsStep < steps) pauses.add(waitsStep);
  }
  return pauses;
}

function marksOf(draft: NetworkDraft, { stint, effects, steps }: Placed): number[] {
  const marks: number[] = [];
  for (const { releases, releasesSteps } of draft.options.holds ?? []) {
    if (releases === stint.key && releasesSteps !== undefined) marks.push(releasesSteps);
  }
  for (const { fromStep, toStep } of stint.roles) marks.push(fromStep, toStep);
  for (const use of stint.windowUses) if (use.part === 'steps') marks.push(use.fromStep, use.toStep);
  if (effects !== null) marks.push(...effectMarks(effects, steps));
  return marks.map((mark) => Math.min(mark, steps));
}

function effectMarks(effects: StintEffects, steps: number): number[] {
  const marks: number[] = [];
  for (const need of effects.needs) {
    if (need.when === 'during') marks.push(need.fromStep, Math.max(need.toStep, need.fromStep + 1));
  }
  for (const leave of effects.leaves) marks.push(leave.step < 0 ? 0 : Math.min(leave.step + 1, steps));
  for (const hold of effects.holds) marks.push(hold.fromStep, hold.toStep);
  for (const control of effects.controls) marks.push(control.fromStep, control.toStep);
  for (const { steps: used } of effects.tools) {
    if (used.length > 0) marks.push(Math.min(...used), Math.max(...used) + 1);
  }
  return marks;
}

/** Share of the whole that each step takes by the planning figures; they sum to 1. */
function sharesOf({ stint, steps }: Placed): readonly number[] {
  const { stepsS } = stint.duration;
  const sum = stepsS.reduce((total, stepS) => total + stepS, 0);
  if (stepsS.length === steps && sum > 0) return stepsS.map((stepS) => stepS / sum);
  return Array.from({ length: steps }, () => 1 / steps);
}

/** Bodies that take part just before or just after a boundary. */
function lanesAround({ stint, planned, steps }: Placed, mark: number): readonly string[] {
  return stint.roles.flatMap((role, index) => {
    const whole = role.toStep <= role.fromStep || stint.steps.length === 0;
    const takesPart = whole || (role.fromStep <= mark && mark <= Math.min(role.toStep, steps));
    const body = planned.assigned[index];
    return takesPart && body !== undefined ? [body] : [];
  });
}

/** Joint steps go at the pace of the slower person. */
function slowest(draft: NetworkDraft, { stint, planned }: Placed, step: number): number {
  const paces = stint.roles.flatMap((role, index) => {
    const whole = role.toStep <= role.fromStep || stint.steps.length === 0;
    if (!whole && (step < role.fromStep || step >= role.toStep)) return [];
    const person = draft.context.people.get(planned.assigned[index] ?? '');
    return person?.role === 'outside' ? [person.pace] : [];
  });
  return paces.length === 0 ? 1 : Math.max(...paces);
}
