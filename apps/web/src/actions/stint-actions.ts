import { addPin, type NewPin, replacePins } from '@handrail/eva/campaign/edit/edit-pins';
import { formatPet } from '@handrail/quantity/time';
import { giveStint } from '@handrail/eva/timeline/edit/give-stint';
import type { TimelineEdit } from '@handrail/eva/timeline/edit/hand-edit';
import { moveStint } from '@handrail/eva/timeline/edit/move-stint';
import type { PlannedStint } from '@handrail/eva/timeline/timeline';
import { derivedStore } from '../derived/derived-store.ts';
import { change, documentStore } from '../document/document-store.ts';
import { editableText } from '../document/editable-text.ts';
import { look, sessionStore, tell } from '../session/session-store.ts';
import { type Action, defineAction } from './action.ts';

interface Chosen {
  readonly eva: string;
  readonly planned: PlannedStint;
}

/** The selected stint as planned; null: none is. */
export function chosenStint(): Chosen | null {
  const { selection } = sessionStore.getState();
  const { timeline } = documentStore.getState().copy;
  if (selection?.what !== 'stint' || timeline === null) return null;
  for (const eva of timeline.evas) {
    const planned = eva.stints.find(({ stint }) => stint === selection.id);
    if (planned !== undefined) return { eva: eva.eva, planned };
  }
  return null;
}

/** A hand edit of the plan, as one step. */
export function editPlan(label: string, edit: TimelineEdit): void {
  const { campaign, hardware } = derivedStore.getState().opening.value ?? {};
  const { timeline } = documentStore.getState().copy;
  if (campaign == null || hardware == null || timeline === null) return;
  const edited = edit({ campaign, hardware }, timeline);
  if (edited !== timeline) change(label, { edits: [], timeline: edited });
}

/** The other person outside; null: there is none. */
export function otherOutside(person: string): string | null {
  const people = derivedStore.getState().opening.value?.campaign?.people ?? [];
  return people.find(({ id, role }) => role === 'outside' && id !== person)?.id ?? null;
}

function step(byS: number, pushesLater: boolean): void {
  const chosen = chosenStint();
  if (chosen === null) return;
  const startS = chosen.planned.startS + byS;
  editPlan('Move a stint', moveStint({ stint: chosen.planned.stint, startS, pushesLater }));
  look({ minuteS: startS });
  tell(`Starts at PET ${formatPet(startS)}`);
}

function walk(by: 1 | -1, sameLane: boolean): void {
  const { timeline } = documentStore.getState().copy;
  const eva = timeline?.evas.find((one) => one.eva === sessionStore.getState().evaId);
  if (eva === undefined) return;
  const chosen = chosenStint()?.planned ?? null;
  const people = chosen === null || !sameLane ? null : new Set(chosen.assigned);
  const order = eva.stints
    .filter(
      ({ stint, assigned }) => people === null || stint === chosen?.stint || assigned.some((who) => people.has(who)),
    )
    .toSorted((a, b) => a.startS - b.startS || (a.stint < b.stint ? -1 : 1));
  const at = order.findIndex(({ stint }) => stint === chosen?.stint);
  const next = order[at < 0 ? (by > 0 ? 0 : order.length - 1) : at + by];
  if (next !== undefined) look({ selection: { what: 'stint', id: next.stint }, minuteS: next.startS });
}

function crossOver(): void {
  const chosen = chosenStint();
  const { timeline } = documentStore.getState().copy;
  const eva = timeline?.evas.find((one) => one.eva === chosen?.eva);
  if (chosen === null || eva === undefined) return;
  const other = otherOutside(chosen.planned.assigned[0] ?? '');
  const near = eva.stints
    .filter(({ assigned, stint }) => other !== null && assigned.includes(other) && stint !== chosen.planned.stint)
    .toSorted((a, b) => Math.abs(a.startS - chosen.planned.startS) - Math.abs(b.startS - chosen.planned.startS))[0];
  if (near !== undefined) look({ selection: { what: 'stint', id: near.stint }, minuteS: near.startS });
}

function give(): void {
  const chosen = chosenStint();
  if (chosen === null) return;
  const [from = ''] = chosen.planned.assigned;
  const to = otherOutside(from);
  if (to === null) return;
  editPlan('Give a stint to the other person', giveStint({ stint: chosen.planned.stint, from, to }));
  tell(`${chosen.planned.stint} is now ${to}'s`);
}

function pin(make: (chosen: Chosen) => NewPin): void {
  const chosen = chosenStint();
  if (chosen === null) return;
  const file = editableText();
  if (file === null) return;
  const made = make(chosen);
  change('Pin', { edits: [addPin(file, made)] });
  tell(`Pinned: ${made.kind === 'start' ? `start at PET ${formatPet(made.petS)}` : made.kind}`);
}

/** The stint of the same people that ends before the chosen one; null: none does. */
function stintBefore(): PlannedStint | null {
  const chosen = chosenStint();
  const eva = documentStore.getState().copy.timeline?.evas.find((one) => one.eva === chosen?.eva);
  if (chosen === null || eva === undefined) return null;
  const earlier = eva.stints.filter(
    ({ stint, startS, assigned }) =>
      stint !== chosen.planned.stint &&
      startS < chosen.planned.startS &&
      assigned.some((who) => chosen.planned.assigned.includes(who)),
  );
  return earlier.toSorted((a, b) => b.startS - a.startS)[0] ?? null;
}

/** Pins of the selected stint, as the text has them. */
function pinsHere() {
  const key = chosenStint()?.planned.stint;
  const pins = derivedStore.getState().opening.value?.campaign?.pins ?? [];
  return pins.filter(
    (one) => ('stint' in one && one.stint === key) || ('first' in one && (one.first === key || one.then === key)),
  );
}

function unpin(): void {
  const file = editableText();
  if (file === null) return;
  const edits = replacePins(file, pinsHere(), []);
  if (edits.length > 0) change('Take pins away', { edits });
  tell(`${edits.length} ${edits.length === 1 ? 'pin' : 'pins'} taken away`);
}

const hasStint = (): boolean => chosenStint() !== null && sessionStore.getState().view === 'plan';
const hasPlan = (): boolean =>
  documentStore.getState().copy.timeline !== null && sessionStore.getState().view === 'plan';

function stintAction(
  id: string,
  title: string,
  keys: readonly string[],
  run: () => void,
  isPossible = hasStint,
): Action {
  return defineAction({ id, title, group: 'Stint', keys, isPossible, run });
}

export const stintActions = [
  stintAction('next-stint', 'Next stint of this person', ['ArrowRight'], () => walk(1, true), hasPlan),
  stintAction('previous-stint', 'Previous stint of this person', ['ArrowLeft'], () => walk(-1, true), hasPlan),
  stintAction('next-of-all', 'Next stint of anybody', ['n'], () => walk(1, false), hasPlan),
  stintAction('previous-of-all', 'Previous stint of anybody', ['p'], () => walk(-1, false), hasPlan),
  stintAction('other-lane', 'Across to the other person', ['ArrowUp', 'ArrowDown'], crossOver),
  stintAction('later', 'A minute later', ['alt+ArrowRight'], () => step(60, false)),
  stintAction('earlier', 'A minute earlier', ['alt+ArrowLeft'], () => step(-60, false)),
  stintAction('much-later', 'Ten minutes later', ['alt+shift+ArrowRight'], () => step(600, false)),
  stintAction('much-earlier', 'Ten minutes earlier', ['alt+shift+ArrowLeft'], () => step(-600, false)),
  stintAction('push-later', 'A minute later, and push what follows', ['shift+ArrowRight'], () => step(60, true)),
  stintAction('give', 'Give it to the other person', ['x'], give),
  stintAction('pin-start', 'Pin its start', ['s'], () =>
    pin(({ planned }) => ({ kind: 'start', stint: planned.stint, petS: planned.startS })),
  ),
  stintAction('pin-person', 'Pin who does it', ['w'], () =>
    pin(({ planned }) => ({ kind: 'person', stint: planned.stint, role: 'lead', person: planned.assigned[0] ?? '' })),
  ),
  stintAction(
    'pin-order',
    'Pin that it follows the one before',
    ['b'],
    // A pin of an order says "then" as the text does; nobody awaits it.
    // oxlint-disable-next-line unicorn/no-thenable
    () => pin(({ planned }) => ({ kind: 'order', first: stintBefore()?.stint ?? '', then: planned.stint })),
    () => hasStint() && stintBefore() !== null,
  ),
  stintAction('unpin', 'Take its pins away', ['shift+s'], unpin, () => hasStint() && pinsHere().length > 0),
  stintAction(
    'unselect',
    'Select nothing',
    ['Escape'],
    () => look({ selection: null }),
    () => sessionStore.getState().selection !== null,
  ),
];
