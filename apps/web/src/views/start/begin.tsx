/** The ways to begin: paste a list, take a commented first campaign, or bring a text file. */
import { firstCampaign } from '@handrail/wire/list/first-campaign';
import { newFromList } from '@handrail/wire/list/new-from-list';
import { useRef, useState } from 'react';
import { api } from '../../server-link/api.ts';
import { tell } from '../../session/session-store.ts';
import styles from './start.module.css';

const LIST = `order,who,what,minutes
1,EV1,Fetch the tool bag,12
1,EV2,Set up the foot restraint,15
2,both,Swap the box,55
3,any,Look over the radiator,8
`;
const DAY_MS = 86_400_000;

/** Tomorrow at noon, UTC: a guess that is said to be one. */
function guessedEgress(): string {
  return `${new Date(Date.now() + DAY_MS).toISOString().slice(0, 10)}T12:00`;
}

export function Begin({ onMade }: { readonly onMade: (id: string) => void }) {
  const [list, setList] = useState(LIST);
  const [title, setTitle] = useState('');
  const [egress, setEgress] = useState(guessedEgress);
  const [problems, setProblems] = useState<readonly string[]>([]);
  const file = useRef<HTMLInputElement>(null);
  const add = async (name: string, text: string): Promise<void> => {
    try {
      onMade((await api.addCampaign(name, text)).id);
    } catch (cause) {
      tell(`Not begun: ${cause instanceof Error ? cause.message : String(cause)}`);
    }
  };
  const fromList = (): void => {
    const name = title.trim() === '' ? 'From a list' : title.trim();
    const made = newFromList(list, name, `${egress}:00Z`);
    setProblems(made.problems.map(({ row, what, expected }) => `row ${row}: ${what}; expected ${expected}`));
    if (made.text !== null) void add(name, made.text);
  };
  return (
    <div className={styles.begin}>
      <form
        className={styles.card}
        aria-label="Begin with a list"
        onSubmit={(event) => {
          event.preventDefault();
          fromList();
        }}
      >
        <h2>Begin with a list</h2>
        <p className={styles.soft}>
          Paste rows from a spreadsheet: who, what, minutes; order and place if you have them. That is enough for a
          timeline; everything else can come later, line by line.
        </p>
        <label>
          The list
          <textarea rows={8} value={list} spellCheck={false} onChange={(event) => setList(event.target.value)} />
        </label>
        <div className={styles.fields}>
          <label>
            Title
            <input
              value={title}
              placeholder="From a list"
              maxLength={200}
              onChange={(event) => setTitle(event.target.value)}
            />
          </label>
          <label>
            PET 0, planned egress (UTC; a guess until you set it)
            <input type="datetime-local" required value={egress} onChange={(event) => setEgress(event.target.value)} />
          </label>
        </div>
        <div role="alert" className={styles.fault}>
          {problems.map((problem) => (
            <p key={problem}>{problem}</p>
          ))}
        </div>
        <button type="submit" className={styles.first}>
          Make a campaign of it
        </button>
      </form>
      <div className={styles.card}>
        <h2>Or begin with text</h2>
        <p className={styles.soft}>
          A first campaign in which every line says why it is there: one EVA, a connector, a request, an insert. Change
          it into yours.
        </p>
        <button type="button" onClick={() => void add('First campaign', firstCampaign(`${guessedEgress()}:00Z`))}>
          Take the first campaign
        </button>
        <p className={styles.soft}>A campaign text that you have (.kdl) comes in as it is, with its comments.</p>
        <input
          ref={file}
          type="file"
          accept=".kdl,text/plain"
          aria-label="A campaign text from this machine"
          onChange={(event) => {
            const chosen = event.target.files?.[0];
            if (chosen !== undefined) void chosen.text().then((text) => add(chosen.name.replace(/\.kdl$/i, ''), text));
          }}
        />
      </div>
    </div>
  );
}
