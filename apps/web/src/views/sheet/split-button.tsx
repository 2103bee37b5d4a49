/** Cuts the stint between two sentences, in the text and in the plan in hand, as one step. */
import type { Campaign, Stint } from '@handrail/eva/campaign/campaign';
import { splitStint } from '@handrail/eva/campaign/edit/split-stint';
import { splitPlanned } from '@handrail/eva/timeline/edit/split-planned';
import { derivedStore } from '../../derived/derived-store.ts';
import { change, documentStore } from '../../document/document-store.ts';
import { editableText } from '../../document/editable-text.ts';
import { look, tell } from '../../session/session-store.ts';

interface SplitButtonProps {
  readonly campaign: Campaign;
  readonly stint: Stint;
  /** Sentences before it stay. */
  readonly step: number;
}

export function SplitButton({ campaign, stint, step }: SplitButtonProps) {
  return (
    <button
      type="button"
      aria-label={`Split "${stint.title}" after sentence ${step}`}
      onClick={() => split(campaign, stint, step)}
    >
      split here
    </button>
  );
}

function split(campaign: Campaign, stint: Stint, step: number): void {
  const file = editableText();
  if (file === null) return;
  const { timeline } = documentStore.getState().copy;
  const made = splitStint(file, campaign, stint, step);
  if ('refused' in made) {
    tell(`Not split: ${made.refused}`);
    return;
  }
  const { hardware } = derivedStore.getState().opening.value ?? {};
  const plan =
    timeline === null || hardware == null
      ? undefined
      : splitPlanned(stint.key, step, made.second)({ campaign, hardware }, timeline);
  change(`Split ${stint.title}`, plan === undefined ? { edits: made.edits } : { edits: made.edits, timeline: plan });
  look({ selection: { what: 'stint', id: made.second } });
  tell(`${stint.title} is two stints now. Undo makes it one again.`);
}
