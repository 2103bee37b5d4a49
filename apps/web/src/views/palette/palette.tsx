/** Everything that can be done or gone to, found by its words: actions, stints, places, requests, findings, help pages. */
import { useMemo, useState } from 'react';
import { Autocomplete, Dialog, Input, Label, ListBox, ListBoxItem, SearchField, Text } from 'react-aria-components';
import { keyWords } from '../../actions/action.ts';
import { look } from '../../session/session-store.ts';
import { findables } from './findables.ts';
import { Overlay } from './overlay.tsx';
import styles from './palette.module.css';
import { rank } from './rank.ts';

const MOST = 60;

export default function Palette() {
  const [words, setWords] = useState('');
  const all = useMemo(findables, []);
  const shown = useMemo(() => rank(all, words).slice(0, MOST), [all, words]);
  const close = (): void => look({ isPaletteOpen: false });
  return (
    <Overlay width="modal" onClose={close}>
      <Dialog aria-label="Find" className={styles.dialog ?? ''}>
        <Autocomplete inputValue={words} onInputChange={setWords}>
          <SearchField autoFocus className={styles.field ?? ''}>
            <Label className="out-of-sight">Find an action, stint, place or finding</Label>
            <Input placeholder="an action, stint, place, request, finding, rule …" />
          </SearchField>
          <div className={styles.list} tabIndex={0} role="group" aria-label="What was found">
            <ListBox
              aria-label="Found"
              className={styles.items ?? ''}
              items={shown}
              renderEmptyState={() => 'Nothing has these words.'}
              onAction={(id) => {
                close();
                // After the dialog has given the focus back.
                setTimeout(() => all.find((one) => one.id === id)?.run(), 0);
              }}
            >
              {(one) => (
                <ListBoxItem id={one.id} textValue={one.title} className={styles.item ?? ''}>
                  <Text slot="label">{one.title}</Text>
                  <span className={styles.sort}>{one.sort}</span>
                  {one.keys === undefined ? null : <kbd>{keyWords(one.keys)}</kbd>}
                </ListBoxItem>
              )}
            </ListBox>
          </div>
        </Autocomplete>
      </Dialog>
    </Overlay>
  );
}
