/** Help from the same objects that make the messages and the reference: what is said here cannot be out of date. */
import { nodes } from '@handrail/eva/campaign/nodes.generated';
import { EXPLANATIONS } from '@handrail/eva/judge/explanations';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { useState } from 'react';
import { look } from '../../session/session-store.ts';
import styles from '../findings/findings.module.css';
import { useSession } from '../shell/use-stores.ts';

interface Page {
  readonly id: string;
  readonly sort: 'check' | 'node' | 'kind';
  readonly title: string;
  readonly about: string;
  readonly examples: readonly { readonly title: string; readonly text: string }[];
  readonly source: string | null;
}

const PAGES: readonly Page[] = [
  ...EXPLANATIONS.map(
    ({ id, title, why, source, examples }): Page => ({
      id,
      sort: 'check',
      title,
      about: why,
      source,
      examples:
        examples === null
          ? []
          : [
              { title: 'breaks it', text: `${examples.violates.campaign}\n\n${examples.violates.timeline}` },
              { title: 'keeps it', text: `${examples.satisfies.campaign}\n\n${examples.satisfies.timeline}` },
            ],
    }),
  ),
  ...nodes.map(
    (node): Page => ({
      id: `node ${node.name}`,
      sort: 'node',
      title: `${node.name}, in ${node.parents.join(', ')}`,
      about: `${node.about} ${Object.entries(node.properties)
        .map(([name, { about }]) => `${name}: ${about}`)
        .join(' ')}`,
      source: null,
      examples: node.examples.valid.map((text) => ({ title: 'for example', text })),
    }),
  ),
  ...[...standardLibrary.kinds.values()].map(
    (kind): Page => ({
      id: `kind ${kind.id}`,
      sort: 'kind',
      title: kind.title,
      about: `${kind.about} Verbs: ${kind.verbs.map(({ id }) => id).join(', ') || 'none'}. States: ${kind.aspects.map(({ id, values }) => `${id} (${values.join(', ')})`).join('; ') || 'none'}.`,
      source: kind.source,
      examples: [],
    }),
  ),
];

export default function HelpView() {
  const asked = useSession((state) => state.page);
  const [words, setWords] = useState('');
  const chosen = PAGES.find(({ id }) => id === asked);
  const found = PAGES.filter((page) =>
    `${page.id} ${page.title} ${page.about}`.toLowerCase().includes(words.toLowerCase()),
  );
  return (
    <section className={styles.view} aria-label="Help" tabIndex={0}>
      <div className={styles.filters}>
        <h2>Help</h2>
        <input
          type="search"
          aria-label="Search the help"
          placeholder="a word, a rule, a node of the text"
          value={words}
          onChange={(event) => setWords(event.target.value)}
        />
      </div>
      {chosen === undefined ? (
        <>
          <h3>From a list to a plan, in a quarter of an hour</h3>
          <ol>
            <li>
              1. Start page: paste who does what and how many minutes, in order. That is level 0: a timeline, a print,
              live tracking.
            </li>
            <li>2. Text: give the places and the minutes between them. That is level 1: travel and the home chart.</li>
            <li>
              3. Write steps, verb first, on named hardware: level 2 checks states, kit and races. Safing, supplies and
              limits make level 3, with ways home, the wall and gates.
            </li>
            <li>4. Orbit and bodies give light, coverage and shadows; geometry and arm give reach and views.</li>
          </ol>
          <p>
            Plan only when you ask for it (Ctrl Enter). Every figure says what it rests on; what is not stated is shown
            as unknown.
          </p>
        </>
      ) : (
        <article>
          <p>
            <button type="button" onClick={() => look({ page: null })}>
              all pages
            </button>
          </p>
          <h3>{chosen.title}</h3>
          <p>{chosen.about}</p>
          {chosen.source === null ? null : <p>Source: {chosen.source}</p>}
          {chosen.examples.map((example) => (
            <figure key={example.title + example.text}>
              <figcaption>{example.title}</figcaption>
              <pre tabIndex={0} style={{ overflow: 'auto' }}>
                {example.text}
              </pre>
            </figure>
          ))}
        </article>
      )}
      <h3>{found.length} pages</h3>
      <ul>
        {found.slice(0, 80).map((page) => (
          <li key={page.id}>
            <button type="button" onClick={() => look({ page: page.id })}>
              {page.id}
            </button>{' '}
            {page.title}
          </li>
        ))}
      </ul>
      {found.length > 80 ? <p>More words find fewer pages: {found.length - 80} are not listed.</p> : null}
    </section>
  );
}
