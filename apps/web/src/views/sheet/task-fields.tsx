/** In which EVA the whole task is to fall: a pin of the text. Planning obeys it when it is next asked. */
import type { Campaign, Stint } from '@handrail/eva/campaign/campaign';
import { replacePins } from '@handrail/eva/campaign/edit/edit-pins';
import { change } from '../../document/document-store.ts';
import { editableText } from '../../document/editable-text.ts';
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
  const file = editableText();
  if (file === null) return;
  const pinned = campaign.pins.filter((pin) => pin.kind === 'eva' && pin.task === task);
  const edits = replacePins(file, pinned, eva === '' ? [] : [{ kind: 'eva', task, eva }]);
  change(`Put ${task} into ${eva === '' ? 'any EVA' : eva}`, { edits });
  tell(eva === '' ? `${task} may fall in any of its EVAs` : `${task} is pinned to ${eva}. Plan again to see it there.`);
}
