import type { Campaign, Task } from '@handrail/eva/campaign/campaign';
import { replacePins } from '@handrail/eva/campaign/edit/edit-pins';
import { change } from '../../document/document-store.ts';
import { editableText } from '../../document/editable-text.ts';
import { tell } from '../../session/session-store.ts';

/** Everything from `at` on is pinned out; nothing before it is. One step of the text; the plan stays until it is planned again. */
export function moveCut(campaign: Campaign, tasks: readonly Task[], at: number): void {
  const file = editableText();
  if (file === null) return;
  const cut = tasks.slice(at).map(({ id }) => id);
  const pinned = campaign.pins.filter((pin) => pin.kind === 'out');
  const edits = replacePins(
    file,
    pinned.filter(({ task }) => !cut.includes(task)),
    cut.filter((task) => !pinned.some((pin) => pin.task === task)).map((task) => ({ kind: 'out', task })),
  );
  change('Move the cut rule', { edits });
  tell(
    `${cut.length} ${cut.length === 1 ? 'task is' : 'tasks are'} below the cut rule. Plan again to see what that gives.`,
  );
}
