/** The planning minutes of a stint, edited in place: the text takes the new figure, everything else of it stays. */
import { findPaths, insertNode, pathOfSpan, setArgument, setProperty } from '@handrail/eva/campaign/edit/edit-document';
import type { Stint } from '@handrail/eva/campaign/campaign';
import { ProblemList } from '@handrail/eva/campaign/problem/problem';
import { parseFile } from '@handrail/eva/campaign/text/parse-file';
import { useEffect, useState } from 'react';
import { change, documentStore } from '../../document/document-store.ts';
import { FILE_NAME } from '../../document/working-copy.ts';
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
  const file = parseFile(FILE_NAME, documentStore.getState().copy.text, new ProblemList());
  if (!(minutes >= 0.1 && minutes <= 1440)) {
    tell(`"${words}" is not a number of minutes from 0.1 to 1440: nothing was changed`);
    return false;
  }
  const path = file.document === null ? null : pathOfSpan(file, stint.span);
  if (path === null || stint.template !== null) {
    tell(
      stint.template === null
        ? 'The text has a syntax error: mend it first'
        : `These minutes come from the template ${stint.template}: change them where it is used`,
    );
    return false;
  }
  const [own] = findPaths(file, (node) => node.name.name === 'minutes').filter(
    (one) => one.length === path.length + 1 && path.every((at, index) => one[index] === at),
  );
  if (own === undefined)
    change('Minutes of a stint', { edits: [insertNode(file, `minutes ${minutes}`, { inside: path })] });
  else {
    const isThree = stint.duration.basis === 'three-figures';
    change('Minutes of a stint', {
      edits: [isThree ? setProperty(file, own, 'agreed', minutes) : setArgument(file, own, 0, minutes)],
    });
  }
  tell(`${stint.title}: ${minutes} min planned. The plan in hand keeps its times until it is planned again.`);
  return true;
}
