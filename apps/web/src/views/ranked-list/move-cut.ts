import { addPin, removePin } from '@handrail/eva/campaign/edit/edit-pins';
import type { TextEdit } from '@handrail/eva/campaign/edit/text-edit';
import { ProblemList } from '@handrail/eva/campaign/problem/problem';
import { type ParsedFile, parseFile } from '@handrail/eva/campaign/text/parse-file';
import type { Campaign, Task } from '@handrail/eva/campaign/campaign';
import { change, documentStore } from '../../document/document-store.ts';
import { applyChange, FILE_NAME } from '../../document/working-copy.ts';
import { tell } from '../../session/session-store.ts';

/** Everything from `at` on is pinned out; nothing before it is. One step of the text; the plan stays until it is planned again. */
export function moveCut(campaign: Campaign, tasks: readonly Task[], at: number): void {
  const { text, timeline } = documentStore.getState().copy;
  const parse = (now: string): ParsedFile => parseFile(FILE_NAME, now, new ProblemList());
  const file = parse(text);
  if (file.document === null) {
    tell('The text has a syntax error: mend it first');
    return;
  }
  const isBelow = (task: string): boolean => tasks.findIndex(({ id }) => id === task) >= at;
  const edits: TextEdit[] = campaign.pins
    .flatMap((pin) => (pin.kind === 'out' && !isBelow(pin.task) ? (removePin(file, pin) ?? []) : []))
    .sort((a, b) => b.at - a.at);
  const pinned = new Set(campaign.pins.flatMap((pin) => (pin.kind === 'out' ? [pin.task] : [])));
  let now = applyChange({ text, timeline }, { edits }).copy.text;
  for (const { id } of tasks.slice(at)) {
    if (pinned.has(id)) continue;
    const edit = addPin(parse(now), { kind: 'out', task: id });
    edits.push(edit);
    now = applyChange({ text: now, timeline }, { edits: [edit] }).copy.text;
  }
  change('Move the cut rule', { edits });
  const below = tasks.length - at;
  tell(`${below} ${below === 1 ? 'task is' : 'tasks are'} below the cut rule. Plan again to see what that gives.`);
}
