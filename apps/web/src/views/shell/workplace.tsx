/** The open campaign: the bar, the view that is chosen, and the caution that stands under everything. */
import { CAUTION } from '@handrail/eva/brief/brief-input';
import { lazy, Suspense } from 'react';
import type { View } from '../../session/session-store.ts';
import { PlanView } from '../plan/plan-view.tsx';
import { WhyCard } from '../why/why-card.tsx';
import { ConflictBar } from './conflict-bar.tsx';
import styles from './shell.module.css';
import { TopBar } from './top-bar.tsx';
import { useServer, useSession } from './use-stores.ts';

const TextView = lazy(() => import('../text-editor/text-view.tsx'));
const FindingsView = lazy(() => import('../findings/findings-view.tsx'));
const RequestsView = lazy(() => import('../requests/requests-view.tsx'));
const TablesView = lazy(() => import('../tables/tables-view.tsx'));
const VersionsView = lazy(() => import('../versions/versions-view.tsx'));
const AgreeView = lazy(() => import('../agree/agree-view.tsx'));
const PeopleView = lazy(() => import('../people/people-view.tsx'));
const HelpView = lazy(() => import('../help/help-view.tsx'));

export function Workplace() {
  const view = useSession((state) => state.view);
  const program = useServer((state) => state.session?.program ?? '');
  return (
    <div className={styles.workplace}>
      <TopBar />
      <ConflictBar />
      <main className={styles.main} data-view={view}>
        <Suspense
          fallback={
            <p role="status" className={styles.opening}>
              Opening …
            </p>
          }
        >
          <Chosen view={view} />
        </Suspense>
      </main>
      <WhyCard />
      <footer className={styles.caution}>
        {CAUTION} <span>{program}</span>
      </footer>
    </div>
  );
}

function Chosen({ view }: { readonly view: View }) {
  switch (view) {
    case 'text':
      return <TextView />;
    case 'findings':
      return <FindingsView />;
    case 'requests':
      return <RequestsView />;
    case 'tables':
      return <TablesView />;
    case 'versions':
      return <VersionsView />;
    case 'agree':
      return <AgreeView />;
    case 'people':
      return <PeopleView />;
    case 'help':
      return <HelpView />;
    default:
      return <PlanView />;
  }
}
