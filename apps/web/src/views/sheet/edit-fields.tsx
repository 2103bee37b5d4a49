/** Who may do a stint and from which restraint, edited in place. Each is one pure edit of the text. */
import type { Campaign, Stint } from '@handrail/eva/campaign/campaign';
import { pathOfSpan, setProperty } from '@handrail/eva/campaign/edit/edit-document';
import { titleOf } from '@handrail/eva/brief/step-sentence';
import { change } from '../../document/document-store.ts';
import { editableText } from '../../document/editable-text.ts';
import { tell } from '../../session/session-store.ts';
import styles from './sheet.module.css';

export function EditFields({ campaign, stint }: { readonly campaign: Campaign; readonly stint: Stint }) {
  const lead = stint.roles.find(({ name }) => name === 'lead');
  if (lead === undefined || stint.template !== null) return null;
  const outside = campaign.people.filter(({ role }) => role === 'outside').map(({ id }) => id);
  const choices = [...outside, ...(outside.length > 1 ? ['any'] : [])];
  const now = lead.candidates.length === 1 ? (lead.candidates[0] ?? '') : 'any';
  const restraints = campaign.hardware.filter(({ kind }) => kind === 'foot-restraint');
  const isWhole = lead.fromStep === 0 && lead.toStep >= stint.steps.length;
  return (
    <div className={styles.fields}>
      <label>
        may be done by
        <select value={now} onChange={(event) => set(stint, 'who', event.target.value, 'Who may do a stint')}>
          {choices.map((who) => (
            <option key={who} value={who}>
              {who === 'any' ? 'either' : who}
            </option>
          ))}
        </select>
      </label>
      {restraints.length === 0 || !isWhole ? null : (
        <label>
          works from
          <select
            value={lead.restraint ?? ''}
            onChange={(event) =>
              set(stint, 'restraint', event.target.value === '' ? null : event.target.value, 'Restraint of a stint')
            }
          >
            <option value="">tethered, by hand</option>
            {restraints.map(({ id }) => (
              <option key={id} value={id}>
                {titleOf(campaign, id)}
              </option>
            ))}
          </select>
        </label>
      )}
    </div>
  );
}

function set(stint: Stint, property: string, value: string | null, label: string): void {
  const file = editableText();
  const path = file === null ? null : pathOfSpan(file, stint.span);
  if (file === null || path === null) return;
  change(label, { edits: [setProperty(file, path, property, value)] });
  tell(
    `${stint.title}: ${property} ${value ?? 'taken away'}. The plan in hand keeps its times until it is planned again.`,
  );
}
