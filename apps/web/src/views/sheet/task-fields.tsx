/** In which EVA the whole task is to fall: a pin of the text. Planning obeys it when it is next asked. */
import type { Campaign, Stint } from '@handrail/eva/campaign/campaign';
import { addPin, removePin } from '@handrail/eva/campaign/edit/edit-pins';
import { ProblemList } from '@handrail/eva/campaign/problem/problem';
import { parseFile } from '@handrail/eva/campaign/text/parse-file';
import { applyChange, FILE_NAME } from '../../document/working-copy.ts';
import { change, documentStore } from '../../document/document-store.ts';
import { tell } from '../../session/session-store.ts';
import styles from './sheet.module.css';

export function TaskFields({ campaign, stint }: { readonly campaign: Campaign; readonly stint: Stint }) {
  const task = campaign.tasks.find(({ id }) => id === stint.task);
  if (task === undefined || task.evas.length < 2) return null;
  const pinned = campaign.pins.find((pin) => pin.kind === 'eva' && pin.task === task.id);
  return (
    <div className={styles.fields}>
      <label>
        its task in
        <select
          value={pinned?.kind === 'eva' ? pinned.eva : ''}
          onChange={(event) => put(campaign, task.id, event.target.value)}
        >
          <option value="">any EVA that it may fall in</option>
          {task.evas.map((id) => (
            <option key={id} value={id}>
              {campaign.evas.find((eva) => eva.id === id)?.title ?? id}
            </option>
          ))}
        </select>
      </label>
    </div>
  );
}

function put(campaign: Campaign, task: string, eva: string): void {
  const copy = documentStore.getState().copy;
  const parse = (text: string) => parseFile(FILE_NAME, text, new ProblemList());
  const file = parse(copy.text);
  if (file.document === null) {
    tell('The text has a syntax error: mend it first');
    return;
  }
  const edits = campaign.pins
    .flatMap((pin) => (pin.kind === 'eva' && pin.task === task ? (removePin(file, pin) ?? []) : []))
    .sort((a, b) => b.at - a.at);
  const without = applyChange(copy, { edits }).copy.text;
  const all = eva === '' ? edits : [...edits, addPin(parse(without), { kind: 'eva', task, eva })];
  change(`Put ${task} into ${eva === '' ? 'any EVA' : eva}`, { edits: all });
  tell(eva === '' ? `${task} may fall in any of its EVAs` : `${task} is pinned to ${eva}. Plan again to see it there.`);
}
