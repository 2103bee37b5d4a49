/**
 * Clocks between two changes of state. Every change that starts one is followed by a change that stops it: within the limit
 * (most), or not before it (least). Where a clock adds up over several runs, the sum of the runs obeys the limit. What starts
 * a clock that nothing in this EVA can stop is left out, unless a later EVA can stop it in time whenever in it that is.
 */
import { not } from '@handrail/solver/model/build-model';
import type { LinearTerm, Literal, Point } from '@handrail/solver/model/model';
import type { Clock } from '../../campaign/campaign.ts';
import type { EvaDraft } from '../eva-draft.ts';
import { cellsDown, cellsUp } from '../grid.ts';
import { canStopLater } from '../running-clocks.ts';
import { type Change, clockChanges, whereBefore } from './clock-changes.ts';
import { longestGap } from './longest-gap.ts';
import { usesByVariable } from './post-states.ts';

export function postClocks(draft: EvaDraft): void {
  if (draft.problem.campaign.clocks.length === 0) return;
  const uses = usesByVariable(draft);
  for (const clock of draft.problem.campaign.clocks) {
    const starts = clockChanges(draft, uses, clock.start);
    const stops = clockChanges(draft, uses, clock.stop);
    if (clock.sense === 'least') postLeast(draft, clock, starts, stops);
    else postMost(draft, clock, starts, stops);
  }
}

function postMost(draft: EvaDraft, clock: Clock, starts: readonly Change[], stops: readonly Change[]): void {
  const tag = `clock:${clock.id}`;
  const limit = cellsDown(clock.limitS);
  const addsUp = (clock.kind === 'budget' || clock.onStop === 'accumulate') && starts.length > 1;
  const runs: LinearTerm[] = [];
  postRunning(draft, clock, stops, tag);
  for (const start of starts) {
    const within = sameStint(start, stops);
    if (within !== null) {
      const length = (start.form.boundaries[within] as number) - (start.form.boundaries[start.boundary] as number);
      if (length > limit) draft.post({ kind: 'clause', literals: unless(draft, start), tag });
      if (addsUp) runs.push(fixedRun(draft, clock, start, length));
      continue;
    }
    const others = stops.filter(({ stint }) => stint !== start.stint);
    if (others.length === 0) {
      if (limit < draft.problem.horizon || !mayBeStoppedLater(draft, clock))
        draft.post({ kind: 'clause', literals: unless(draft, start), tag });
      continue;
    }
    const chosen = others.map((stop) => ({ stop, by: choice(draft, clock, start, stop, others.length) }));
    draft.post({ kind: 'clause', literals: [...unless(draft, start), ...chosen.map(({ by }) => by)], tag });
    const run = addsUp ? draft.builder.variable(`clock ${clock.id} run ${runs.length}`, 0, limit) : null;
    for (const { stop, by } of chosen) {
      draft.post({ kind: 'clause', literals: [not(by), stop.presence], tag });
      draft.before(start.at, stop.at, 0, tag, [by]);
      draft.before(stop.at, start.at, -limit, tag, [by]);
      const when = [by, start.presence];
      draft.clockRuns.push({ clock: clock.id, start: start.at, stop: stop.at, when });
      if (run !== null) postRun(draft, start.at, stop.at, run, when, tag);
    }
    if (run !== null) runs.push({ coefficient: 1, variable: run });
  }
  if (runs.length > 1) {
    draft.post({ kind: 'linear', expression: { terms: runs, constant: 0 }, bound: limit, when: [], tag });
  }
}

/** The first stop in the stint that started the clock, after the start; null: it is stopped elsewhere. */
function sameStint(start: Change, stops: readonly Change[]): number | null {
  const own = stops.filter(({ form, boundary }) => form === start.form && boundary > start.boundary);
  return own.length === 0 ? null : Math.min(...own.map(({ boundary }) => boundary));
}

/** A clock that an earlier EVA left running is stopped here, if this is the last EVA that can. */
function postRunning(draft: EvaDraft, clock: Clock, stops: readonly Change[], tag: string): void {
  if (!draft.problem.running.has(clock.id) || stops.length === 0 || mayBeStoppedLater(draft, clock)) return;
  draft.post({ kind: 'clause', literals: stops.map(({ presence }) => presence), tag });
}

function mayBeStoppedLater({ problem }: EvaDraft, clock: Clock): boolean {
  return canStopLater(problem.campaign, problem.hardware, clock, problem.eva, problem.mayFlyLater);
}

/** "The start is not there", or it finds the value there already and starts nothing. */
function unless(draft: EvaDraft, start: Change): Literal[] {
  return start.isCertain ? [not(start.presence)] : [not(start.presence), whereBefore(draft, start, true)];
}

/** "This stop stops that start". */
function choice(draft: EvaDraft, clock: Clock, start: Change, stop: Change, count: number): Literal {
  if (!stop.isCertain) return whereBefore(draft, stop, false);
  if (count === 1 && start.isCertain) return stop.presence;
  return draft.builder.boolean(`clock ${clock.id}: ${start.stint.stint.key} stopped by ${stop.stint.stint.key}`);
}

/** A run of known length: counted where its stint is present. */
function fixedRun(draft: EvaDraft, clock: Clock, { presence, stint }: Change, length: number): LinearTerm {
  const variable = draft.builder.variable(`clock ${clock.id} run in ${stint.stint.key}`, 0, length);
  draft.builder.post({
    kind: 'linear',
    expression: { terms: [{ coefficient: -1, variable }], constant: 0 },
    bound: -length,
    when: [presence],
    tag: null,
  });
  return { coefficient: 1, variable };
}

/** run ≥ stop − start, and at least what the orders between the two demand. */
function postRun(draft: EvaDraft, start: Point, stop: Point, run: number, when: readonly Literal[], tag: string): void {
  const presences = new Set(when.map(({ variable }) => variable));
  for (const point of [start, stop]) {
    const { presence } = draft.builder.intervalAt(point.interval);
    if (presence !== null) presences.add(presence.variable);
  }
  const least = longestGap(draft, start, stop, presences) ?? 0;
  if (least > 0) {
    const terms = [{ coefficient: -1, variable: run }];
    draft.post({ kind: 'linear', expression: { terms, constant: 0 }, bound: -least, when, tag });
  }
  const difference = differenceOf(draft, start, stop);
  draft.post({
    kind: 'linear',
    expression: { ...difference, terms: [...difference.terms, { coefficient: -1, variable: run }] },
    bound: 0,
    when,
    tag,
  });
}

/** stop − start as an expression. */
export function differenceOf(
  draft: EvaDraft,
  start: Point,
  stop: Point,
): { readonly terms: readonly LinearTerm[]; readonly constant: number } {
  const variableOf = ({ interval, of }: Point) => draft.builder.intervalAt(interval)[of];
  return {
    terms: [
      { coefficient: 1, variable: variableOf(stop) },
      { coefficient: -1, variable: variableOf(start) },
    ],
    constant: stop.offset - start.offset,
  };
}

/** A stop that comes after a start keeps its distance. */
function postLeast(draft: EvaDraft, clock: Clock, starts: readonly Change[], stops: readonly Change[]): void {
  const tag = `clock:${clock.id}`;
  const limit = cellsUp(clock.limitS);
  for (const start of starts) {
    for (const stop of stops) {
      if (stop.stint === start.stint) {
        if (stop.form !== start.form || stop.boundary <= start.boundary) continue;
        const [a, b] = [start.form.boundaries[start.boundary], start.form.boundaries[stop.boundary]] as [
          number,
          number,
        ];
        if (b - a < limit) draft.post({ kind: 'clause', literals: [not(start.presence)], tag });
        continue;
      }
      const after = draft.builder.boolean(`clock ${clock.id}: ${stop.stint.stint.key} after ${start.stint.stint.key}`);
      draft.before(start.at, stop.at, limit, tag, [after]);
      draft.before(stop.at, start.at, 0, tag, [not(after)]);
    }
  }
}
