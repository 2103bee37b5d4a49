/** Somebody saved another version while there are changes here: both side by side, to choose from or to merge. */
import { MergeView } from '@codemirror/merge';
import { defaultKeymap, history, historyKeymap } from '@codemirror/commands';
import { EditorState } from '@codemirror/state';
import { EditorView, keymap, lineNumbers } from '@codemirror/view';
import { compareTimelines } from '@handrail/eva/schedule/compare-timelines';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import type { VersionWhole } from '@handrail/wire/api/api-types';
import { useEffect, useRef, useState } from 'react';
import { documentStore } from '../../document/document-store.ts';
import { keepMerged, keepMine, takeTheirs } from '../../server-link/open-campaign.ts';
import { useDocument } from '../shell/use-stores.ts';
import { editorTheme } from '../text-editor/editor-theme.ts';
import { kdlLanguage } from '../text-editor/kdl-language.ts';
import { TimelineChangesList } from './timeline-changes-list.tsx';
import styles from './versions.module.css';

export default function Conflict({ theirs }: { readonly theirs: VersionWhole }) {
  const place = useRef<HTMLDivElement>(null);
  const merge = useRef<MergeView>(null);
  const mine = useDocument((state) => state.copy.timeline);
  const base = useDocument((state) => state.saved);
  const other = theirs.timeline as Timeline | null;
  const [whose, setWhose] = useState<'mine' | 'theirs'>(() =>
    // Where only the other changed the plan, theirs is the one to begin with.
    JSON.stringify(mine) === JSON.stringify(base?.copy.timeline) ? 'theirs' : 'mine',
  );
  useEffect(() => {
    if (place.current === null) return undefined;
    const both = [lineNumbers(), kdlLanguage, editorTheme, EditorView.lineWrapping];
    const made = new MergeView({
      parent: place.current,
      a: {
        doc: theirs.text,
        extensions: [
          ...both,
          EditorState.readOnly.of(true),
          EditorView.contentAttributes.of({
            'aria-label': `Version ${theirs.number} by ${theirs.author}`,
            tabindex: '0',
          }),
        ],
      },
      b: {
        doc: documentStore.getState().copy.text,
        extensions: [
          ...both,
          history(),
          keymap.of([...historyKeymap, ...defaultKeymap]),
          EditorView.contentAttributes.of({ 'aria-label': 'Yours: what will be kept', tabindex: '0' }),
        ],
      },
      revertControls: 'a-to-b',
      renderRevertControl: () => {
        const button = document.createElement('button');
        button.textContent = '→';
        button.title = 'Take this piece of theirs';
        button.setAttribute('aria-label', 'Take this piece of theirs');
        return button;
      },
      collapseUnchanged: { margin: 3, minSize: 6 },
      gutter: true,
    });
    merge.current = made;
    return () => made.destroy();
  }, [theirs]);
  return (
    <section className={styles.conflict} aria-label="Two versions" data-testid="conflict-choice">
      <h2>
        {theirs.author} saved version {theirs.number} while you worked on version {base?.number ?? '–'}
      </h2>
      <p>
        “{theirs.message}”. Neither is lost: yours stays in hand and in this browser, theirs is saved. Choose one, or
        take pieces of theirs over with the arrows and keep the merge.
      </p>
      <h3>Plan</h3>
      {mine === null || other === null ? (
        <p>{mine === null ? 'Yours has no plan.' : 'Theirs has no plan.'}</p>
      ) : (
        <TimelineChangesList changes={compareTimelines(other, mine)} titleOf={(stint) => stint} />
      )}
      <fieldset className={styles.whose}>
        <legend>Plan of the merge</legend>
        {(['theirs', 'mine'] as const).map((one) => (
          <label key={one}>
            <input type="radio" name="whose-plan" checked={whose === one} onChange={() => setWhose(one)} />
            {one}
          </label>
        ))}
      </fieldset>
      <h3>Text: theirs left, yours right</h3>
      <div ref={place} className={styles.merge} />
      <div className={styles.buttons}>
        <button type="button" onClick={takeTheirs}>
          Take theirs
        </button>
        <button type="button" onClick={keepMine}>
          Keep mine
        </button>
        <button
          type="button"
          className={styles.first}
          onClick={() => keepMerged(merge.current?.b.state.doc.toString() ?? '', whose === 'mine' ? mine : other)}
        >
          Keep the merge
        </button>
      </div>
    </section>
  );
}
