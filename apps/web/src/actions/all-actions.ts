import type { Action } from './action.ts';
import { strokeOf } from './action.ts';
import { documentActions } from './document-actions.ts';
import { planActions } from './plan-actions.ts';
import { stintActions } from './stint-actions.ts';
import { viewActions } from './view-actions.ts';

export const ALL_ACTIONS: readonly Action[] = [...documentActions, ...planActions, ...viewActions, ...stintActions];

export function actionNamed(id: string): Action {
  const found = ALL_ACTIONS.find((action) => action.id === id);
  if (found === undefined) throw new TypeError(`no action ${id}`);
  return found;
}

/** Keys of the whole page. A field that a person types in keeps its own. */
export function listenForKeys(): void {
  document.addEventListener('keydown', (event) => {
    if (event.defaultPrevented) return;
    const target = event.target as HTMLElement | null;
    const isTyping =
      target?.closest(
        'input:not([type=range], [type=checkbox]), textarea, select, [contenteditable="true"], [role=listbox], [role=menu], [role=dialog]',
      ) != null;
    const stroke = strokeOf(event);
    const action = ALL_ACTIONS.find(
      (one) => one.keys?.includes(stroke) === true && (!isTyping || one.evenWhileTyping === true) && one.isPossible(),
    );
    if (action === undefined) return;
    // Arrows belong to a list, grid or slider that has the focus.
    if (
      stroke.includes('Arrow') &&
      target?.closest('[role=grid], [role=slider], [role=tablist], [role=radiogroup], input, .keeps-arrows') != null
    )
      return;
    event.preventDefault();
    action.run();
  });
}
