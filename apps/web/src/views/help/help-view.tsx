import { useMemo, useState } from 'react';
import { look } from '../../session/session-store.ts';
import { useSession } from '../shell/use-stores.ts';
import { HELP_PAGES, type HelpPage, SORTS } from './help-pages.ts';
import styles from './help.module.css';

export default function HelpView() {
  const asked = useSession((state) => state.page);
  const [words, setWords] = useState('');
  const chosen = HELP_PAGES.find(({ id }) => id === asked || id === `node ${asked ?? ''}`);
  const found = useMemo(() => {
    const wanted = words.toLowerCase().split(/\s+/).filter(Boolean);
    return HELP_PAGES.filter((page) => {
      const text = `${page.id} ${page.title} ${page.about}`.toLowerCase();
      return wanted.every((word) => text.includes(word));
    });
  }, [words]);
  return (
    <section className={styles.view} aria-label="Help">
      <div className={styles.index} tabIndex={0} role="region" aria-label="Pages">
        <input
          type="search"
          aria-label="Search the help"
          placeholder="a word, a rule, a node"
          value={words}
          onChange={(event) => setWords(event.target.value)}
        />
        <p role="status">
          {found.length} {found.length === 1 ? 'page' : 'pages'}
        </p>
        {SORTS.map((sort) => (
          <PageList
            key={sort}
            sort={sort}
            pages={found.filter((page) => page.sort === sort)}
            chosen={chosen?.id ?? null}
            isOpen={words !== '' || chosen?.sort === sort || (asked === 'text' && sort === 'Nodes of the text')}
          />
        ))}
      </div>
      <div className={styles.page} tabIndex={0} role="region" aria-label="Page">
        {chosen === undefined ? <FirstSteps /> : <Page page={chosen} />}
      </div>
    </section>
  );
}

function PageList({
  sort,
  pages,
  chosen,
  isOpen,
}: {
  readonly sort: string;
  readonly pages: readonly HelpPage[];
  readonly chosen: string | null;
  readonly isOpen: boolean;
}) {
  if (pages.length === 0) return null;
  return (
    <details open={isOpen}>
      <summary>
        {sort} ({pages.length})
      </summary>
      <ul>
        {pages.map(({ id, title }) => (
          <li key={id}>
            <button type="button" aria-current={id === chosen ? 'true' : undefined} onClick={() => look({ page: id })}>
              {title}
              <span>{id}</span>
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}

function Page({ page }: { readonly page: HelpPage }) {
  return (
    <article>
      <h2>{page.title}</h2>
      <p className={styles.id}>{page.id}</p>
      <p>{page.about}</p>
      {page.parts.length === 0 ? null : (
        <dl>
          {page.parts.map(([name, about]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{about}</dd>
            </div>
          ))}
        </dl>
      )}
      {page.source === null ? null : <p>Source: {page.source}</p>}
      {page.examples.map((example) => (
        <figure key={example.title}>
          <figcaption>{example.title}</figcaption>
          <pre tabIndex={0}>{example.text}</pre>
        </figure>
      ))}
    </article>
  );
}

function FirstSteps() {
  return (
    <article>
      <h2>From a list to a plan in a quarter of an hour</h2>
      <ol>
        <li>On the first page, paste who does what for how many minutes. That is level 0: a timeline, a print.</li>
        <li>In the text, give the places and the minutes between them. Level 1: travel and the home chart.</li>
        <li>Write steps, verb first, on named hardware. Level 2: states, kit, races.</li>
        <li>State safing, supplies and limits. Level 3: ways home, the wall, gates.</li>
        <li>Give orbit and bodies. Level 4: light, coverage, shadows. Geometry and arm: reach and views.</li>
      </ol>
      <h2>How this page works</h2>
      <ul>
        <li>
          <b>Nothing is planned unasked.</b> Ctrl+Enter plans; the answer is offered beside the plan in hand, to take or
          to leave.
        </li>
        <li>
          <b>Every number says why.</b> A dotted line under it: click, or press Y.
        </li>
        <li>
          <b>Nothing is lost.</b> What you change is kept in this browser at once, and on the server soon after. Ctrl+Z
          undoes over chart, sheet, list and text alike.
        </li>
        <li>
          <b>Unknown is shown as unknown.</b> What is not stated is never filled in with something that looks safe.
        </li>
        <li>
          <b>Everything has a key.</b> Ctrl+K finds whatever can be done or gone to; ? shows all keys.
        </li>
      </ul>
    </article>
  );
}
