/**
 * Hardware states: who writes a variable holds it from the first to the last write; who needs a value finds it there and
 * keeps others from changing it. Where only one stint of the EVA ever writes a variable, each need is simply before or
 * after that write, which propagates better than the general constraint.
 */
import { endOf, not, startOf } from '@handrail/solver/model/build-model';
import type { IntervalId, Literal, Point, StateNeed, StateWriter } from '@handrail/solver/model/model';
import type { EvaDraft, StintDraft, StintForm } from '../eva-draft.ts';
import { effectsOf, petCells } from '../eva-problem.ts';
import { type StateUse, stateUse, variablesOf } from '../state-use.ts';
import type { TeamMode } from '../team-mode.ts';

export interface FormUse {
  readonly stint: StintDraft;
  readonly form: StintForm;
  readonly use: StateUse;
}
interface EventWrite {
  readonly interval: IntervalId;
  readonly value: string;
}

export function postStates(draft: EvaDraft): void {
  const events = eventIntervals(draft);
  for (const [variable, uses] of usesByVariable(draft)) {
    if (draft.problem.hardware.variables.get(variable)?.about === 'request') continue;
    postVariable(draft, variable, uses, events.get(variable) ?? []);
  }
}

export function usesByVariable(draft: EvaDraft): ReadonlyMap<string, FormUse[]> {
  const found = new Map<string, FormUse[]>();
  for (const stint of draft.stints.values()) {
    const effects = effectsOf(draft.problem, stint.stint);
    if (effects === null) continue;
    for (const variable of variablesOf(effects)) {
      const bySomebody = (mode: TeamMode) => stateUse(stint.stint, effects, variable, mode);
      const uses = stint.modes.map(({ mode }) => JSON.stringify(bySomebody(mode)));
      const forms = uses.every((use) => use === uses[0]) ? draft.forms(stint) : draft.modeForms(stint);
      const list = forms.map((form) => ({ stint, form, use: bySomebody(form.modes[0] as TeamMode) }));
      found.set(variable, [...(found.get(variable) ?? []), ...list]);
    }
  }
  return found;
}

function postVariable(
  draft: EvaDraft,
  variable: string,
  uses: readonly FormUse[],
  events: readonly EventWrite[],
): void {
  const conditions = draft.conditions.get(variable) ?? [];
  const writers = uses.filter(({ use }) => use.write !== null);
  const writingStints = new Set(writers.map(({ stint }) => stint.stint.key));
  const isLooked = conditions.length > 0 || uses.some(({ use }) => use.needs.length > 0);
  if (writers.length === 0 && events.length === 0 && conditions.length === 0) {
    postStandingValue(draft, variable, uses);
    return;
  }
  if (writingStints.size + events.length < 2 && !isLooked) return;
  const tag = `state:${variable}`;
  const initial = draft.problem.initial.get(variable) ?? 'unknown';
  const [only] = writers;
  if (only !== undefined && writers.length === 1 && events.length === 0 && conditions.length === 0) {
    const rest = uses.filter((use) => use !== only && !postAgainstSingleWrite(draft, tag, initial, only, use));
    if (rest.length === 0 && ownNeedsAreBefore(only)) {
      // Before its own write there is only what was there at PET 0.
      postStandingValue(draft, variable, [only]);
      return;
    }
  }
  postState(draft, variable, tag, initial, uses, events);
}

/** Nothing changes the variable: its needs are met all along, or never. */
function postStandingValue(draft: EvaDraft, variable: string, uses: readonly FormUse[]): void {
  const initial = draft.problem.initial.get(variable) ?? 'unknown';
  for (const one of uses) {
    const isMet = one.use.needs.every(
      ({ allowed }) => allowed.length === 0 || (initial !== 'unknown' && allowed.includes(initial)),
    );
    if (!isMet) draft.post({ kind: 'clause', literals: [not(presence(draft, one))], tag: `state:${variable}` });
  }
}

function ownNeedsAreBefore({ use }: FormUse): boolean {
  return use.needs.every(({ to }) => to <= (use.write?.from ?? 0));
}

/** True when the needs of `other` are fully said by order and presence; false when they could stand on both sides. */
function postAgainstSingleWrite(draft: EvaDraft, tag: string, initial: string, only: FormUse, other: FormUse): boolean {
  const { write } = only.use;
  if (write === null) return false;
  let settled = true;
  for (const need of other.use.needs) {
    const before = need.allowed.length === 0 || need.allowed.includes(initial);
    const after = need.allowed.length === 0 || need.allowed.includes(write.value);
    const from = draft.boundary(other.form, need.from);
    const to = draft.boundary(other.form, need.to);
    if (before && after) settled = false;
    else if (after) {
      draft.post({ kind: 'clause', literals: [not(presence(draft, other)), presence(draft, only)], tag });
      draft.before(draft.boundary(only.form, write.to), from, 0, tag);
    } else if (before) draft.before(to, draft.boundary(only.form, write.from), 0, tag);
    else draft.post({ kind: 'clause', literals: [not(presence(draft, other))], tag });
  }
  return settled;
}

function presence(draft: EvaDraft, { form, stint }: FormUse): Literal {
  return draft.builder.intervalAt(form.interval).presence ?? stint.presence;
}

function postState(
  draft: EvaDraft,
  variable: string,
  tag: string,
  initial: string,
  uses: readonly FormUse[],
  events: readonly EventWrite[],
): void {
  const values = new Map<string, number>();
  const index = (value: string) => {
    const known = values.get(value);
    if (known !== undefined) return known;
    values.set(value, values.size);
    return values.size - 1;
  };
  index(initial);
  index('unknown');
  for (const value of draft.problem.hardware.variables.get(variable)?.values ?? []) index(value);
  for (const { use } of uses) {
    for (const { allowed } of use.needs) allowed.forEach(index);
    if (use.write !== null) index(use.write.value);
  }
  for (const { value } of events) index(value);
  const anything = () => [...values.values()];
  const allowedOf = (allowed: readonly string[]) =>
    allowed.length === 0 ? anything() : allowed.filter((value) => value !== 'unknown').map(index);
  const writers: StateWriter[] = [];
  const needs: StateNeed[] = [];
  for (const event of events) {
    writers.push({ from: startOf(event.interval), to: endOf(event.interval), value: index(event.value), tag });
  }
  for (const { form, use } of uses) {
    const { write } = use;
    if (write !== null) {
      const [from, to] = [draft.boundary(form, write.from), draft.boundary(form, write.to)];
      writers.push({ from, to, value: index(write.value), tag });
    }
    for (const need of use.needs) {
      for (const part of ownParts(draft, form, use, need)) {
        needs.push({ ...part, allowed: allowedOf(need.allowed), tag });
      }
    }
  }
  for (const { instant, among, values: listed } of draft.conditions.get(variable) ?? []) {
    const at = startOf(instant);
    const allowed = [...values].filter(([value]) => listed.includes(value) === among).map(([, id]) => id);
    needs.push({ from: at, to: at, allowed, tag });
  }
  draft.post({ kind: 'state', name: variable, values: values.size, initial: index(initial), writers, needs, tag });
}

/**
 * A need of a stint that also writes the variable: what lies before its own first write is kept up to that write; what lies
 * after its last one is looked at as a stranger would, through an interval of its own; what lies between is its own business.
 */
function ownParts(
  draft: EvaDraft,
  form: StintForm,
  { write }: StateUse,
  need: { readonly from: number; readonly to: number },
): { readonly from: Point; readonly to: Point }[] {
  if (write === null) return [{ from: draft.boundary(form, need.from), to: draft.boundary(form, need.to) }];
  const parts: { from: Point; to: Point }[] = [];
  if (need.from <= write.from) {
    parts.push({ from: draft.boundary(form, need.from), to: draft.boundary(form, write.from) });
  }
  if (need.to > write.to) {
    const rest = draft.range(form, write.to, need.to);
    if (rest !== form.interval) parts.push({ from: startOf(rest), to: endOf(rest) });
  }
  return parts;
}

/** Outside events of this EVA, each over the cells in which it may fall, by the variables they change. */
function eventIntervals(draft: EvaDraft): ReadonlyMap<string, EventWrite[]> {
  const { problem, builder } = draft;
  const found = new Map<string, EventWrite[]>();
  const needed = new Set(usesByVariable(draft).keys());
  for (const event of problem.campaign.events) {
    const from = petCells(problem, event.atUtcMs, 'down');
    const to = Math.max(from + 1, petCells(problem, event.atUtcMs, 'up'));
    if (from < 0 || to > problem.horizon) continue;
    const leaves = event.leaves.filter(({ variable }) => needed.has(variable));
    if (leaves.length === 0) continue;
    const interval = builder.interval(`event ${event.id}`, to - from, { startMin: from, endMax: to });
    for (const { variable, value } of leaves) {
      found.set(variable, [...(found.get(variable) ?? []), { interval, value }]);
    }
  }
  return found;
}
