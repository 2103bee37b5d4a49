/**
 * The writes that start or stop a clock. A write is a change only where the variable had another value before; mostly the
 * stint's own need says that it had, or that it had not. Where it does not, a condition says so in the model: an instant at
 * the beginning of the write that needs the value before to be, or not to be, among those of the clock.
 */
import { startOf } from '@handrail/solver/model/build-model';
import type { Literal, Point } from '@handrail/solver/model/model';
import type { StateChange } from '../../campaign/campaign.ts';
import type { EvaDraft, StintDraft, StintForm } from '../eva-draft.ts';
import type { FormUse } from './post-states.ts';

export interface Change {
  readonly stint: StintDraft;
  readonly form: StintForm;
  readonly boundary: number;
  readonly at: Point;
  readonly presence: Literal;
  /** False: it may find the value there already; then it starts or stops nothing. */
  readonly isCertain: boolean;
  readonly variable: string;
  readonly values: readonly string[];
  /** Boundary at which the stint begins to hold the variable. */
  readonly heldFrom: number;
}

export function clockChanges(
  draft: EvaDraft,
  uses: ReadonlyMap<string, readonly FormUse[]>,
  { variable, values }: StateChange,
): Change[] {
  const found: Change[] = [];
  for (const { stint, form, use } of uses.get(variable) ?? []) {
    for (const [index, { at, value }] of (use.write?.writes ?? []).entries()) {
      if (!values.includes(value)) continue;
      const before = valuesBefore(use, index);
      const mayBeNew = before === null || before.some((one) => !values.includes(one));
      if (!mayBeNew) continue;
      found.push({
        stint,
        form,
        boundary: at,
        at: draft.boundary(form, at),
        presence: draft.builder.intervalAt(form.interval).presence ?? stint.presence,
        isCertain: before?.every((one) => !values.includes(one)) ?? false,
        variable,
        values,
        heldFrom: use.write?.from ?? at,
      });
    }
  }
  return found;
}

/** What the variable can have been just before a write, as far as the stint itself says; null: it does not say. */
function valuesBefore(use: FormUse['use'], index: number): readonly string[] | null {
  const own = use.write?.writes[index - 1];
  if (own !== undefined) return [own.value];
  const need = use.needs.find(({ from, allowed }) => allowed.length > 0 && from <= (use.write?.from ?? 0));
  return need?.allowed ?? null;
}

/** A literal that can only hold where the value before the write is (`among`) or is not among those of the clock. */
export function whereBefore(draft: EvaDraft, change: Change, among: boolean): Literal {
  const { variable, values, form, heldFrom, stint } = change;
  const name = `${stint.stint.key} finds ${variable} ${among ? '' : 'not '}${values.join(' or ')}`;
  const literal = draft.builder.boolean(name);
  const instant = draft.builder.interval(name, 0, { presence: literal });
  const from = draft.boundary(form, heldFrom);
  draft.before(from, startOf(instant), 0, null);
  draft.before(startOf(instant), from, 0, null);
  draft.builder.post({
    kind: 'clause',
    literals: [{ variable: literal.variable, holds: 0 }, change.presence],
    tag: null,
  });
  const conditions = draft.conditions.get(variable) ?? [];
  draft.conditions.set(variable, [...conditions, { instant, among, values }]);
  return literal;
}
