import { linkOf } from '../../session/deep-link.ts';
import { look, VIEWS } from '../../session/session-store.ts';
import { ActionButton } from './action-button.tsx';
import { leaveCampaign } from './leave-campaign.ts';
import { SaveState } from './save-state.tsx';
import styles from './shell.module.css';
import { useDerived, useDocument, useServer, useSession } from './use-stores.ts';

export function TopBar() {
  const campaignId = useDocument((state) => state.campaignId);
  const title = useDerived((state) => state.opening.value?.campaign?.title ?? null);
  return (
    <header className={styles.bar}>
      <div className={styles.name}>
        <a
          href="/"
          className={styles.mark}
          title="All campaigns"
          onClick={(event) => {
            event.preventDefault();
            void leaveCampaign();
          }}
        >
          Handrail
        </a>
        <h1>{title ?? campaignId ?? ''}</h1>
      </div>
      <Tabs />
      <div className={styles.tools}>
        <Others />
        <SaveState />
        <ActionButton id="undo" isPlain />
        <ActionButton id="redo" isPlain />
        <ActionButton id="save" words="Save" isPlain />
        <ActionButton id="palette" words="Find" />
        <Settings />
      </div>
    </header>
  );
}

function Tabs() {
  const state = useSession((now) => now);
  const campaignId = useDocument((now) => now.campaignId);
  const errors = useDerived((now) => {
    const inText = now.opening.value?.problems.filter(({ severity }) => severity === 'error').length ?? 0;
    const inPlan =
      now.judged.value?.findings.filter(({ severity, waiver }) => severity === 'error' && waiver === null).length ?? 0;
    return inText + inPlan;
  });
  return (
    <nav className={styles.tabs} aria-label="Views">
      {VIEWS.map(([view, words]) => (
        <a
          key={view}
          href={linkOf(campaignId, { ...state, view, page: null, line: null })}
          aria-current={state.view === view ? 'page' : undefined}
          onClick={(event) => {
            if (event.ctrlKey || event.metaKey || event.shiftKey) return;
            event.preventDefault();
            look({ view, page: null, line: null });
          }}
        >
          {words}
          {view === 'findings' && errors > 0 ? (
            <span className={styles.count}>
              {errors}
              <span className="out-of-sight"> {errors === 1 ? 'error' : 'errors'}</span>
            </span>
          ) : null}
        </a>
      ))}
    </nav>
  );
}

function Others() {
  const people = useServer((state) => state.people);
  const me = useServer((state) => state.session?.user?.name);
  const others = people.filter(({ name }) => name !== me);
  if (others.length === 0) return null;
  return (
    <ul className={styles.others} aria-label="Also here" data-testid="others">
      {others.map(({ name, at }) => (
        <li key={name} title={`${name}: ${at}`}>
          {name} <span>{at}</span>
        </li>
      ))}
    </ul>
  );
}

function Settings() {
  const timeMode = useSession((state) => state.timeMode);
  const theme = useSession((state) => state.theme);
  return (
    <>
      <ActionButton id="time-mode" words={timeMode === 'pet' ? 'PET' : 'UTC'} isPlain />
      <ActionButton id="theme" words={{ system: 'Auto', dark: 'Dark', light: 'Light' }[theme]} isPlain />
      <ActionButton id="keys" words="?" isPlain />
    </>
  );
}
