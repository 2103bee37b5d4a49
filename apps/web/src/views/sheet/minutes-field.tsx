/** The planning minutes of a stint, edited in place: the text takes the new figure, everything else of it stays. */
import { childPath, insertNode, pathOfSpan, setArgument, setProperty } from '@handrail/eva/campaign/edit/edit-document';
import type { Stint } from '@handrail/eva/campaign/campaign';
import { useEffect, useState } from 'react';
import { change } from '../../document/document-store.ts';
import { editableText } from '../../document/editable-text.ts';
import { tell } from '../../session/session-store.ts';
import styles from './sheet.module.css';

export function MinutesField({ stint }: { readonly stint: Stint }) {
  const now = String(Math.round(stint.duration.agreedS / 6) / 10);
  const [words, setWords] = useState(now);
  useEffect(() => setWords(now), [now, stint.key]);
  const take = (): void => {
    if (words !== now) setWords(setMinutes(stint, words) ? words : now);
  };
  return (
    <label className={styles.minutes}>
      planned
      <input
        inputMode="decimal"
        value={words}
        aria-label={`Planning minutes of ${stint.title}`}
        onChange={(event) => setWords(event.target.value)}
        onBlur={take}
        onKeyDown={(event) => (event.key === 'Enter' ? take() : event.key === 'Escape' ? setWords(now) : null)}
      />
      min
    </label>
  );
}

function setMinutes(stint: Stint, words: string): boolean {
  const minutes = Number(words.replace(',', '.'));
  if (!(minutes >= 0.1 && minutes <= 1440)) {
    tell(`"${words}" is not a number of minutes from 0.1 to 1440: nothing was changed`);
    return false;
  }
  if (stint.template !== null) {
    tell(`These minutes come from the template ${stint.template}: change them where it is used`);
    return false;
  }
  const file = editableText();
  const path = file === null ? null : pathOfSpan(file, stint.span);
  if (file === null || path === null) return false;
  const own = childPath(file, path, 'minutes');
  if (own === null) change('Minutes of a stint', { edits: [insertNode(file, `minutes ${minutes}`, { inside: path })] });
  else {
    const isThree = stint.duration.basis === 'three-figures';
    change('Minutes of a stint', {
      edits: [isThree ? setProperty(file, own, 'agreed', minutes) : setArgument(file, own, 0, minutes)],
    });
  }
  tell(`${stint.title}: ${minutes} min planned. The plan in hand keeps its times until it is planned again.`);
  return true;
}
