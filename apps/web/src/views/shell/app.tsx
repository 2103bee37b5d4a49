/** What is shown at all: who somebody is comes first, then which campaign, then its views. */
import { lazy, Suspense } from 'react';
import { Notice } from './notice.tsx';
import { useDocument, useServer, useSession } from './use-stores.ts';
import { Workplace } from './workplace.tsx';

const Start = lazy(() => import('../start/start.tsx'));
const Login = lazy(() => import('../start/login.tsx'));
const Palette = lazy(() => import('../palette/palette.tsx'));
const KeySheet = lazy(() => import('../palette/key-sheet.tsx'));

export function App() {
  const isPaletteOpen = useSession((state) => state.isPaletteOpen);
  const areKeysShown = useSession((state) => state.areKeysShown);
  return (
    <>
      <Stage />
      <Notice />
      <Suspense>
        {isPaletteOpen ? <Palette /> : null}
        {areKeysShown ? <KeySheet /> : null}
      </Suspense>
    </>
  );
}

function Stage() {
  const session = useServer((state) => state.session);
  const isReached = useServer((state) => state.isReached);
  const campaignId = useDocument((state) => state.campaignId);
  if (session === null) {
    return (
      <main className="waiting">
        <h1>Handrail</h1>
        <p role="status">
          {isReached
            ? 'Asking the server …'
            : 'The server cannot be reached, and this browser has kept nothing. Start it, then load the page again.'}
        </p>
      </main>
    );
  }
  return (
    <Suspense
      fallback={
        <main className="waiting">
          <p role="status">Opening …</p>
        </main>
      }
    >
      {session.user === null ? <Login /> : campaignId === null ? <Start /> : <Workplace />}
    </Suspense>
  );
}
